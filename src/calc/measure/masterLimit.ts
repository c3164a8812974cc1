import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';
import type { Calibration } from './calibrationUncertainty.ts';

/**
 * How far one reading of a gauge may be from a master before they disagree.
 *   e_max = √( U² + k² (a²/12 + s²) )
 *
 * U, k of the certificate [mm], [1] · a resolution [mm] · s standard deviation of one reading [mm]. What is null counts
 * as nothing; without a certificate k is 2.
 * Valid: the master counts as exact: a gauge block, or one known ten times better than the gauge. null when nothing is
 * known.
 * Source: JCGM 200:2012, 2.47 (measurement results that agree within their uncertainty), from memory
 * Example: U 0.004, k 2, a 0.001, s 0.0015 → e_max 0.00503 mm (tests/calc/measure/masterChecks.test.ts)
 */
export function masterLimit({
  calibration,
  stepMm,
  repeatabilityMm,
}: {
  readonly calibration: Calibration | null;
  readonly stepMm: number | null;
  readonly repeatabilityMm: number | null;
}): Answer | null {
  if (calibration === null && stepMm === null && repeatabilityMm === null) return null;
  const k = calibration?.coverageFactor ?? 2;
  const [U, a, s] = [calibration?.expandedMm ?? 0, stepMm ?? 0, repeatabilityMm ?? 0];
  const value = Math.sqrt(U ** 2 + k ** 2 * (a ** 2 / 12 + s ** 2));
  const print = (mm: number) => printNumber(mm, 5);
  return {
    symbol: 'e_max',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'e_max = √(U² + k² (a²/12 + s²))',
        numbers: `e_max = √((${print(U)} mm)² + ${k}² ((${print(a)} mm)²/12 + (${print(s)} mm)²)) = ${print(value)} mm`,
        source: 'JCGM 200:2012, 2.47',
      },
    ],
    warnings: [],
  };
}
