import { describe, expect, it } from 'vitest';
import { flatnessLeastSquares } from '../../../src/calc/cover/face/flatnessLeastSquares.ts';
import { leastSquaresPlane, type SpacePoint } from '../../../src/calc/measure/leastSquaresPlane.ts';
import { minimumZone } from '../../../src/calc/measure/minimumZone.ts';

type Row = readonly [number, number, number];
const points = (rows: readonly Row[]): SpacePoint[] => rows.map(([xMm, yMm, zMm]) => ({ xMm, yMm, zMm }));

const A = points([
  [0, 0, 0],
  [1, 0, 10],
  [1, 1, 0],
  [0, 1, 10],
]);
const B = points([
  [0, 0, 0],
  [2, 0, 0],
  [2, 2, 0],
  [0, 2, 0],
  [1, 1, 10],
]);
const D = points([
  [0, 0, 0],
  [1, 0, 4],
  [2, 0, 6],
  [0, 1, -5],
  [1, 1, 20],
  [2, 1, -9],
  [0, 2, -10],
  [1, 2, -3],
  [2, 2, 8],
]);
const F = Array.from({ length: 12 }, (_, i) => {
  const angle = (i * Math.PI) / 6;
  const [xMm, yMm] = [100 * Math.cos(angle), 100 * Math.sin(angle)];
  return { xMm, yMm, zMm: 5 * Math.cos(2 * angle) + 0.02 * xMm };
});

describe('reference planes (independent second implementation, not published)', () => {
  it.each([
    ['A', A, 10, [0, 0, 5], 10, 100],
    ['B', B, 10, [0, 0, 2], 10, 80],
    ['D', D, 27, [3.333333, -2.5, 0.388889], 32.333333, 613.388889],
    ['F', F, 10, [0.02, 0, 0], 10, 150],
  ] as const)(
    'both reference planes of set %s are those of an independent calculation',
    (_, set, zone, [a, b, c], peakToValley, squares) => {
      const plane = leastSquaresPlane(set)!;
      expect(plane.slopeX).toBeCloseTo(a, 6);
      expect(plane.slopeY).toBeCloseTo(b, 6);
      expect(plane.heightMm).toBeCloseTo(c, 6);
      expect(flatnessLeastSquares(set).value).toBeCloseTo(peakToValley, 6);
      const off = set.map((p) => p.zMm - plane.slopeX * p.xMm - plane.slopeY * p.yMm - plane.heightMm);
      expect(off.reduce((sum, e) => sum + e * e, 0)).toBeCloseTo(squares, 6);
      expect(minimumZone(set)!.widthMm).toBeCloseTo(zone, 6);
    },
  );
});

describe('no plane', () => {
  it.each([
    ['two points', A.slice(0, 2)],
    [
      'three points on one line',
      points([
        [0, 0, 0],
        [1, 1, 5],
        [2, 2, 1],
      ]),
    ],
    [
      'one point three times',
      points([
        [1, 1, 0],
        [1, 1, 5],
        [1, 1, 1],
      ]),
    ],
  ])('no plane is found through %s', (_, set) => {
    expect(leastSquaresPlane(set)).toBeNull();
    expect(minimumZone(set)).toBeNull();
  });
  it('three points lie in one plane, and flatness says that this means nothing', () => {
    const found = flatnessLeastSquares(D.slice(0, 4).filter((_, i) => i !== 1));
    expect(found.value).toBeCloseTo(0, 12);
    expect(found.warnings.map(({ code }) => code)).toEqual(['three-points']);
  });
});
