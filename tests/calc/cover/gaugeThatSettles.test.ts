import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugeThatSettles } from '../../../src/calc/cover/gaugeThatSettles.ts';
import type { Doubt } from '../../../src/calc/cover/whatWouldSettle.ts';
import { conformanceProbability } from '../../../src/calc/measure/conformanceProbability.ts';

const doubt: Doubt = {
  marginsMm: Array.from({ length: 12 }, () => 0.02),
  confidence: 0.95,
  calibrationMm: 0.015,
  cutSettingMm: 0.005,
  indicatorMm: 0,
  resolutionMm: 0.01,
  repeatabilityMm: 0.01,
  readings: Array.from({ length: 12 }, () => 1),
};
const gauge = (
  name: string,
  standardUncertaintyMm: number,
  resolutionMm: number,
  repeatabilityMm: number | null,
) => ({
  name,
  standardUncertaintyMm,
  resolutionMm,
  repeatabilityMm,
});
const fine = gauge('fine', 0.001, 0.001, 0.001);
const good = gauge('good', 0.002, 0.001, 0.002);
const spread = gauge('spread', 0.002, 0.001, 0.02);
const coarse = gauge('coarse', 0.015, 0.01, 0.01);

describe('which gauge would settle it', () => {
  it('the gauge suggested is the coarsest of those that need the fewest readings, and none where none does', () => {
    expect(gaugeThatSettles(doubt, [coarse, fine, spread, good])).toEqual({ name: 'good', readings: 1 });
    expect(gaugeThatSettles(doubt, [coarse])).toBeNull();
    expect(gaugeThatSettles(doubt, [])).toBeNull();
    expect(gaugeThatSettles(doubt, [coarse, spread])?.name).toBe('spread');
  });

  it('the gauge suggested is read no more often than it takes, and no less', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.008, max: 0.06, noNaN: true }),
        fc.double({ min: 0.002, max: 0.05, noNaN: true }),
        (margin, s) => {
          const marginsMm = doubt.marginsMm.map(() => margin);
          const found = gaugeThatSettles({ ...doubt, marginsMm }, [gauge('one', 0.001, 0.001, s)]);
          const sure = (n: number) =>
            conformanceProbability({
              marginsMm,
              commonMm: Math.hypot(0.001, doubt.cutSettingMm),
              ownMm: marginsMm.map(() => Math.hypot(0.001 / Math.sqrt(12), s / Math.sqrt(n))),
            }) >= doubt.confidence;
          if (found === null) expect(sure(30)).toBe(false);
          else {
            expect(sure(found.readings)).toBe(true);
            if (found.readings > 1) expect(sure(found.readings - 1)).toBe(false);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('a gauge of unknown repeatability is taken to repeat like the present one', () => {
    const known = gaugeThatSettles(doubt, [gauge('known', 0.002, 0.001, doubt.repeatabilityMm)]);
    expect(gaugeThatSettles(doubt, [gauge('known', 0.002, 0.001, null)])).toEqual(known);
  });
});
