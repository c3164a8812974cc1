import type { Stud } from '../../../../shared/words/stud/stud.ts';

/**
 * A stud once its pad has been resurfaced: from the new seating face all of it reaches that much farther.
 *   start' = start + x;   end' = end + x;   tip' = tip + x
 *
 * x taken off the pad [mm]; start, end, tip from the pad's seating face, + toward the engine [mm].
 * Valid: x ≥ 0, taken off round the stud and not off the stud.   Source: geometry (first principles)
 * Example: start 1, end 20, tip 23, x 0.5 → 1.5, 20.5, 23.5 (tests/calc/stud/reach/onResurfacedPads.test.ts)
 */
export function onResurfacedPads(stud: Stud, takenOffMm: number): Stud {
  if (takenOffMm === 0) return stud;
  return {
    ...stud,
    threadStartMm: stud.threadStartMm + takenOffMm,
    threadEndMm: stud.threadEndMm + takenOffMm,
    projectionMm: stud.projectionMm + takenOffMm,
  };
}
