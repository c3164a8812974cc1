import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoStacks } from '../../../../data/demo/stacks.ts';
import { stacksByThickness } from '../../../../src/calc/stud/numbers/stacksByThickness.ts';

const stacks = demoStacks.map(({ id, entry }) => ({ id, stack: entry.stack }));
const measured = (measuredMm: number, toleranceMm = 0.3) =>
  stacksByThickness({ measuredMm, toleranceMm, stacks });

describe('a stack by its measured thickness', () => {
  it.each(demoStacks.map(({ id, entry }) => [id, entry.stack.layers] as const))(
    'stack %s is found by the sum of its layers',
    (id, layers) => {
      const total = layers.reduce((sum, one) => sum + one.thicknessMm, 0);
      const found = measured(total + 0.2).find((one) => one.id === id);
      expect(found?.within).toBe(true);
      expect(found?.offMm).toBeCloseTo(-0.2, 9);
    },
  );
  it('a stack of 12.70 ± 0.25 measured to ± 0.30 matches up to 13.25, and no farther', () => {
    const at = (mm: number) => measured(mm).find((one) => one.id === 'two-piece-four-3-8-24')!.within;
    expect([at(13.25), at(13.26), at(12.15), at(12.14)]).toEqual([true, false, true, false]);
  });
  it('stacks come nearest first, and fewer are left the better it was measured', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20, noNaN: true }), (mm) => {
        const off = measured(mm).map((one) => Math.abs(one.offMm));
        expect(off).toEqual([...off].sort((a, b) => a - b));
        const left = (tolerance: number) => measured(mm, tolerance).filter((one) => one.within).length;
        expect(left(0.1)).toBeLessThanOrEqual(left(0.5));
      }),
      { numRuns: 50 },
    );
  });
});
