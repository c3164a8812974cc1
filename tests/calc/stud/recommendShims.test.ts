import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pullForward } from '../../../src/calc/stud/pullForward.ts';
import { recommendShims } from '../../../src/calc/stud/recommendShims.ts';

const INPUT = {
  padDepthMm: 28,
  flexplateStandsOutMm: 22,
  separatorPlateMm: 0,
  hubEngagementMm: 20,
  hubEngagementLeastMm: 12,
  makersGapMm: null,
};

describe('equal shims out of those there are', () => {
  // Gap 6, limits 3.2 to 4.8 (common practice, no source, from memory): 1.2 to 2.8 of shim, 2.0 in the middle.
  it('one shim nearest the middle before two', () => {
    const [first, second] = recommendShims(INPUT, [0.5, 1, 2, 2.5]);
    expect(first).toEqual({ thicknessesMm: [2], totalMm: 2, gapMm: 4 });
    expect(second?.thicknessesMm).toEqual([2.5]);
  });
  it('two on each other where no one does', () => {
    expect(recommendShims(INPUT, [0.5, 1])[0]?.thicknessesMm).toEqual([1, 1]);
  });
  it('none where none is needed, and nothing where nothing does', () => {
    expect(recommendShims({ ...INPUT, padDepthMm: 26 }, [1])[0]?.thicknessesMm).toEqual([]);
    expect(recommendShims({ ...INPUT, padDepthMm: 24 }, [1])).toEqual([]);
    expect(recommendShims(INPUT, [0.5])).toEqual([]);
  });
  it('whatever is recommended, the gap is then within its limits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 22, max: 34, noNaN: true }),
        fc.array(fc.double({ min: 0.3, max: 4, noNaN: true }), { maxLength: 6 }),
        (padDepthMm, sizes) => {
          const input = { ...INPUT, padDepthMm };
          for (const { totalMm, gapMm } of recommendShims(input, sizes)) {
            const found = pullForward({ ...input, shimMm: totalMm });
            expect(found.gapMm).toBeCloseTo(gapMm, 9);
            expect(found.findings.find((one) => one.id === 'pull-forward')?.status).toBe('pass');
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});
