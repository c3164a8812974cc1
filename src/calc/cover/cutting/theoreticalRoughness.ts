import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * Roughness a round-nosed tool leaves by its feed alone.   Rt = f²/(8 r),  Ra = f²/(18√3·r) ≈ 0.032 f²/r
 *
 * f feed [mm/rev] · r nose radius [mm]; Rt, Ra in µm.
 * Valid: f small beside r; chatter, built-up edge and the material add to it.
 * Source: geometry of circular arcs; the usual formulas of turning handbooks
 * Example: f 0.2, r 0.8 → Rt 6.25, Ra 1.60 (tests/published/machining.test.ts)
 */
export function theoreticalRoughness({
  feedMm,
  noseRadiusMm,
}: {
  readonly feedMm: number;
  readonly noseRadiusMm: number;
}): { readonly rt: Answer; readonly ra: Answer } {
  const answer = (symbol: string, formula: string, divisor: number): Answer => {
    const value = (1000 * feedMm ** 2) / (divisor * noseRadiusMm);
    return {
      symbol,
      value,
      unit: 'µm',
      how: [
        {
          formula,
          numbers: `${symbol} = (${feedMm} mm)²/(${printNumber(divisor, 2)} · ${noseRadiusMm} mm) = ${printNumber(value, 2)} µm`,
          source: 'geometry of a round-nosed tool',
        },
      ],
      warnings: [],
    };
  };
  return { rt: answer('Rt', 'Rt = f²/(8·r)', 8), ra: answer('Ra', 'Ra = f²/(18·√3·r)', 18 * Math.sqrt(3)) };
}
