import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pullForward } from '../../../../src/calc/stud/reach/pullForward.ts';
import { recommendShims } from '../../../../src/calc/stud/reach/recommendShims.ts';

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
  it('a single shim is suggested before two, nearest the middle first', () => {
    const [first, second] = recommendShims(INPUT, [0.5, 1, 2, 2.5]);
    expect(first).toEqual({ thicknessesMm: [2], totalMm: 2, gapMm: 4 });
    expect(second?.thicknessesMm).toEqual([2.5]);
  });
  it('two shims are suggested where no single one does', () => {
    expect(recommendShims(INPUT, [0.5, 1])[0]?.thicknessesMm).toEqual([1, 1]);
  });
  it('no shim is suggested where none is needed or none helps', () => {
    expect(recommendShims({ ...INPUT, padDepthMm: 26 }, [1])[0]?.thicknessesMm).toEqual([]);
    expect(recommendShims({ ...INPUT, padDepthMm: 24 }, [1])).toEqual([]);
    expect(recommendShims(INPUT, [0.5])).toEqual([]);
  });
  // Hub 20, at least 16.2 in the pump: a gap of 3.8 at most, so 2.2 to 2.8 of shim, 2.5 in the middle.
  it('a shim is suggested only where the hub stays deep enough: 2.0 mm leaves it 16.0, 2.5 mm 16.5', () => {
    const input = { ...INPUT, hubEngagementLeastMm: 16.2 };
    expect(recommendShims(input, [1, 2, 2.5]).map((one) => one.thicknessesMm)).toEqual([[2.5]]);
    expect(recommendShims(input, [1, 1.5, 2])[0]?.thicknessesMm).toEqual([1, 1.5]);
    expect(recommendShims(input, [1, 2])).toEqual([]);
    // Without the hub's figure, or without its least, the gap alone decides.
    expect(recommendShims({ ...input, hubEngagementMm: null }, [2, 2.5])[0]?.thicknessesMm).toEqual([2]);
    expect(recommendShims({ ...input, hubEngagementLeastMm: null }, [2, 2.5])[0]?.thicknessesMm).toEqual([2]);
  });
  it('a gap that needs no shim takes one for the hub’s sake', () => {
    const input = { ...INPUT, padDepthMm: 26, hubEngagementLeastMm: 16.2 };
    expect(recommendShims(input, [0.5])[0]).toEqual({ thicknessesMm: [0.5], totalMm: 0.5, gapMm: 3.5 });
  });
  it('whatever is recommended, the gap is then within its limits and the hub deep enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 22, max: 34, noNaN: true }),
        fc.array(fc.double({ min: 0.3, max: 4, noNaN: true }), { maxLength: 6 }),
        fc.double({ min: 10, max: 17, noNaN: true }),
        (padDepthMm, sizes, hubEngagementLeastMm) => {
          const input = { ...INPUT, padDepthMm, hubEngagementLeastMm };
          for (const { totalMm, gapMm } of recommendShims(input, sizes)) {
            const found = pullForward({ ...input, shimMm: totalMm });
            expect(found.gapMm).toBeCloseTo(gapMm, 9);
            expect(found.findings.map((one) => one.status)).toEqual(['pass', 'pass']);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});
