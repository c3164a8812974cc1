import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import { leastSquaresPlane, type SpacePoint } from '../../measure/leastSquaresPlane.ts';

/**
 * How far the face runs out of square over the friction surface: tilt of its best plane.   T = D·√(a² + b²)
 *
 * a, b slopes of the least-squares plane [mm/mm] · D friction surface outer diameter [mm].
 * Valid: three stations not on one line; else null.   Source: first principles, on the plane of leastSquaresPlane
 * Example: design set one over Ø 264 → 0.1323 mm (tests/calc/cover/checkCover.test.ts)
 */
export function tiltOverTrack(points: readonly SpacePoint[], trackOuterDiameterMm: number): Answer {
  const plane = leastSquaresPlane(points);
  if (plane === null) {
    return {
      symbol: 'T',
      value: null,
      unit: 'mm',
      how: [],
      warnings: [{ code: 'no-plane', text: 'At least three stations that are not in one line are needed.' }],
    };
  }
  const slope = Math.hypot(plane.slopeX, plane.slopeY);
  const value = slope * trackOuterDiameterMm;
  return {
    symbol: 'T',
    value,
    unit: 'mm',
    how: [
      ...plane.how,
      {
        formula: 'T = D·√(a² + b²)',
        numbers: `T = ${printNumber(trackOuterDiameterMm, 1)} mm · ${printNumber(slope * 1000, 4)} µm/mm = ${printNumber(value, 4)} mm`,
        source: 'tilt of the least-squares plane, over the friction surface outer diameter',
      },
    ],
    warnings: [],
  };
}
