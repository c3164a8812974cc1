import { describe, expect, it } from 'vitest';
import { pooledRepeatability } from '../../../src/calc/measure/pooledRepeatability.ts';

describe('pooled repeatability (arithmetic)', () => {
  it('pooled repeatability is the sum of squares over the degrees of freedom', () => {
    // {1, 3}: 2 about 2; {2, 4, 6}: 8 about 4; a single reading tells nothing. (2 + 8)/(1 + 2)
    const found = pooledRepeatability([[1, 3], [2, 4, 6], [9]])!;
    expect(found.standardDeviationMm).toBeCloseTo(Math.sqrt(10 / 3), 12);
    expect(found.degreesOfFreedom).toBe(3);
  });
  it('pooled repeatability is null without a repeat', () =>
    expect(pooledRepeatability([[1], [2]])).toBeNull());
  it('pooled repeatability of readings that agree is zero', () => {
    expect(pooledRepeatability([[4.92, 4.92, 4.92]])!.standardDeviationMm).toBe(0);
  });
});
