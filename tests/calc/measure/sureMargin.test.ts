import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '../../../src/calc/measure/conformanceProbability.ts';
import { sureMargin } from '../../../src/calc/measure/sureMargin.ts';

describe('the margin one can be sure of', () => {
  // One place is Φ(x/u): the quantiles are those of the standard normal distribution, from any table.
  it.each([
    { commonMm: 0.01, ownMm: 0, confidence: 0.95, marginMm: 0.0164485 },
    { commonMm: 0.006, ownMm: 0.008, confidence: 0.95, marginMm: 0.0164485 },
    { commonMm: 0, ownMm: 0.01, confidence: 0.99, marginMm: 0.0232635 },
    { commonMm: 0, ownMm: 0, confidence: 0.95, marginMm: 0 },
  ])(
    'the sure margin of one place at $confidence is the quantile, $marginMm',
    ({ commonMm, ownMm, confidence, marginMm }) => {
      const found = sureMargin({ marginsMm: [0.5], commonMm, ownMm: [ownMm], confidence });
      expect(Math.abs(found - marginMm)).toBeLessThan(1.1e-5);
    },
  );

  it('the sure margin is where the probability of all reaches the confidence, whatever the present walls are', () => {
    const [commonMm, own] = [0.01, [0.004, 0.006, 0.005]];
    for (const marginsMm of [
      [0.02, 0.021, 0.03],
      [-0.3, -0.299, -0.29],
    ]) {
      const x = sureMargin({ marginsMm, commonMm, ownMm: own, confidence: 0.95 });
      const shifted = marginsMm.map((margin) => margin - Math.min(...marginsMm) + x);
      const probability = conformanceProbability({ marginsMm: shifted, commonMm, ownMm: own });
      expect(probability).toBeGreaterThanOrEqual(0.95);
      expect(probability).toBeLessThan(0.9505);
    }
  });

  it('the sure margin is, within 1e-5 mm, the least that halving the interval finds', () => {
    for (const [commonMm, u] of [
      [0.01, 0.004],
      [0.002, 0.02],
      [0, 0.01],
      [0.03, 0],
    ] as const) {
      for (const confidence of [0.5, 0.9, 0.95, 0.999]) {
        const marginsMm = Array.from({ length: 12 }, (_, i) => 0.4 + 0.003 * ((i * 5) % 12));
        const ownMm = marginsMm.map(() => u);
        const sure = (x: number) =>
          conformanceProbability({ marginsMm: marginsMm.map((m) => m - 0.4 + x), commonMm, ownMm }) >=
          confidence;
        let [low, high] = [0, 1];
        for (let i = 0; i < 40; i++) {
          const middle = (low + high) / 2;
          if (sure(middle)) high = middle;
          else low = middle;
        }
        const found = sureMargin({ marginsMm, commonMm, ownMm, confidence });
        expect(found - (sure(0) ? 0 : high)).toBeGreaterThanOrEqual(-1e-9);
        expect(found - high).toBeLessThan(1.01e-5);
      }
    }
  });
});
