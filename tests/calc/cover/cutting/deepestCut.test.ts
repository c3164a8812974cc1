import { describe, expect, it } from 'vitest';
import { deepestCut } from '../../../../src/calc/cover/cutting/deepestCut.ts';
import { faceCut } from '../../../../src/calc/cover/face/faceCut.ts';

/** Two stations: one high, one that stands 0.5 lower and is out of the tool’s reach for long. */
const deepest = (lowWallMm: number, uMm: number | null) => {
  const stations = [
    { heightMm: 0, depthMm: 0.1, wallMm: 4.8 },
    { heightMm: -0.5, depthMm: 0, wallMm: lowWallMm },
  ];
  const ways = [
    faceCut({ name: 'measured', stations, marks: [] }, { allowanceMm: 0.05, plannedCutMm: null }),
  ];
  const uncertainty = uMm === null ? null : { commonMm: uMm, ownMm: [0, 0] };
  const wallsMm = stations.map(({ wallMm }) => wallMm);
  return deepestCut({ wallsMm, ways, minimumMm: 4.3, uncertainty, confidence: 0.95 });
};

describe('the deepest cut (arithmetic; Φ⁻¹(0.95) = 1.6449)', () => {
  it('the deepest cut takes the high station down to the minimum', () => {
    expect(deepest(4.5, null)).toEqual({ plainMm: expect.closeTo(0.5, 9), sureMm: null });
  });
  it('the deepest cut ignores a low station until the tool reaches it', () => {
    expect(deepest(4.29, null).plainMm).toBeCloseTo(0.49, 9);
  });
  it('the deepest sure cut keeps 1.645 u above the minimum', () => {
    expect(deepest(4.5, 0.01).sureMm).toBeCloseTo(0.5 - 0.016449, 4);
  });
  it('the deepest sure cut is null where a station it never touches is in doubt already', () => {
    expect(deepest(4.31, 0.01).sureMm).toBeNull();
  });
});
