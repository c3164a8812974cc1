import { curvatures, ELEMENT_FREEDOMS, shapes } from './element.ts';
import { type Freedoms, firstUnknowns, unknownsOf } from './freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT, GAUSS_WEIGHT } from './gauss.ts';
import { hermite } from './hermite.ts';
import type { PlateMesh } from './mesh.ts';
import { emptySkyline, type Skyline } from './skyline.ts';

/** Twelve numbers of `hermite` at each of the four Gauss points of each stretch between two lines. */
export function hermiteAlong(lines: Float64Array): Float64Array {
  const out = new Float64Array((lines.length - 1) * GAUSS_COUNT * 12);
  for (let i = 0; i + 1 < lines.length; i++) {
    const h = lines[i + 1]! - lines[i]!;
    for (let g = 0; g < GAUSS_COUNT; g++) hermite(GAUSS_AT[g]!, h, out, (i * GAUSS_COUNT + g) * 12);
  }
  return out;
}

/**
 * The stiffness of a thin plate, from its strain energy.
 *   U = ∫ ½ D [κ_r² + κ_θ² + 2ν κ_r κ_θ + 2(1 − ν) κ_rθ²] r dr dθ  +  ½ ∫ k w_r² R dθ  along the outer edge
 *
 * D rigidity of each element [N·mm] · ν Poisson's ratio · k turning stiffness along the outer edge [N·mm/rad per mm].
 * With w = Σ uᵢ Nᵢ the energy is ½ Σ K_ij uᵢ u_j; K_ij is summed at 4 × 4 Gauss points of each element.
 * Valid: thin plate, small deflection.   Source: Timoshenko & Woinowsky-Krieger, 2nd ed., §§21 and 62 (from memory)
 * Example: annular plates (tests/published/plates.test.ts)
 */
export function assembleStiffness({
  mesh,
  freedoms,
  rigidityNmm,
  poisson,
  outerEdgeSpringN = 0,
  whole = () => false,
}: {
  readonly mesh: PlateMesh;
  readonly freedoms: Freedoms;
  /** Of each element, ring by ring. */
  readonly rigidityNmm: Float64Array;
  readonly poisson: number;
  /** N·mm per radian and per mm of edge, which is N. */
  readonly outerEdgeSpringN?: number;
  /** Rows of elements in which every unknown meets every other. */
  readonly whole?: (row: number) => boolean;
}): Skyline {
  const { radiiMm, anglesRad } = mesh;
  const [rows, columns] = [radiiMm.length - 1, anglesRad.length - 1];
  const matrix = emptySkyline(firstUnknowns(freedoms, mesh, whole));
  const along = { radius: hermiteAlong(radiiMm), angle: hermiteAlong(anglesRad) };
  const stiffnessOf = elementStiffness(mesh, along, poisson);
  const of = new Int32Array(ELEMENT_FREEDOMS);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const local = stiffnessOf(row, column, rigidityNmm[row * columns + column]!);
      unknownsOf(freedoms, row, column, of);
      addLocal(matrix, of, local);
      if (row === rows - 1 && outerEdgeSpringN > 0) {
        const sweep = anglesRad[column + 1]! - anglesRad[column]!;
        addEdgeSpring(matrix, of, along.angle, column, outerEdgeSpringN * radiiMm[rows]! * sweep);
      }
    }
  }
  return matrix;
}

/** The lower half of one element’s matrix, always in the same array. */
function elementStiffness(
  { radiiMm, anglesRad }: PlateMesh,
  along: { readonly radius: Float64Array; readonly angle: Float64Array },
  poisson: number,
): (row: number, column: number, rigidityNmm: number) => Float64Array {
  const bent = new Float64Array(3 * ELEMENT_FREEDOMS);
  const moment = new Float64Array(3 * ELEMENT_FREEDOMS);
  const local = new Float64Array(ELEMENT_FREEDOMS * ELEMENT_FREEDOMS);
  return (row, column, rigidity) => {
    const from = radiiMm[row]!;
    const width = radiiMm[row + 1]! - from;
    const sweep = anglesRad[column + 1]! - anglesRad[column]!;
    local.fill(0);
    for (let g = 0; g < GAUSS_COUNT; g++) {
      const radius = from + width * GAUSS_AT[g]!;
      const ofRadius = rigidity * radius * width * sweep * GAUSS_WEIGHT[g]!;
      const atRadius = (row * GAUSS_COUNT + g) * 12;
      for (let h = 0; h < GAUSS_COUNT; h++) {
        const weight = ofRadius * GAUSS_WEIGHT[h]!;
        curvatures(radius, along.radius, atRadius, along.angle, (column * GAUSS_COUNT + h) * 12, bent);
        for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
          moment[k] = weight * (bent[k]! + poisson * bent[k + 16]!);
          moment[k + 16] = weight * (bent[k + 16]! + poisson * bent[k]!);
          moment[k + 32] = 2 * weight * (1 - poisson) * bent[k + 32]!;
        }
        addEnergy(local, bent, moment);
      }
    }
    return local;
  };
}

