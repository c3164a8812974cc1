import { assembleLoad, assembleStiffness } from '../../../src/calc/plate/elements/assemble.ts';
import { numberFreedoms } from '../../../src/calc/plate/elements/freedoms.ts';
import { dot, factor, solveFactored } from '../../../src/calc/plate/elements/skyline.ts';

/** Work of an even load on an annulus from 0.3 to 1 held all round, by so many even rows of elements. */
export function solveAnnulus(rows: number): number {
  const mesh = {
    radiiMm: Float64Array.from({ length: rows + 1 }, (_, i) => 0.3 + (0.7 * i) / rows),
    anglesRad: Float64Array.of(0, 0.3),
  };
  const freedoms = numberFreedoms({ mesh, inner: 'clamped', outer: 'clamped' });
  const rigidityNmm = new Float64Array(rows).fill(1);
  const stiffness = assembleStiffness({ mesh, freedoms, rigidityNmm, poisson: 0.3 });
  const load = assembleLoad({ mesh, freedoms, pressureAt: () => 1 });
  const w = load.slice();
  factor(stiffness);
  solveFactored(stiffness, w);
  return dot(load, w);
}
