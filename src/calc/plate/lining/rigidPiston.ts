import { dot, factor, solveFactored } from '../elements/skyline.ts';
import type { CoverModel } from '../model/coverModel.ts';
import { activeSet } from './activeSet.ts';
import { addPoint, addSprings, deflectionsAt } from './lining.ts';
import type { Pressed } from './pressed.ts';

/**
 * The cover under a piston that is one stiff piece: every spring has the same far end, at d.
 *   [K + k·ΣA·N·Nᵀ   −k·ΣA·N] [w]   [f]
 *   [−k·ΣA·Nᵀ          k·ΣA ] [d] = [F]     over the springs that are pressed
 *
 * The border is eliminated: with (K + S)·a = f and (K + S)·c = s, d = (F + s·a)/(kA − s·c) and w = a + d·c.
 * K, f plate stiffness and load · k lining modulus [MPa/mm] · A area of a point [mm²] · F piston's force on the half
 * sector [N].
 * Valid: springs that only push.   Source: block elimination of a border; this program’s own model (rigid bound)
 * Throws: a Refusal where the plate cannot be solved or the springs do not settle.
 * Example: the example’s cover (tests/calc/plate/bendCover.test.ts)
 */
export function pressByRigidPiston(model: CoverModel, liningModulusMPaPerMm: number): Pressed {
  const { track, stiffness, load, share, forces } = model;
  const count = track.areaMm2.length;
  const tail = stiffness.start[track.firstUnknown]! + stiffness.first[track.firstUnknown]!;
  const work = { ...stiffness, values: stiffness.values.slice() };
  const sprung = { ...stiffness, values: stiffness.values.slice() };
  const standing = new Uint8Array(count);
  const change = new Float64Array(count);
  const w = new Float64Array(load.length);
  const border = new Float64Array(load.length);
  const borderSolved = new Float64Array(load.length);
  const squeezed = new Float64Array(count);
  const force = forces.liningN * share;
  let [d, firstRound] = [0, true];
  const { active, rounds } = activeSet({
    count,
    squeezedBy: (pressed) => {
      border.fill(0);
      let springs = 0;
      for (let point = 0; point < count; point++) {
        const spring = liningModulusMPaPerMm * track.areaMm2[point]!;
        change[point] = spring * (pressed[point]! - standing[point]!);
        standing[point] = pressed[point]!;
        if (pressed[point] === 0) continue;
        addPoint(track, point, spring, border);
        springs += spring;
      }
      addSprings(track, change, sprung);
      work.values.set(sprung.values.subarray(tail), tail);
      factor(work, firstRound ? 0 : track.firstUnknown);
      firstRound = false;
      w.set(load);
      borderSolved.set(border);
      solveFactored(work, w);
      solveFactored(work, borderSolved);
      d = (force + dot(border, w)) / (springs - dot(border, borderSolved));
      for (let i = 0; i < w.length; i++) w[i] = w[i]! + d * borderSolved[i]!;
      deflectionsAt(track, w, squeezed);
      for (let point = 0; point < count; point++) squeezed[point] = d - squeezed[point]!;
      return squeezed;
    },
  });
  return { w, squeezedMm: squeezed, active, rounds };
}
