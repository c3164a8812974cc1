import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ENGAGEMENT } from '../../../data/examples/heatExamples.ts';
import type { HeatInput } from '../../../shared/words/bending/heat.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { heatCover } from '../../../src/calc/heat/heatCover.ts';
import { slabStep } from '../../../src/calc/heat/slabStep.ts';
import { slipFlux } from '../../../src/calc/heat/slipFlux.ts';
import { slipRise } from '../../../src/calc/heat/slipRise.ts';
import { temperColour } from '../../../src/calc/heat/temperColour.ts';

const STEEL = ENGAGEMENT;
const slab = { thicknessM: 0.005, conductivityWPerMK: 51.9, diffusivityM2PerS: 51.9 / (7870 * 486) };

describe('step response', () => {
  it('the step response’s two forms meet where one takes over from the other', () => {
    const at = (fo: number) => slabStep({ thicknessM: 1, conductivityWPerMK: 1, diffusivityM2PerS: 1 }, fo);
    const [before, after] = [at(0.02 - 1e-12), at(0.02 + 1e-12)];
    expect(before.rise).toBeCloseTo(after.rise, 10);
    expect(before.rate).toBeCloseTo(after.rate, 9);
    expect(before.summed).toBeCloseTo(after.summed, 12);
  });
  it.each([0.004, 0.05, 0.7])(
    'the step response at %s s has its slope as rate and its integral as sum',
    (timeS) => {
      const h = timeS * 1e-4;
      const [less, here, more] = [timeS - h, timeS, timeS + h].map((t) => slabStep(slab, t));
      expect((more!.rise - less!.rise) / (2 * h) / here!.rate).toBeCloseTo(1, 6);
      expect((more!.summed - less!.summed) / (2 * h) / here!.rise).toBeCloseTo(1, 6);
    },
  );
});

describe('one engagement', () => {
  it('the rise at the end of the slip is that of independent finite differences', () => {
    const [cells, t] = [100, 0.6];
    const dx = slab.thicknessM / cells;
    const steps = Math.ceil(t / ((0.4 * dx * dx) / slab.diffusivityM2PerS));
    const dt = t / steps;
    const heat = new Float64Array(cells);
    const to = (slab.diffusivityM2PerS * dt) / (dx * dx);
    for (let step = 0; step < steps; step++) {
      const flux = 2e6 * (1 - (step + 0.5) / steps);
      let from = 0;
      for (let i = 0; i < cells; i++) {
        const out = i + 1 < cells ? to * (heat[i]! - heat[i + 1]!) : 0;
        heat[i] = heat[i]! + from - out;
        from = out;
      }
      heat[0] = heat[0]! + (flux * dt) / (7870 * 486 * dx);
    }
    const face = heat[0]! + (heat[0]! - heat[1]!) / 2;
    const { endRiseK, evenRiseK } = heatCover(STEEL);
    expect(endRiseK / face).toBeCloseTo(1, 3);
    expect(evenRiseK / (heat.reduce((a, b) => a + b) / cells)).toBeCloseTo(1, 9);
  });

  it('no time within the slip is hotter than the peak, and the end is never below the even rise', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 30, noNaN: true }),
        (slipTimeS, thicknessMm) => {
          const found = heatCover({ ...STEEL, slipTimeS, thicknessMm });
          const thick = { ...slab, thicknessM: thicknessMm / 1000 };
          for (let i = 1; i <= 20; i++) {
            const timeS = (slipTimeS * i) / 20;
            const here = slipRise({ slab: thick, fluxWPerM2: STEEL.fluxWPerM2, slipTimeS, timeS });
            expect(here).toBeLessThanOrEqual(found.peakRiseK * (1 + 1e-12));
          }
          expect(found.peakAtS).toBeLessThanOrEqual(slipTimeS);
          expect(found.endRiseK).toBeGreaterThanOrEqual(found.evenRiseK * (1 - 1e-9));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('a thinner wall ends hotter (law)', () => {
    const ends = [6, 5, 4, 3, 2].map((thicknessMm) => heatCover({ ...STEEL, thicknessMm }).endRiseK);
    expect([...ends].sort((a, b) => a - b)).toEqual(ends);
  });

  it('the rise behind a stud is larger by the pressure peak, at the same time', () => {
    const found = heatCover({ ...STEEL, pressurePeak: 1.385, startTemperatureC: 110 });
    expect(found.behindStud!.peakRiseK).toBeCloseTo(1.385 * found.peakRiseK, 9);
    expect(found.behindStud!.endRiseK).toBeCloseTo(1.385 * found.endRiseK, 9);
    expect(found.behindStud!.evenRiseK).toBeCloseTo(1.385 * found.evenRiseK, 9);
    expect(found.behindStud!.peakAtS).toBe(found.peakAtS);
    expect(found.peakTemperatureC).toBeCloseTo(110 + 1.385 * found.peakRiseK, 9);
    expect(found.warnings.map(({ code }) => code)).toEqual(['advice', 'behind-stud', 'temper-colour']);
    expect(found.answers.behindStudPeakRiseK?.how.at(-1)?.numbers).toContain('1.385');
  });

  it('a rise above 300 K is called very hot, not a figure', () => {
    expect(heatCover({ ...STEEL, fluxWPerM2: 2e7 }).warnings.map(({ code }) => code)).toContain('hot');
    expect(heatCover(STEEL).behindStud).toBeNull();
  });

  it('the flux of half of 300 N·m at 1000 rpm on Ø 214–264 is 0.837 MW/m²', () => {
    const flux = slipFlux({
      share: 0.5,
      torqueNm: 300,
      slipRpm: 1000,
      trackInnerDiameterMm: 214,
      trackOuterDiameterMm: 264,
    });
    expect((flux / 1e6).toFixed(3)).toBe('0.837');
  });
});

describe('temper colors: a rough guide (workshop handbooks, rounded, from memory)', () => {
  it.each([
    [150, null],
    [205, 'pale yellow'],
    [250, 'brown yellow'],
    [290, 'violet to blue'],
    [900, 'gray blue'],
  ])('the temper color at %s °C is %s', (temperatureC, colour) => {
    expect(temperColour(temperatureC)).toBe(colour);
  });
});

describe('what no heat can be worked out from is refused by name', () => {
  it.each<[string, Partial<HeatInput>]>([
    ['fluxWPerM2', { fluxWPerM2: 0 }],
    ['slipTimeS', { slipTimeS: -0.6 }],
    ['thicknessMm', { thicknessMm: Number.NaN }],
    ['conductivityWPerMK', { conductivityWPerMK: Number.POSITIVE_INFINITY }],
    ['densityKgPerM3', { densityKgPerM3: 1e6 }],
    ['specificHeatJPerKgK', { specificHeatJPerKgK: 0 }],
    ['pressurePeak', { pressurePeak: 0.9 }],
    ['startTemperatureC', { startTemperatureC: -300 }],
  ])('heat without a usable %s is refused by name', (path, change) => {
    let refused: unknown;
    try {
      heatCover({ ...STEEL, ...change });
    } catch (thrown) {
      refused = thrown;
    }
    expect(refused).toBeInstanceOf(Refusal);
    expect((refused as Refusal).faults.map((fault) => fault.path)).toEqual([path]);
  });
});