function addEnergy(local: Float64Array, bent: Float64Array, moment: Float64Array): void {
  for (let i = 0; i < ELEMENT_FREEDOMS; i++) {
    const radial = bent[i]!;
    const around = bent[i + 16]!;
    const twist = bent[i + 32]!;
    for (let j = 0, at = ELEMENT_FREEDOMS * i; j <= i; j++, at++) {
      local[at] = local[at]! + radial * moment[j]! + around * moment[j + 16]! + twist * moment[j + 32]!;
    }
  }
}

/** Puts an element's lower half where its unknowns are. Several freedoms may be one unknown, as along a rigid edge. */
function addLocal({ start, values }: Skyline, of: Int32Array, local: Float64Array): void {
  for (let i = 0; i < ELEMENT_FREEDOMS; i++) {
    const unknownI = of[i]!;
    if (unknownI < 0) continue;
    for (let j = 0; j <= i; j++) {
      const unknownJ = of[j]!;
      if (unknownJ < 0) continue;
      const twice = i !== j && unknownI === unknownJ ? 2 : 1;
      const at = unknownI >= unknownJ ? start[unknownI]! + unknownJ : start[unknownJ]! + unknownI;
      values[at] = values[at]! + twice * local[ELEMENT_FREEDOMS * i + j]!;
    }
  }
}

/** Freedoms w_r and w_rθ of the two outer corners, in the order of the Hermite functions along the angle. */
const SLOPES = new Int32Array([5, 7, 13, 15]);

function addEdgeSpring(
  { start, values }: Skyline,
  of: Int32Array,
  alongAngle: Float64Array,
  column: number,
  perAngle: number,
): void {
  for (let h = 0; h < GAUSS_COUNT; h++) {
    const at = (column * GAUSS_COUNT + h) * 12;
    const weight = perAngle * GAUSS_WEIGHT[h]!;
    for (let a = 0; a < 4; a++) {
      for (let b = 0; b < 4; b++) {
        const i = of[SLOPES[a]!]!;
        const j = of[SLOPES[b]!]!;
        if (i < 0 || j < 0 || j > i) continue;
        values[start[i]! + j] = values[start[i]! + j]! + weight * alongAngle[at + a]! * alongAngle[at + b]!;
      }
    }
  }
}

/**
 * The load of a pressure, + toward the engine.   fᵢ = ∫ p Nᵢ r dr dθ, 4 × 4 Gauss points in each element
 *
 * Valid: p smooth within an element.   Source: work of the load in a virtual deflection (first principles)
 * Example: the load of one on a ring is its area (tests/calc/plate/elements/assemble.test.ts)
 */
export function assembleLoad({
  mesh,
  freedoms,
  pressureAt,
}: {
  readonly mesh: PlateMesh;
  readonly freedoms: Freedoms;
  readonly pressureAt: (radiusMm: number, row: number, column: number) => number;
}): Float64Array {
  const { radiiMm, anglesRad } = mesh;
  const load = new Float64Array(freedoms.size);
  const [alongRadius, alongAngle] = [hermiteAlong(radiiMm), hermiteAlong(anglesRad)];
  const shape = new Float64Array(ELEMENT_FREEDOMS);
  const of = new Int32Array(ELEMENT_FREEDOMS);
  for (let row = 0; row + 1 < radiiMm.length; row++) {
    const from = radiiMm[row]!;
    const width = radiiMm[row + 1]! - from;
    for (let column = 0; column + 1 < anglesRad.length; column++) {
      const sweep = anglesRad[column + 1]! - anglesRad[column]!;
      unknownsOf(freedoms, row, column, of);
      for (let g = 0; g < GAUSS_COUNT; g++) {
        const radius = from + width * GAUSS_AT[g]!;
        const force = pressureAt(radius, row, column) * radius * width * sweep * GAUSS_WEIGHT[g]!;
        if (force === 0) continue;
        for (let h = 0; h < GAUSS_COUNT; h++) {
          const weight = force * GAUSS_WEIGHT[h]!;
          shapes(
            alongRadius,
            (row * GAUSS_COUNT + g) * 12,
            alongAngle,
            (column * GAUSS_COUNT + h) * 12,
            shape,
          );
          for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
            if (of[k]! >= 0) load[of[k]!] = load[of[k]!]! + weight * shape[k]!;
          }
        }
      }
    }
  }
  return load;
}
