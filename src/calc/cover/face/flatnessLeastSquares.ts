import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import { leastSquaresPlane, type SpacePoint } from '../../measure/leastSquaresPlane.ts';

/**
 * Flatness about the least-squares plane: peak to valley.   FLTt = max eᵢ − min eᵢ,  eᵢ = zᵢ − (a xᵢ + b yᵢ + c)
 *
 * e deviation from the least-squares plane [mm].
 * Valid: three stations not on one line; else null. With exactly three it is 0 and says nothing.
 * Source: ISO 12781-1:2011, peak-to-valley flatness deviation about LSPL
 * Example: set D → 32.333333 (tests/calc/measure/planes.test.ts)
 */
export function flatnessLeastSquares(points: readonly SpacePoint[]): Answer {
  const shape = { symbol: 'FLTt', unit: 'mm' } as const;
  const plane = leastSquaresPlane(points);
  if (plane === null) {
    const text = 'At least three stations that are not in one line are needed.';
    return { ...shape, value: null, how: [], warnings: [{ code: 'no-plane', text }] };
  }
  const off = points.map((p) => p.zMm - (plane.slopeX * p.xMm + plane.slopeY * p.yMm + plane.heightMm));
  const [high, low] = [Math.max(...off), Math.min(...off)];
  return {
    ...shape,
    value: high - low,
    how: [
      ...plane.how,
      {
        formula: 'FLTt = max eᵢ − min eᵢ, eᵢ = zᵢ − (a·xᵢ + b·yᵢ + c)',
        numbers: `FLTt = ${printNumber(high, 4)} − (${printNumber(low, 4)}) = ${printNumber(high - low, 4)} mm`,
        source: 'ISO 12781-1:2011, least-squares reference plane',
      },
    ],
    warnings:
      points.length === 3
        ? [
            {
              code: 'three-points',
              text: 'Three stations always lie in one plane. Indicate a fourth to see flatness.',
            },
          ]
        : [],
  };
}
