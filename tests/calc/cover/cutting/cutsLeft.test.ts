import { describe, expect, it } from 'vitest';
import { cutsLeft } from '../../../../src/calc/cover/cutting/cutsLeft.ts';

describe('cuts left (arithmetic)', () => {
  it.each([
    [4.8, 2], // exactly two
    [4.7999, 1],
    [4.54, 0],
    [4.55, 1],
    [4.1, 0], // never below none
  ])('cuts left with least wall %s, minimum 4.3 and typical cut 0.25 are %s', (leastWallMm, cuts) => {
    expect(cutsLeft({ leastWallMm, minimumWallMm: 4.3, typicalCutMm: 0.25 }).value).toBe(cuts);
  });
  it('cuts left lose none to float dust: (4.6 − 4.3)/0.1, which is 2.9999999999999982, gives 3', () => {
    expect(cutsLeft({ leastWallMm: 4.6, minimumWallMm: 4.3, typicalCutMm: 0.1 }).value).toBe(3);
  });
});
