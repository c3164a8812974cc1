import { describe, expect, it } from 'vitest';
import { firstUnknowns, numberFreedoms, unknownsOf } from '../../../../src/calc/plate/elements/freedoms.ts';

const mesh = { radiiMm: Float64Array.of(1, 2, 3), anglesRad: Float64Array.of(0, 0.2, 0.4) };

describe('numbering (first principles)', () => {
  it.each([
    // Rings of three nodes: the two on lines of symmetry keep w and w_r, the middle one all four.
    ['free', 'free', 24],
    ['simple', 'free', 8 + 8 + 4],
    ['clamped', 'free', 16],
    ['rigid', 'simple', 1 + 8 + 4],
  ] as const)('a plate with inner edge %s and outer edge %s has %i unknowns', (inner, outer, size) => {
    expect(numberFreedoms({ mesh, inner, outer }).size).toBe(size);
  });

  it('a rigid edge is one unknown, and a held node has no deflection', () => {
    const freedoms = numberFreedoms({ mesh, inner: 'rigid', outer: 'free', held: [{ ring: 2, ray: 0 }] });
    const of = new Int32Array(16);
    const last = freedoms.size - 1;
    unknownsOf(freedoms, 0, 0, of);
    expect([of[0], of[1], of[8], of[9]]).toEqual([last, -1, last, -1]);
    unknownsOf(freedoms, 1, 0, of);
    // Unknown 0 is outside: the held node's slope.
    expect([of[4], of[5]]).toEqual([-1, 0]);
  });

  it('a whole row of the matrix meets all unknowns, other rows only their neighbors', () => {
    // Rings of eight from the outside: the last ray of the middle ring meets the middle ray outside, 2 to 5.
    const freedoms = numberFreedoms({ mesh, inner: 'free', outer: 'free' });
    const lastOfMiddle = 15;
    expect(firstUnknowns(freedoms, mesh, () => false)[lastOfMiddle]).toBe(2);
    expect(firstUnknowns(freedoms, mesh, (row) => row === 0)[lastOfMiddle]).toBe(2);
    expect(firstUnknowns(freedoms, mesh, (row) => row === 1)[lastOfMiddle]).toBe(0);
  });
});
