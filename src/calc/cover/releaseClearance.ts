import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';

/**
 * Lock-up clutch release clearance after facing.   s' = s + k
 *
 * s clearance before [mm] · k depth of cut [mm]. A shim or a lining thicker by k restores it.
 * Valid: the face moves away from the piston by the whole cut.   Source: geometry (first principles)
 * Example: 0.80 + 0.42 → 1.22 (tests/calc/cover/checkCover.test.ts)
 */
export function releaseClearance({
  beforeMm,
  dialledMm,
}: {
  readonly beforeMm: number;
  readonly dialledMm: number;
}): Answer {
  const value = beforeMm + dialledMm;
  const mm = (x: number) => printNumber(x, 3);
  return {
    symbol: "s'",
    value,
    unit: 'mm',
    how: [
      {
        formula: "s' = s + k",
        numbers: `s' = ${mm(beforeMm)} + ${mm(dialledMm)} = ${mm(value)} mm`,
        source: 'geometry: the face moves away from the piston by the cut',
      },
    ],
    warnings: [],
  };
}
