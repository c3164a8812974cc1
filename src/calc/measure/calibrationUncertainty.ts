import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';

/** What a certificate says of a gauge. */
export interface Calibration {
  readonly expandedMm: number;
  readonly coverageFactor: number;
}

/**
 * Standard uncertainty of a gauge's calibration, from its certificate.
 *   u_cal = U / k
 *
 * U expanded uncertainty of the certificate [mm] · k the coverage factor it was expanded with [1].
 * Valid: k > 0, and the certificate states U with its k.   Source: JCGM 100:2008, 4.3.3 and 6.2.1, from memory
 * Example: U 0.004 mm, k 2 → u_cal 0.002 mm (tests/calc/measure/gaugeUncertainty.test.ts)
 */
export function calibrationUncertainty({ expandedMm, coverageFactor }: Calibration): Answer {
  const value = expandedMm / coverageFactor;
  const print = (mm: number) => `${printNumber(mm, 5)} mm`;
  return {
    symbol: 'u_cal',
    value,
    unit: 'mm',
    how: [
      {
        formula: 'u_cal = U / k',
        numbers: `u_cal = ${print(expandedMm)} / ${coverageFactor} = ${print(value)}`,
        source: 'JCGM 100:2008, 4.3.3',
      },
    ],
    warnings: [],
  };
}
