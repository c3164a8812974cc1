import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/** A place the cut must clean: how high its sound metal stands, and how deep its mark goes from there. */
export interface ToClean {
  readonly heightMm: number;
  readonly depthMm: number;
}

/**
 * The height of the tool plane that just cleans every mark, square to the axis.   c = min(zᵢ − dᵢ) − ε
 *
 * z indicator reading, + proud [mm] · d mark depth [mm] · ε clean-up allowance [mm].
 * Valid: at least one place.   Source: geometry of facing (first principles)
 * Example: design set one, ε 0.05 → c −0.35 (tests/calc/cover/checkCover.test.ts)
 */
export function cleanUpToolPlane(places: readonly ToClean[], allowanceMm: number): Answer {
  const deepest = places.reduce((low, next) =>
    next.heightMm - next.depthMm < low.heightMm - low.depthMm ? next : low,
  );
  const value = deepest.heightMm - deepest.depthMm - allowanceMm;
  const mm = (x: number) => printNumber(x, 3);
  return {
    symbol: 'c',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'c = min(zᵢ − dᵢ) − ε',
        numbers: `c = ${mm(deepest.heightMm)} − ${mm(deepest.depthMm)} − ${mm(allowanceMm)} = ${mm(value)} mm`,
        source: 'geometry of facing: the tool plane stands square to the axis, below the deepest mark by ε',
      },
    ],
    warnings: [],
  };
}
