import { hermiteAlong } from './elements/assemble.ts';
import { curvatures, ELEMENT_FREEDOMS } from './elements/element.ts';
import { unknownsOf } from './elements/freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT } from './elements/gauss.ts';
import type { CoverModel } from './model/coverModel.ts';

export interface StressAt {
  readonly stressMPa: number;
  readonly radiusMm: number;
  readonly angleRad: number;
}

/**
 * Greatest von Mises stress at the surface, at Gauss points farther than one wall outside a pad's edge, or within its
 * stiff part's.
 *   σ_r = E·t/(2(1 − ν²))·(κ_r + ν·κ_θ), σ_θ likewise, τ = E·t/(2(1 + ν))·κ_rθ;  σ = √(σ_r² − σ_r·σ_θ + σ_θ² + 3τ²)
 *
 * E [MPa] · t thickness there [mm] · κ curvatures [1/mm]. Nearer a pad's edge the stress grows with the mesh.
 * Valid: thin plate, elastic; good to about 5 %.   Source: Timoshenko & Woinowsky-Krieger, 2nd ed., §21, and von Mises'
 * condition for plane stress (from memory)
 * Example: centre of a plate, 3.1 (tests/published/plates.test.ts); at other meshes (tests/slow/plate.test.ts)
 */
export function greatestStress(
  {
    mesh,
    pad,
    stiff,
    freedoms,
    thicknessMm,
  }: Pick<CoverModel, 'mesh' | 'pad' | 'stiff' | 'freedoms' | 'thicknessMm'>,
  w: Float64Array,
  {
    youngMPa,
    poisson,
    wallMm,
    studRadiusMm,
  }: {
    readonly youngMPa: number;
    readonly poisson: number;
    readonly wallMm: number;
    readonly studRadiusMm: number;
  },
): StressAt {
  const { radiiMm, anglesRad } = mesh;
  const columns = anglesRad.length - 1;
  const [alongRadius, alongAngle] = [hermiteAlong(radiiMm), hermiteAlong(anglesRad)];
  const bent = new Float64Array(3 * ELEMENT_FREEDOMS);
  const of = new Int32Array(ELEMENT_FREEDOMS);
  const aside = wallMm / studRadiusMm;
  let [square, atRadius, atAngle] = [-1, 0, 0];
  for (let row = 0; row + 1 < radiiMm.length; row++) {
    for (let column = 0; column < columns; column++) {
      unknownsOf(freedoms, row, column, of);
      const t = thicknessMm[row * columns + column]!;
      const bending = (youngMPa * t) / (2 * (1 - poisson ** 2));
      const twisting = (youngMPa * t) / (2 * (1 + poisson));
      for (let g = 0; g < GAUSS_COUNT; g++) {
        const radius = radiiMm[row]! + (radiiMm[row + 1]! - radiiMm[row]!) * GAUSS_AT[g]!;
        for (let h = 0; h < GAUSS_COUNT; h++) {
          const angle = anglesRad[column]! + (anglesRad[column + 1]! - anglesRad[column]!) * GAUSS_AT[h]!;
          const outside =
            radius < pad.innerMm - wallMm ||
            radius > (pad.clipped ? Number.POSITIVE_INFINITY : pad.outerMm + wallMm) ||
            angle > pad.halfAngleRad + aside;
          const inside =
            radius > stiff.innerMm + wallMm &&
            radius < (stiff.clipped ? Number.POSITIVE_INFINITY : stiff.outerMm - wallMm) &&
            angle < stiff.halfAngleRad - aside;
          if (!outside && !inside) continue;
          curvatures(
            radius,
            alongRadius,
            (row * GAUSS_COUNT + g) * 12,
            alongAngle,
            (column * GAUSS_COUNT + h) * 12,
            bent,
          );
          let radial = 0;
          let around = 0;
          let twist = 0;
          for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
            const i = of[k]!;
            if (i < 0) continue;
            radial += bent[k]! * w[i]!;
            around += bent[k + 16]! * w[i]!;
            twist += bent[k + 32]! * w[i]!;
          }
          const sr = bending * (radial + poisson * around);
          const st = bending * (around + poisson * radial);
          const shear = twisting * twist;
          const here = sr * sr - sr * st + st * st + 3 * shear * shear;
          if (here <= square) continue;
          square = here;
          atRadius = radius;
          atAngle = angle;
        }
      }
    }
  }
  return { stressMPa: Math.sqrt(Math.max(0, square)), radiusMm: atRadius, angleRad: atAngle };
}
