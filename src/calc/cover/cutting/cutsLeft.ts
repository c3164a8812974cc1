import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * How many more cuts of the shop's usual depth the cover has in it.   max(0, ⌊(t − t_min)/k + 1e-9⌋)
 *
 * t least wall after this cut [mm] · t_min minimum wall [mm] · k typical cut [mm].
 * Valid: k > 0.   Source: arithmetic; the typical cut is the shop's figure
 * Example: (4.80 − 4.30)/0.25 → 2 (tests/calc/cover/cutting/cutsLeft.test.ts)
 */
export function cutsLeft({
  leastWallMm,
  minimumWallMm,
  typicalCutMm,
}: {
  readonly leastWallMm: number;
  readonly minimumWallMm: number;
  readonly typicalCutMm: number;
}): Answer {
  // 1e-9 keeps 0.50/0.25 at two cuts when the subtraction leaves float dust.
  const value = Math.max(0, Math.floor((leastWallMm - minimumWallMm) / typicalCutMm + 1e-9));
  const mm = (x: number) => printNumber(x, 3);
  return {
    symbol: 'n',
    value,
    unit: 'cuts',
    how: [
      {
        formula: 'n = max(0, ⌊(t − t_min)/k⌋)',
        numbers: `n = max(0, ⌊(${mm(leastWallMm)} − ${mm(minimumWallMm)})/${mm(typicalCutMm)}⌋) = ${value}`,
        source: 'arithmetic; the typical cut is the shop’s figure',
      },
    ],
    warnings: [],
  };
}
