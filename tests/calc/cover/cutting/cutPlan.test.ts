import { describe, expect, it } from 'vitest';
import type { CutPlanInput } from '../../../../shared/words/cover.ts';
import { Refusal } from '../../../../shared/words/refusal.ts';
import { cutPlan } from '../../../../src/calc/cover/cutting/cutPlan.ts';

const PLAN: CutPlanInput = {
  totalCutMm: 0.42,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  roughingLimitMm: 0.2,
  finishingCutMm: 0.1,
  roughingFeedMm: 0.25,
  finishingFeedMm: 0.1,
  cuttingSpeedMPerMin: 150,
  noseRadiusMm: 0.8,
  leastRpm: 20,
  mostRpm: 1200,
};
const depths = (over: Partial<CutPlanInput>) =>
  cutPlan({ ...PLAN, ...over }).passes.map(({ kind, depthMm }) => `${kind} ${depthMm.toFixed(3)}`);

describe('the passes of a cut (arithmetic)', () => {
  it('a cut plan roughs evenly within the limit and finishes last', () => {
    expect(depths({})).toEqual(['roughing 0.160', 'roughing 0.160', 'finishing 0.100']);
  });
  it('a cut plan has as few passes as the roughing limit allows', () => {
    expect(depths({ totalCutMm: 0.5 })).toEqual(['roughing 0.200', 'roughing 0.200', 'finishing 0.100']);
    expect(depths({ totalCutMm: 0.501 })).toHaveLength(4);
  });
  it('a cut plan has one pass where the cut is no deeper than a finishing pass', () => {
    expect(depths({ totalCutMm: 0.08 })).toEqual(['finishing 0.080']);
    expect(depths({ totalCutMm: 0.1 })).toEqual(['finishing 0.100']);
  });
  it('a cut plan’s passes add up to the cut, in depth and time', () => {
    const plan = cutPlan(PLAN);
    expect(plan.passes.at(-1)!.totalMm).toBeCloseTo(0.42, 12);
    expect(plan.spindleRpm).toBeCloseTo(180.86, 2);
    // Two passes of 25/(0.25 N) and one of 25/(0.1 N) minutes.
    expect(plan.timeS).toBeCloseTo((60 * (200 + 250)) / plan.spindleRpm, 6);
    expect(plan.finishRtUm).toBeCloseTo(1.5625, 6);
  });
  it('a cut plan warns where the lathe cannot turn at the speed asked for', () => {
    const plan = cutPlan({ ...PLAN, mostRpm: 100 });
    expect(plan.warnings.map(({ code }) => code)).toEqual(['slower-than-asked']);
    expect(plan.cuttingSpeedMPerMin).toBeCloseTo((Math.PI * 264 * 100) / 1000, 9);
  });
});

describe('what a cut plan refuses', () => {
  it.each([
    [{ totalCutMm: 0 }, 'totalCutMm'],
    [{ roughingFeedMm: Number.NaN }, 'roughingFeedMm'],
    [{ trackInnerDiameterMm: 264 }, 'trackInnerDiameterMm'],
    [{ leastRpm: 2000 }, 'leastRpm'],
    [{ roughingLimitMm: 0.001 }, 'roughingLimitMm'],
  ])('a cut plan with %o is refused at %s', (over, path) => {
    let refused: unknown;
    try {
      cutPlan({ ...PLAN, ...over });
    } catch (error) {
      refused = error;
    }
    expect(refused).toBeInstanceOf(Refusal);
    expect((refused as Refusal).faults.map((fault) => fault.path)).toEqual([path]);
  });
});
