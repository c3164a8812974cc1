import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * The depth of cut a machinist sets, from first touch at the highest point.   k = max zᵢ − c
 *
 * z indicator reading, + proud [mm] · c height of the tool plane [mm].
 * Valid: any heights.   Source: geometry of facing (first principles)
 * Example: design set one: 0.07 − (−0.35) → 0.42 (tests/calc/cover/checkCover.test.ts)
 */
export function cutDialled({
  heightsMm,
  toolPlaneMm,
}: {
  readonly heightsMm: readonly number[];
  readonly toolPlaneMm: number;
}): Answer {
  const highest = Math.max(...heightsMm);
  const value = highest - toolPlaneMm;
  const mm = (x: number) => printNumber(x, 3);
  return {
    symbol: 'k',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'k = max zᵢ − c',
        numbers: `k = ${mm(highest)} − (${mm(toolPlaneMm)}) = ${mm(value)} mm`,
        source: 'geometry of facing: the tool touches first at the highest station',
      },
    ],
    warnings: [],
  };
}
