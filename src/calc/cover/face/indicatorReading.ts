import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * What the indicator swings through over all stations: the total reading.   max zᵢ − min zᵢ
 *
 * z indicator reading [mm].
 * Valid: at least one height.   Source: definition of the total indicator reading, common practice
 * Example: design set one: 0.07 − (−0.06) → 0.13 (tests/calc/cover/checkCover.test.ts)
 */
export function indicatorReading(heightsMm: readonly number[]): Answer {
  const [high, low] = [Math.max(...heightsMm), Math.min(...heightsMm)];
  return {
    symbol: 'TIR',
    value: high - low,
    unit: 'mm',
    how: [
      {
        formula: 'TIR = max zᵢ − min zᵢ',
        numbers: `TIR = ${printNumber(high, 3)} − (${printNumber(low, 3)}) = ${printNumber(high - low, 3)} mm`,
        source: 'definition of the total indicator reading (common practice)',
      },
    ],
    warnings: [],
  };
}
