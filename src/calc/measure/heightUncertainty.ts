import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { type Calibration, calibrationUncertainty } from './calibrationUncertainty.ts';

/**
 * Standard uncertainty of one height by indicator.
 *   u_z = √( (U/k)² + (a/√12)² + s² )
 *
 * U, k of the certificate [mm], [1] · a smallest step of the dial [mm]: read to the nearest step, a height lies anywhere
 * within ± a/2 · s standard deviation of one reading, found by repeats [mm]. What is null counts as nothing.
 * Valid: independent errors, k > 0, a and s at least 0. null when nothing is known.
 * Source: JCGM 100:2008, 4.3.3, 4.3.7 and 5.1.2, from memory
 * Example: U 0.004, k 2, a 0.01, s 0.002 → u_z 0.00404 mm (tests/calc/measure/gaugeUncertainty.test.ts)
 */
export function heightUncertainty({
  calibration,
  stepMm,
  repeatabilityMm,
}: {
  readonly calibration: Calibration | null;
  readonly stepMm: number | null;
  readonly repeatabilityMm: number | null;
}): Answer | null {
  const calibrated = calibration && calibrationUncertainty(calibration);
  const parts = [
    calibrated?.value ?? null,
    stepMm === null ? null : stepMm / Math.sqrt(12),
    repeatabilityMm,
  ].filter((part) => part !== null);
  if (parts.length === 0) return null;
  const value = Math.hypot(...parts);
  const print = (mm: number) => printNumber(mm, 5);
  return {
    symbol: 'u_z',
    value,
    unit: 'mm',
    how: [
      ...(calibrated?.how ?? []),
      {
        formula: 'u_z = √(u_cal² + (a/√12)² + s²)',
        numbers: `u_z = √(${parts.map((part) => `(${print(part)} mm)²`).join(' + ')}) = ${print(value)} mm`,
        source: 'JCGM 100:2008, 4.3.7 and 5.1.2',
      },
    ],
    warnings: [],
  };
}
