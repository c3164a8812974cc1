import { ALONG_ANGLE, ALONG_RADIUS, ELEMENT_FREEDOMS, shapes } from './element.ts';
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

/**
 * The lower half of one element’s matrix, always in the same array. A function of an element is one of the radius times
 * one of the angle, f(r)·g(θ), so that each sum over its Gauss points is a sum along the radius times one along the
 * angle. With A = f″, B = f′/r and C = f/r²:
 *   K_ij = D·[ R₀·∫gᵢgⱼ + R₁ᵢⱼ·∫gᵢgⱼ″ + R₁ⱼᵢ·∫gᵢ″gⱼ + R₂·∫gᵢ″gⱼ″ + R₃·∫gᵢ′gⱼ′ ]
 *   R₀ = ∫(AᵢAⱼ + BᵢBⱼ + ν(AᵢBⱼ + BᵢAⱼ)) r dr    R₁ = ∫(Bᵢ + νAᵢ)Cⱼ r dr    R₂ = ∫CᵢCⱼ r dr
 *   R₃ = 2(1 − ν)·∫(Bᵢ − Cᵢ)(Bⱼ − Cⱼ) r dr
 */
function elementStiffness(
  { radiiMm, anglesRad }: PlateMesh,
  along: { readonly radius: Float64Array; readonly angle: Float64Array },
  poisson: number,
): (row: number, column: number, rigidityNmm: number) => Float64Array {
  const local = new Float64Array(ELEMENT_FREEDOMS * ELEMENT_FREEDOMS);
  const ofColumn = Array.from({ length: anglesRad.length - 1 }, (_, column) =>
    alongAngle(along.angle, column, anglesRad[column + 1]! - anglesRad[column]!),
  );
  const ofRow = new Float64Array(4 * 16);
  let summedRow = -1;
  return (row, column, rigidity) => {
    if (row !== summedRow) {
      alongRadius(along.radius, row, radiiMm[row]!, radiiMm[row + 1]!, poisson, ofRow);
      summedRow = row;
    }
    const angle = ofColumn[column]!;
    for (let i = 0; i < ELEMENT_FREEDOMS; i++) {
      const ri = ALONG_RADIUS[i]!;
      const ai = ALONG_ANGLE[i]!;
      for (let j = 0, at = ELEMENT_FREEDOMS * i; j <= i; j++, at++) {
        const rj = ALONG_RADIUS[j]!;
        const aj = ALONG_ANGLE[j]!;
        const r = 4 * ri + rj;
        const a = 4 * ai + aj;
        const rBack = 4 * rj + ri;
        const aBack = 4 * aj + ai;
        local[at] =
          rigidity *
          (ofRow[r]! * angle[a]! +
            ofRow[16 + r]! * angle[16 + a]! +
            ofRow[16 + rBack]! * angle[16 + aBack]! +
            ofRow[32 + r]! * angle[32 + a]! +
            ofRow[48 + r]! * angle[48 + a]!);
      }
    }
    return local;
  };
}

/** R₀ to R₃ of one row of elements, sixteen numbers each. */
function alongRadius(
  hermites: Float64Array,
  row: number,
  fromMm: number,
  toMm: number,
  poisson: number,
  out: Float64Array,
): void {
  out.fill(0);
  for (let g = 0; g < GAUSS_COUNT; g++) {
    const radius = fromMm + (toMm - fromMm) * GAUSS_AT[g]!;
    const weight = radius * (toMm - fromMm) * GAUSS_WEIGHT[g]!;
    const at = (row * GAUSS_COUNT + g) * 12;
    for (let i = 0; i < 4; i++) {
      const [A, B, C] = [
        hermites[at + 8 + i]!,
        hermites[at + 4 + i]! / radius,
        hermites[at + i]! / radius ** 2,
      ];
      for (let j = 0; j < 4; j++) {
        const [a, b, c] = [
          hermites[at + 8 + j]!,
          hermites[at + 4 + j]! / radius,
          hermites[at + j]! / radius ** 2,
        ];
        const to = 4 * i + j;
        out[to] = out[to]! + weight * (A * a + B * b + poisson * (A * b + B * a));
        out[16 + to] = out[16 + to]! + weight * (B + poisson * A) * c;
        out[32 + to] = out[32 + to]! + weight * C * c;
        out[48 + to] = out[48 + to]! + 2 * weight * (1 - poisson) * (B - C) * (b - c);
      }
    }
  }
}

/** ∫gᵢgⱼ, ∫gᵢgⱼ″, ∫gᵢ″gⱼ″ and ∫gᵢ′gⱼ′ of one column of elements, sixteen numbers each. */
function alongAngle(hermites: Float64Array, column: number, sweepRad: number): Float64Array {
  const out = new Float64Array(4 * 16);
  for (let h = 0; h < GAUSS_COUNT; h++) {
    const weight = sweepRad * GAUSS_WEIGHT[h]!;
    const at = (column * GAUSS_COUNT + h) * 12;
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) {
        const to = 4 * i + j;
        out[to] = out[to]! + weight * hermites[at + i]! * hermites[at + j]!;
        out[16 + to] = out[16 + to]! + weight * hermites[at + i]! * hermites[at + 8 + j]!;
        out[32 + to] = out[32 + to]! + weight * hermites[at + 8 + i]! * hermites[at + 8 + j]!;
        out[48 + to] = out[48 + to]! + weight * hermites[at + 4 + i]! * hermites[at + 4 + j]!;
      }
    }
  }
  return out;
}

/** Puts an element's lower half where its unknowns are. Several freedoms may be one unknown, as along a rigid edge. */
export function addLocal(
  { start, values }: Pick<Skyline, 'start' | 'values'>,
  of: Int32Array,
  local: Float64Array,
): void {
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
