import type { Step } from '../../../shared/words/answer.ts';
import { printNumber } from '../../../shared/words/print.ts';

export interface SpacePoint {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

/** z = slopeX·x + slopeY·y + heightMm. */
export interface Plane {
  readonly slopeX: number;
  readonly slopeY: number;
  readonly heightMm: number;
  readonly how: readonly Step[];
}

/** Below this share of a round cloud's spread the points lie on one line, and any plane through it fits. */
const COLLINEAR = 1e-9;

/**
 * The plane that fits points best by heights.   min Σ (zᵢ − (a xᵢ + b yᵢ + c))²
 *
 * x, y place in the face [mm] · z height [mm] · a, b slopes [mm/mm] · c height at the axis [mm].
 * Valid: three points not on one line; else null.   Source: normal equations of linear least squares about the
 * centroid (first principles); used as the reference plane LSPL of ISO 12781-1:2011
 * Example: the nine points of set D → a 3.333333, b −2.5, c 0.388889 (tests/calc/measure/planes.test.ts)
 */
export function leastSquaresPlane(points: readonly SpacePoint[]): Plane | null {
  const n = points.length;
  if (n < 3) return null;
  const mean = (pick: (p: SpacePoint) => number) => points.reduce((sum, p) => sum + pick(p), 0) / n;
  const [xm, ym, zm] = [mean((p) => p.xMm), mean((p) => p.yMm), mean((p) => p.zMm)];
  let [sxx, sxy, syy, sxz, syz] = [0, 0, 0, 0, 0];
  for (const p of points) {
    const [x, y, z] = [p.xMm - xm, p.yMm - ym, p.zMm - zm];
    sxx += x * x;
    sxy += x * y;
    syy += y * y;
    sxz += x * z;
    syz += y * z;
  }
  const det = sxx * syy - sxy * sxy;
  if (!(det > COLLINEAR * ((sxx + syy) / 2) ** 2)) return null;
  const slopeX = (sxz * syy - syz * sxy) / det;
  const slopeY = (syz * sxx - sxz * sxy) / det;
  const heightMm = zm - slopeX * xm - slopeY * ym;
  const slope = (s: number) => printNumber(s * 1000, 4);
  return {
    slopeX,
    slopeY,
    heightMm,
    how: [
      {
        formula: 'z = a·x + b·y + c, with Σ (zᵢ − (a·xᵢ + b·yᵢ + c))² least',
        numbers: `${n} points: a = ${slope(slopeX)} µm/mm, b = ${slope(slopeY)} µm/mm, c = ${printNumber(heightMm, 4)} mm`,
        source: 'least squares; the reference plane LSPL of ISO 12781-1:2011',
      },
    ],
  };
}
