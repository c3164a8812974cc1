import { describe, expect, it } from 'vitest';
import { leastSquaresPlane } from '../../src/calc/measure/leastSquaresPlane.ts';

/** NIST Statistical Reference Datasets, Norris: x then y. */
const X = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0,
  447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3,
  229.2, 669.1, 448.9, 0.5,
];
const Y = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
  448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6,
  228.9, 668.4, 449.2, 0.2,
];

describe('NIST StRD Norris, certified values', () => {
  // Every point twice, at y = +1 and y = −1: the second slope must vanish and the first stay the line’s.
  const points = X.flatMap((xMm, i) => [1, -1].map((yMm) => ({ xMm, yMm, zMm: Y[i]! })));
  const plane = leastSquaresPlane(points)!;
  it('the fit to Norris has the certified slope, to eleven digits', () =>
    expect(plane.slopeX).toBeCloseTo(1.00211681802045, 11));
  it('the fit to Norris has the certified intercept, to ten digits', () =>
    expect(plane.heightMm).toBeCloseTo(-0.262323073774029, 10));
  it('the fit to Norris has no second slope', () => expect(plane.slopeY).toBeCloseTo(0, 11));
  it('the fit to Norris leaves the certified sum of squares', () => {
    const ss = X.reduce((sum, x, i) => sum + (Y[i]! - plane.slopeX * x - plane.heightMm) ** 2, 0);
    expect(ss).toBeCloseTo(26.6173985294224, 9);
  });
});

/**
 * JCGM 100:2008, H.3: calibration of a thermometer, its correction b as a line in t − 20 °C (recomputed; the printed
 * digits from memory).
 */
describe('GUM H.3, a line of eleven readings', () => {
  const T = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const B = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const points = T.flatMap((t, i) => [1, -1].map((yMm) => ({ xMm: t - 20, yMm, zMm: B[i]! })));
  const plane = leastSquaresPlane(points)!;
  it('the fit of GUM H.3 has the printed intercept and slope', () => {
    expect(plane.heightMm.toFixed(4)).toBe('-0.1712');
    expect(plane.slopeX.toFixed(5)).toBe('0.00218');
  });
  it('the fit of GUM H.3 scatters by the printed s', () => {
    const squares = T.reduce((sum, t, i) => sum + (B[i]! - plane.heightMm - plane.slopeX * (t - 20)) ** 2, 0);
    expect(Math.sqrt(squares / (T.length - 2)).toFixed(4)).toBe('0.0035');
  });
  it('the fit of GUM H.3 predicts the printed correction at 30 °C', () => {
    expect((plane.heightMm + 10 * plane.slopeX).toFixed(4)).toBe('-0.1494');
  });
});
