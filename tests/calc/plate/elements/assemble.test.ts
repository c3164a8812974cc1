import { describe, expect, it } from 'vitest';
import { assembleLoad } from '../../../../src/calc/plate/elements/assemble.ts';
import { numberFreedoms, unknownsOf } from '../../../../src/calc/plate/elements/freedoms.ts';

describe('load (first principles)', () => {
  const mesh = { radiiMm: Float64Array.of(20, 35, 50), anglesRad: Float64Array.of(0, 0.3, 0.5) };
  const freedoms = numberFreedoms({ mesh, inner: 'free', outer: 'free' });
  /** Work of the load when the whole plate moves by one. */
  const total = (load: Float64Array) => {
    const lifts = new Set<number>();
    const of = new Int32Array(16);
    for (const row of [0, 1]) {
      for (const column of [0, 1]) {
        unknownsOf(freedoms, row, column, of);
        for (const corner of [0, 4, 8, 12]) lifts.add(of[corner]!);
      }
    }
    return [...lifts].reduce((sum, i) => sum + load[i]!, 0);
  };

  it('a load of one on the plate adds up to its area', () => {
    const load = assembleLoad({ mesh, freedoms, pressureAt: () => 1 });
    expect(total(load)).toBeCloseTo((0.5 * (50 ** 2 - 20 ** 2)) / 2, 9);
  });
  it('a load of r² on the outer ring’s first field is ∫ r³ dr dθ', () => {
    const load = assembleLoad({
      mesh,
      freedoms,
      pressureAt: (radius, row, column) => (row === 1 && column === 0 ? radius ** 2 : 0),
    });
    expect(total(load) / ((0.3 * (50 ** 4 - 35 ** 4)) / 4)).toBeCloseTo(1, 12);
  });
});
