import type { Answer } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { meanOfRepeats } from './meanOfRepeats.ts';

/**
 * Standard deviation of one reading, pooled over every place read more than once.
 *   s = √( Σ Σ (tᵢₖ − t̄ᵢ)² / Σ (nᵢ − 1) ),  ν = Σ (nᵢ − 1)
 *
 * tᵢₖ reading k at place i [mm] · nᵢ readings there · ν degrees of freedom.
 * Valid: at least one place read twice; else null.   Source: JCGM 100:2008, 4.2.4
 * Example: 1, 3 and 2, 4, 6 → s √(10/3), ν 3 (tests/calc/measure/pooledRepeatability.test.ts)
 */
export function pooledRepeatability(places: readonly (readonly number[])[]): {
  readonly answer: Answer;
  readonly standardDeviationMm: number;
  readonly degreesOfFreedom: number;
} | null {
  let [squares, nu] = [0, 0];
  for (const readings of places) {
    const mean = meanOfRepeats(readings);
    for (const reading of readings) squares += (reading - mean) ** 2;
    nu += readings.length - 1;
  }
  if (nu === 0) return null;
  const s = Math.sqrt(squares / nu);
  return {
    standardDeviationMm: s,
    degreesOfFreedom: nu,
    answer: {
      symbol: 's',
      value: s,
      unit: 'mm',
      how: [
        {
          formula: 's = √(Σ Σ (tᵢₖ − t̄ᵢ)² / Σ (nᵢ − 1))',
          numbers: `s = √(${squares.toExponential(3)} mm² / ${nu}) = ${printNumber(s, 5)} mm`,
          source: 'JCGM 100:2008, 4.2.4',
        },
      ],
      warnings: [],
    },
  };
}
