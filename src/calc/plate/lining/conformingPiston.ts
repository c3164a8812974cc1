import { factor, solveFactored } from '../elements/skyline.ts';
import type { CoverModel } from '../model/coverModel.ts';
import { activeSet } from './activeSet.ts';
import { addPoint, addSprings, deflectionsAt } from './lining.ts';
import type { Pressed } from './pressed.ts';

/**
 * The cover under a piston that follows it over the radius but not round it: at each circle the springs' far end d is
 * where they carry that circle's share of the force.
 *   k·Σ A·(d − w) = p_m·ΣA_all  →  d = w̄ + p_m·ΣA_all/(k·a),  a = ΣA and w̄ = ΣA·w/a over the springs pressed
 * With d gone, a circle adds k·[ΣA·N·Nᵀ − s·sᵀ/a] to the stiffness and (p_m·ΣA_all/a)·s to the load, s = ΣA·N.
 *
 * k lining modulus [MPa/mm] · A area of a point [mm²] · p_m mean pressure [MPa].
 * Valid: springs that only push.   Source: elimination of d (first principles); this program’s own model (conforming bound)
 * Throws: a Refusal where the plate cannot be solved or the springs do not settle.
 * Example: the example’s cover (tests/calc/plate/bendCover.test.ts)
 */
export function pressByConformingPiston(model: CoverModel, liningModulusMPaPerMm: number): Pressed {
  const { track, stiffness, load, share, forces } = model;
  const { areaMm2, circles, perCircle } = track;
  const count = areaMm2.length;
  const tail = stiffness.start[track.firstUnknown]! + stiffness.first[track.firstUnknown]!;
  const work = { ...stiffness, values: stiffness.values.slice() };
  const w = new Float64Array(load.length);
  const ofCircle = new Float64Array(load.length);
  const squeezed = new Float64Array(count);
  const spring = new Float64Array(count);
  const evenMPa = (forces.liningN * share) / track.totalAreaMm2;
  let firstRound = true;
  const { active, rounds } = activeSet({
    count,
    squeezedBy: (pressed) => {
      work.values.set(stiffness.values.subarray(tail), tail);
      w.set(load);
      for (let point = 0; point < count; point++) {
        spring[point] = liningModulusMPaPerMm * areaMm2[point]! * pressed[point]!;
      }
      addSprings(track, spring, work);
      for (let circle = 0; circle < circles; circle++) {
        const from = circle * perCircle;
        let all = 0;
        let working = 0;
        for (let point = from; point < from + perCircle; point++) {
          all += areaMm2[point]!;
          if (pressed[point] === 1) working += areaMm2[point]!;
        }
        ofCircle.fill(0);
        for (let point = from; point < from + perCircle; point++) {
          if (pressed[point] === 0) continue;
          addPoint(track, point, areaMm2[point]!, ofCircle);
        }
        const even = (evenMPa * all) / working;
        for (let i = track.firstUnknown; i < w.length; i++) w[i] = w[i]! + even * ofCircle[i]!;
        takeOffMean(ofCircle, liningModulusMPaPerMm / working, track.firstUnknown, work.start, work.values);
      }
      factor(work, firstRound ? 0 : track.firstUnknown);
      firstRound = false;
      solveFactored(work, w);
      deflectionsAt(track, w, squeezed);
      for (let circle = 0; circle < circles; circle++) {
        const from = circle * perCircle;
        let all = 0;
        let working = 0;
        let moved = 0;
        for (let point = from; point < from + perCircle; point++) {
          all += areaMm2[point]!;
          if (pressed[point] === 0) continue;
          working += areaMm2[point]!;
          moved += areaMm2[point]! * squeezed[point]!;
        }
        const d = (moved + (evenMPa * all) / liningModulusMPaPerMm) / working;
        for (let point = from; point < from + perCircle; point++) squeezed[point] = d - squeezed[point]!;
      }
      return squeezed;
    },
  });
  return { w, squeezedMm: squeezed, active, rounds };
}

/** Subtracts `times` · s·sᵀ, s zero but for the unknowns of one row of elements. */
function takeOffMean(
  s: Float64Array,
  times: number,
  from: number,
  start: Int32Array,
  values: Float64Array,
): void {
  let last = s.length - 1;
  while (last >= from && s[last] === 0) last--;
  let lowest = from;
  while (lowest <= last && s[lowest] === 0) lowest++;
  for (let i = lowest; i <= last; i++) {
    if (s[i] === 0) continue;
    const by = times * s[i]!;
    for (let j = lowest; j <= i; j++) {
      if (s[j] !== 0) values[start[i]! + j] = values[start[i]! + j]! - by * s[j]!;
    }
  }
}
