import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { ThreadSpec } from '../../../../shared/words/stud/thread.ts';

const MM_PER_INCH = 25.4;

/**
 * Tensile stress area of a thread: the area of a plain rod that would break at the same load.
 *   metric As = π/4 · (d − 0.9382 P)²      unified At = π/4 · (D − 0.9743/n)²
 *   d, D basic major diameter [mm, in] · P pitch [mm] · n threads per inch [1/in]
 *   Valid: steel up to about 690 MPa (100 ksi) for the unified formula, ISO 898-1 classes for the metric one.
 *   Source: ISO 898-1:2013, 9.1.6.1; ASME B1.1-2003, Appendix B
 *   Example: M10 × 1.5 → 58.0 mm²; 3/8-24 → 0.0878 in² (published/threads.test.ts)
 */
export function tensileStressArea(spec: ThreadSpec): Answer & { readonly value: number } {
  if (spec.system === 'metric') {
    const value = (Math.PI / 4) * (spec.majorMm - 0.9382 * spec.pitchMm) ** 2;
    return answer(
      'As',
      value,
      'As = π/4 · (d − 0.9382 P)²',
      `π/4 · (${spec.majorMm} mm − 0.9382 · ${spec.pitchMm} mm)² = ${printNumber(value, 1)} mm²`,
      'ISO 898-1:2013, 9.1.6.1',
    );
  }
  const inch2 = (Math.PI / 4) * (spec.majorInch - 0.9743 / spec.threadsPerInch) ** 2;
  const value = inch2 * MM_PER_INCH ** 2;
  return answer(
    'At',
    value,
    'At = π/4 · (D − 0.9743/n)²',
    `π/4 · (${spec.majorInch} in − 0.9743/${spec.threadsPerInch} in)² = ${printNumber(inch2, 4)} in² = ${printNumber(value, 1)} mm²`,
    'ASME B1.1-2003, Appendix B',
  );
}

function answer(symbol: string, value: number, formula: string, numbers: string, source: string) {
  return { symbol, value, unit: 'mm²', how: [{ formula, numbers, source }], warnings: [] } as const;
}
