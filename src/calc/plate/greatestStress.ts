import { hermiteAlong } from './elements/assemble.ts';
import { curvatures, ELEMENT_FREEDOMS } from './elements/element.ts';
import { unknownsOf } from './elements/freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT } from './elements/gauss.ts';
import type { CoverModel } from './model/coverModel.ts';
import type { PadPatch } from './model/padPatch.ts';

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
 * Example: center of a plate, 3.1 (tests/published/plates.test.ts); at other meshes (tests/slow/plate.test.ts)
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
  const judged = awayFromEdges(pad, stiff, wallMm, wallMm / studRadiusMm);
  let [square, atRadius, atAngle] = [-1, 0, 0];
  for (let row = 0; row + 1 < radiiMm.length; row++) {
    for (let column = 0; column < columns; column++) {
      unknownsOf(freedoms, row, column, of);
      const t = thicknessMm[row * columns + column]!;
      const bending = (youngMPa * t) / (2 * (1 - poisson ** 2));
      const twisting = (youngMPa * t) / (2 * (1 + poisson));
      for (let g = 0; g < GAUSS_COUNT; g++) {
        const radius = radiiMm[row]! + (radiiMm[row + 1]! - radiiMm[row]!) * GAUSS_AT[g]!;
        const onRadius = (row * GAUSS_COUNT + g) * 12;
        for (let h = 0; h < GAUSS_COUNT; h++) {
          const angle = anglesRad[column]! + (anglesRad[column + 1]! - anglesRad[column]!) * GAUSS_AT[h]!;
          if (!judged(radius, angle)) continue;
          curvatures(radius, alongRadius, onRadius, alongAngle, (column * GAUSS_COUNT + h) * 12, bent);
          const here = squareOfStress(bent, of, w, bending, twisting, poisson);
          if (here > square) [square, atRadius, atAngle] = [here, radius, angle];
        }
      }
    }
  }
  return { stressMPa: Math.sqrt(Math.max(0, square)), radiusMm: atRadius, angleRad: atAngle };
}

/** Farther than one wall from the edges of the pad and of its stiff part. */
function awayFromEdges(pad: PadPatch, stiff: PadPatch, wallMm: number, aside: number) {
  const outerMm = (patch: PadPatch, by: number) =>
    patch.clipped ? Number.POSITIVE_INFINITY : patch.outerMm + by;
  const [padEnds, stiffEnds] = [outerMm(pad, wallMm), outerMm(stiff, -wallMm)];
  return (radius: number, angle: number): boolean =>
    radius < pad.innerMm - wallMm ||
    radius > padEnds ||
    angle > pad.halfAngleRad + aside ||
    (radius > stiff.innerMm + wallMm && radius < stiffEnds && angle < stiff.halfAngleRad - aside);
}

/** σ² at the surface, from the curvatures that the element’s unknowns make there. */
function squareOfStress(
  bent: Float64Array,
  of: Int32Array,
  w: Float64Array,
  bending: number,
  twisting: number,
  poisson: number,
): number {
  let [radial, around, twist] = [0, 0, 0];
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
  return sr * sr - sr * st + st * st + 3 * shear * shear;
}
