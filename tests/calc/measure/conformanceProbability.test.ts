import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '../../../src/calc/measure/conformanceProbability.ts';
import { normalShare } from '../../../src/calc/measure/normalShare.ts';

const twelve = (value: number) => Array<number>(12).fill(value);

describe('conformance with common and own error (independent second implementation, not published)', () => {
  it.each([
    ['three margins', [0.02, 0.03, 0.05], 0.01, [0.01, 0.01, 0.01], 0.9115],
    ['one, own error only', [0.02], 0, [0.0125], 0.9452],
    ['one, both errors', [0.02], 0.01, [0.0075], 0.9452],
    ['twelve alike, own error far below the common', twelve(0.01465), 0.01, twelve(0.0003), 0.9216],
  ])('the probability of %s is that of an independent calculation', (_, marginsMm, commonMm, ownMm, p) => {
    expect(conformanceProbability({ marginsMm, commonMm, ownMm })).toBeCloseTo(p, 5);
  });
});

describe('its limiting cases (first principles)', () => {
  it('the probability without own errors is that of the thinnest station alone', () => {
    const p = conformanceProbability({ marginsMm: [0.03, 0.01], commonMm: 0.01, ownMm: [0, 0] });
    expect(p).toBeCloseTo(normalShare(1), 12);
  });
  it('the probability without a common error is the product', () => {
    const p = conformanceProbability({ marginsMm: [0.03, 0.01], commonMm: 0, ownMm: [0.02, 0.01] });
    expect(p).toBeCloseTo(normalShare(1.5) * normalShare(1), 12);
  });
  it('the probability without any error is a plain comparison, to 1e-9', () => {
    const plain = (margin: number) =>
      conformanceProbability({ marginsMm: [1, margin], commonMm: 0, ownMm: [0, 0] });
    expect(plain(0)).toBe(1);
    expect(plain(-5e-10)).toBe(1);
    expect(plain(-2e-9)).toBe(0);
  });
  it('the probability of two stations nears the product as the common error fades', () => {
    const margins = { marginsMm: [0.02, 0.011], ownMm: [0.01, 0.008] };
    const faded = conformanceProbability({ ...margins, commonMm: 1e-7 });
    expect(faded).toBeCloseTo(conformanceProbability({ ...margins, commonMm: 0 }), 6);
  });
  it('the probability of two stations nears that of the thinnest as the own errors fade', () => {
    const faded = conformanceProbability({ marginsMm: [0.02, 0.012], commonMm: 0.01, ownMm: [1e-8, 1e-8] });
    expect(faded).toBeCloseTo(normalShare(1.2), 6);
  });
  it('the probability takes stations read exactly beside stations read roughly', () => {
    // P(x ≤ 1 and own error below (0.02 − 0.01x)/0.01), by a fine midpoint sum written out here.
    let sum = 0;
    const step = 1e-4;
    for (let k = 0; k < 100_000; k++) {
      const middle = -9 + (k + 0.5) * step;
      sum += (step * Math.exp((-middle * middle) / 2) * normalShare(2 - middle)) / Math.sqrt(2 * Math.PI);
    }
    const p = conformanceProbability({ marginsMm: [0.01, 0.02], commonMm: 0.01, ownMm: [0, 0.01] });
    expect(p).toBeCloseTo(sum, 5);
  });
});
