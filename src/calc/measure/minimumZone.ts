import type { SpacePoint } from './leastSquaresPlane.ts';
import { leastSquaresPlane } from './leastSquaresPlane.ts';
import { linearProgramme } from './linearProgramme.ts';

/**
 * The narrowest pair of parallel planes that holds every point, by heights.
 *   least h with |zᵢ − (a xᵢ + b yᵢ + c)| ≤ h/2
 *
 * x, y place in the face [mm] · z height [mm] · h width of the zone [mm].
 * Valid: three points not on one line; else null. The width is taken anew from the plane found, so it is never
 * narrower than the points allow.   Source: ISO 12781-1:2011, minimum zone reference planes; a linear program
 * Example: set D → 27 (tests/calc/measure/planes.test.ts)
 */
export function minimumZone(
  points: readonly SpacePoint[],
): { readonly widthMm: number; readonly slopeX: number; readonly slopeY: number } | null {
  const start = leastSquaresPlane(points);
  if (start === null) return null;
  // Only what the least-squares plane leaves over goes to the solver, scaled to about 1.
  const over = points.map((p) => p.zMm - start.slopeX * p.xMm - start.slopeY * p.yMm - start.heightMm);
  const scaleZ = Math.max(...over) - Math.min(...over);
  const scaleXY = Math.max(...points.map((p) => Math.hypot(p.xMm, p.yMm)));
  if (scaleZ < 1e-12) return { widthMm: scaleZ, slopeX: start.slopeX, slopeY: start.slopeY };

  const found = linearProgramme({
    goal: { h: 1 },
    direction: 'minimize',
    limits: points.flatMap((p, i) => {
      const plane = { a: p.xMm / scaleXY, b: p.yMm / scaleXY, c: 1 };
      const z = over[i]! / scaleZ;
      return [
        { of: { ...plane, h: 0.5 }, atLeast: z },
        { of: { ...plane, h: -0.5 }, atMost: z },
      ];
    }),
  });
  const tilted = { a: ((found?.a ?? 0) * scaleZ) / scaleXY, b: ((found?.b ?? 0) * scaleZ) / scaleXY };
  const left = points.map((p, i) => over[i]! - tilted.a * p.xMm - tilted.b * p.yMm);
  return {
    widthMm: Math.max(...left) - Math.min(...left),
    slopeX: start.slopeX + tilted.a,
    slopeY: start.slopeY + tilted.b,
  };
}
