import { expect, test } from 'vitest';
import { normalShare } from '../../../src/calc/measure/normalShare.ts';

/** Abramowitz & Stegun 26.2.14 with as many terms as anybody could want. */
function farShare(z: number): number {
  let fraction = z;
  for (let k = 4000; k > 0; k--) fraction = z + k / fraction;
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / fraction;
}

test('the share beyond three standard deviations is that of 4,000 terms to the last digits', () => {
  for (let z = 3.001; z < 38; z += 0.0973)
    expect(normalShare(-z) / farShare(z), String(z)).toBeCloseTo(1, 14);
});
