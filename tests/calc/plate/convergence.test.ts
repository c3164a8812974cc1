import { describe, expect, it } from 'vitest';
import { solveAnnulus } from './annulus.ts';

describe('finer meshes', () => {
  it('finer meshes bring the deflection of a clamped annulus nearer with the fourth power of the width (cubic elements; rate, not value)', () => {
    const exact = solveAnnulus(96);
    const errors = [3, 6, 12].map((rows) => Math.abs(solveAnnulus(rows) / exact - 1));
    const rates = [Math.log2(errors[0]! / errors[1]!), Math.log2(errors[1]! / errors[2]!)];
    for (const rate of rates) {
      expect(rate).toBeGreaterThan(3.5);
      expect(rate).toBeLessThan(4.6);
    }
  });
});
