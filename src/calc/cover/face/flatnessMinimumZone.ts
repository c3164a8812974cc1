import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { SpacePoint } from '../../measure/leastSquaresPlane.ts';
import { minimumZone } from '../../measure/minimumZone.ts';

/**
 * Flatness of the face by the minimum zone.   FLTt = least h with |zᵢ − (a xᵢ + b yᵢ + c)| ≤ h/2
 *
 * z indicator reading [mm] · h width of the zone [mm].
 * Valid: three stations not on one line; else null.   Source: ISO 12781-1:2011, minimum zone reference planes
 * Example: design set one → 0.01035 (tests/calc/cover/checkCover.test.ts)
 */
export function flatnessMinimumZone(points: readonly SpacePoint[]): Answer {
  const shape = { symbol: 'FLTt(MZ)', unit: 'mm' } as const;
  const zone = minimumZone(points);
  if (zone === null) {
    const text = 'At least three stations that are not in one line are needed.';
    return { ...shape, value: null, how: [], warnings: [{ code: 'no-plane', text }] };
  }
  const slope = (s: number) => printNumber(s * 1000, 4);
  return {
    ...shape,
    value: zone.widthMm,
    how: [
      {
        formula: 'FLTt(MZ) = least h with |zᵢ − (a·xᵢ + b·yᵢ + c)| ≤ h/2',
        numbers: `a = ${slope(zone.slopeX)} µm/mm, b = ${slope(zone.slopeY)} µm/mm: h = ${printNumber(zone.widthMm, 4)} mm`,
        source: 'ISO 12781-1:2011, minimum zone; solved as a linear program',
      },
    ],
    warnings: [],
  };
}
