import { expect, test } from 'vitest';
import { sureOfOne } from '../../../src/shop/gauging/sureOfOne.ts';
import { gauge } from '../../records/gauges/gaugeSamples.ts';

test('one reading must be 1.645 standard uncertainties above the minimum to be 95 % sure', () => {
  // Normal distribution, one-sided 95 %: 1.645 (JCGM 106:2012, table 1). U 0.004, k 2; a 0.001; s 0.0015.
  const entered = Math.hypot(0.002, 0.001 / Math.sqrt(12), 0.0015);
  const found = Math.hypot(0.002, 0.004, 0.001 / Math.sqrt(12), 0.003);
  const means = sureOfOne(gauge, { repeatabilityMm: 0.003, reproducibilityMm: 0.004 }, 0.95);
  expect(means.enteredMm).toBe(0.0015);
  expect(means.marginEnteredMm).toBeCloseTo(1.645 * entered, 4);
  expect(means.marginFoundMm).toBeCloseTo(1.645 * found, 4);
});
