import { describe, expect, it } from 'vitest';
import { conformanceProbability } from '../../src/calc/measure/conformanceProbability.ts';
import { normalShare } from '../../src/calc/measure/normalShare.ts';

describe('JCGM 106:2012 (from memory, recomputed)', () => {
  it('the container of 7.3.3, limit 490 kPa, y 509.7, u 8.6, conforms with 0.99', () => {
    const p = conformanceProbability({ marginsMm: [509.7 - 490], commonMm: 8.6, ownMm: [0] });
    expect(p.toFixed(2)).toBe('0.99');
    expect(p).toBeCloseTo(0.989, 4);
  });
  it.each([
    [0.842, 0.8],
    [1.282, 0.9],
    [1.645, 0.95],
    [2.326, 0.99],
    [3.09, 0.999],
  ])('Table 1 at z %s has probability %s', (z, p) => expect(normalShare(z)).toBeCloseTo(p, 3));
  it('a speed of 106.6 km/h with u 2 % is over 100 km/h at 99.9 %', () => {
    const over = (y: number) =>
      conformanceProbability({ marginsMm: [y - 100], commonMm: 0.02 * y, ownMm: [0] });
    expect(over(106.5)).toBeLessThan(0.999);
    expect(over(106.7)).toBeGreaterThan(0.999);
  });
});

describe('guard bands, ILAC-G8 table (from memory, recomputed): risk at the acceptance limit', () => {
  it.each([
    [1.65, 0.0495], // 0.83 U, ISO 14253-1:2017
    [2, 0.0228], // U
    [3, 0.00135], // 1.5 U
  ])('a guard band of %s u leaves a risk of %s', (z, risk) => {
    expect(1 - conformanceProbability({ marginsMm: [z], commonMm: 0, ownMm: [1] })).toBeCloseTo(risk, 4);
  });
});

describe('the normal share itself', () => {
  it('the normal share keeps its digits in the tail', () => {
    expect(normalShare(-5)).toBeCloseTo(2.866515719e-7, 15);
    expect(normalShare(-10) / 7.619853024e-24).toBeCloseTo(1, 8);
  });
  it('the normal share is continuous where series and continued fraction meet', () => {
    expect(normalShare(3 + 1e-9) - normalShare(3 - 1e-9)).toBeCloseTo(2e-9 * 0.00443185, 14);
  });
});
