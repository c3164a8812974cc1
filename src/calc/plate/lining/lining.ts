import { addLocal, hermiteAlong } from '../elements/assemble.ts';
import { ELEMENT_FREEDOMS, shapes } from '../elements/element.ts';
import { type Freedoms, unknownsOf } from '../elements/freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT, GAUSS_WEIGHT } from '../elements/gauss.ts';
import type { PlateMesh } from '../elements/mesh.ts';
import type { Skyline } from '../elements/skyline.ts';

/**
 * The Gauss points of the friction surface, where the lining's springs are. Points run circle by circle from the inside, and
 * along the angle within a circle.
 */
export interface LiningPoints {
  readonly circles: number;
  readonly perCircle: number;
  /** Share of the friction surface's area each stands for, mm². */
  readonly areaMm2: Float64Array;
  readonly totalAreaMm2: number;
  /** Sixteen for each point: the functions there, and the unknowns they belong to (−1: held). */
  readonly shape: Float64Array;
  readonly unknown: Int32Array;
  /** The first unknown that the friction surface moves. */
  readonly firstUnknown: number;
}

/** Valid: tracks with at least one row of elements.   Source: this program’s own model (springs between piston and friction surface) */
export function liningPoints({
  mesh: { radiiMm, anglesRad },
  freedoms,
  onTrack,
}: {
  readonly mesh: PlateMesh;
  readonly freedoms: Freedoms;
  readonly onTrack: (row: number) => boolean;
}): LiningPoints {
  const columns = anglesRad.length - 1;
  const rows = Array.from({ length: radiiMm.length - 1 }, (_, row) => row).filter(onTrack);
  const [circles, perCircle] = [rows.length * GAUSS_COUNT, columns * GAUSS_COUNT];
  const count = circles * perCircle;
  const [alongRadius, alongAngle] = [hermiteAlong(radiiMm), hermiteAlong(anglesRad)];
  const areaMm2 = new Float64Array(count);
  const shape = new Float64Array(count * ELEMENT_FREEDOMS);
  const unknown = new Int32Array(count * ELEMENT_FREEDOMS);
  const one = new Float64Array(ELEMENT_FREEDOMS);
  let [point, totalAreaMm2] = [0, 0];
  for (const row of rows) {
    const width = radiiMm[row + 1]! - radiiMm[row]!;
    for (let g = 0; g < GAUSS_COUNT; g++) {
      const ofRadius = (radiiMm[row]! + width * GAUSS_AT[g]!) * width * GAUSS_WEIGHT[g]!;
      for (let column = 0; column < columns; column++) {
        const sweep = anglesRad[column + 1]! - anglesRad[column]!;
        for (let h = 0; h < GAUSS_COUNT; h++, point++) {
          shapes(alongRadius, (row * GAUSS_COUNT + g) * 12, alongAngle, (column * GAUSS_COUNT + h) * 12, one);
          shape.set(one, point * ELEMENT_FREEDOMS);
          unknownsOf(freedoms, row, column, unknown, point * ELEMENT_FREEDOMS);
          areaMm2[point] = ofRadius * sweep * GAUSS_WEIGHT[h]!;
          totalAreaMm2 += areaMm2[point]!;
        }
      }
    }
  }
  let firstUnknown = freedoms.size;
  for (const i of unknown) if (i >= 0 && i < firstUnknown) firstUnknown = i;
  return { circles, perCircle, areaMm2, totalAreaMm2, shape, unknown, firstUnknown };
}

/** Deflection of the cover at every point. */
export function deflectionsAt(
  { shape, unknown, areaMm2 }: LiningPoints,
  w: Float64Array,
  out: Float64Array,
): void {
  for (let point = 0, at = 0; point < areaMm2.length; point++) {
    let sum = 0;
    for (let k = 0; k < ELEMENT_FREEDOMS; k++, at++) {
      const i = unknown[at]!;
      if (i >= 0) sum += shape[at]! * w[i]!;
    }
    out[point] = sum;
  }
}

/** Adds `times` · N at one point to a vector. */
export function addPoint(
  { shape, unknown }: LiningPoints,
  point: number,
  times: number,
  out: Float64Array,
): void {
  for (let k = 0, at = point * ELEMENT_FREEDOMS; k < ELEMENT_FREEDOMS; k++, at++) {
    const i = unknown[at]!;
    if (i >= 0) out[i] = out[i]! + times * shape[at]!;
  }
}

/**
 * Adds springs to a stiffness, Σ k·N·Nᵀ, one element of the friction surface after another: all points of one meet the
 * same unknowns.
 *
 * k of each point [N/mm]; where it is 0, nothing is added.
 */
export function addSprings(
  { shape, unknown, circles, perCircle }: LiningPoints,
  springNPerMm: Float64Array,
  matrix: Pick<Skyline, 'start' | 'values'>,
): void {
  const local = new Float64Array(ELEMENT_FREEDOMS * ELEMENT_FREEDOMS);
  for (let circle = 0; circle < circles; circle += GAUSS_COUNT) {
    for (let along = 0; along < perCircle; along += GAUSS_COUNT) {
      local.fill(0);
      let some = false;
      for (let at = 0; at < GAUSS_COUNT * GAUSS_COUNT; at++) {
        const point = (circle + Math.trunc(at / GAUSS_COUNT)) * perCircle + along + (at % GAUSS_COUNT);
        const spring = springNPerMm[point]!;
        if (spring === 0) continue;
        some = true;
        const from = point * ELEMENT_FREEDOMS;
        for (let i = 0; i < ELEMENT_FREEDOMS; i++) {
          const times = spring * shape[from + i]!;
          for (let j = 0, to = ELEMENT_FREEDOMS * i; j <= i; j++, to++) {
            local[to] = local[to]! + times * shape[from + j]!;
          }
        }
      }
      if (!some) continue;
      const first = (circle * perCircle + along) * ELEMENT_FREEDOMS;
      addLocal(matrix, unknown.subarray(first, first + ELEMENT_FREEDOMS), local);
    }
  }
}
