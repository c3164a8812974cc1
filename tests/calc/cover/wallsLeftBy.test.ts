import { expect, it } from 'vitest';
import { wallsLeftBy } from '../../../src/calc/cover/face/wallsLeftBy.ts';

const at = (angleDeg: number, wallMm: number, faceMm: number | null) => ({
  angleDeg,
  radiusMm: 110,
  wallMm: [wallMm],
  faceMm,
  markDepthMm: null,
});

// Plain arithmetic (first principles): the tool starts at the highest point, here 0.10 mm above the other.
it('a cut takes its whole depth at the highest station, and that much less where the face lies lower', () => {
  const [high, low] = wallsLeftBy([at(0, 4.9, 0.1), at(180, 4.8, 0)], 0.25);
  expect(high).toBeCloseTo(4.65, 12);
  expect(low).toBeCloseTo(4.65, 12);
  const missed = wallsLeftBy([at(0, 4.9, 0.1), at(180, 4.8, 0)], 0.06);
  expect(missed[1]).toBe(4.8);
});

it('a face that was not indicated is judged by the lower of the two ways it may lie: the whole cut everywhere', () => {
  const walls = wallsLeftBy([at(0, 4.9, null), at(180, 4.8, null)], 0.25);
  expect(walls.map((mm) => Number(mm.toFixed(9)))).toEqual([4.65, 4.55]);
});
