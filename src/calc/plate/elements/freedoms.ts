import type { PlateMesh } from './mesh.ts';

/**
 * How an edge is held: `free`; `simple` cannot move but may turn; `clamped` neither; `rigid` is one stiff piece that
 * may move along the axis and does not turn.
 */
export type Edge = 'free' | 'simple' | 'clamped' | 'rigid';

/** Which unknown of the equations each freedom of the mesh is; −1 where it is held at zero. */
export interface Freedoms {
  readonly size: number;
  /** Four at each node (w, w_r, w_θ, w_rθ), nodes ring by ring from the inside, ray by ray within a ring. Unknown 0 is outside. */
  readonly unknown: Int32Array;
  readonly rays: number;
}

const HELD: Readonly<Record<Edge, readonly boolean[]>> = {
  free: [false, false, false, false],
  simple: [true, false, true, false],
  clamped: [true, true, true, true],
  rigid: [false, true, true, true],
};

/**
 * Numbers the unknowns ring by ring from the outside, so that the many rings between rim and friction surface come before the
 * friction surface, which changes as the lining lets go. On the two lines of symmetry w_θ and w_rθ are zero; a rigid edge has one w.
 *
 * Valid: at least two rings and two rays.   Source: first principles
 * Example: tests/calc/plate/elements/freedoms.test.ts
 */
export function numberFreedoms({
  mesh,
  inner,
  outer,
  held = [],
}: {
  readonly mesh: PlateMesh;
  readonly inner: Edge;
  readonly outer: Edge;
  /** Nodes whose w is held at zero. */
  readonly held?: readonly { readonly ring: number; readonly ray: number }[];
}): Freedoms {
  const [rings, rays] = [mesh.radiiMm.length, mesh.anglesRad.length];
  const unknown = new Int32Array(4 * rings * rays).fill(-1);
  let size = 0;
  for (let ring = rings - 1; ring >= 0; ring--) {
    const edge: Edge = ring === 0 ? inner : ring === rings - 1 ? outer : 'free';
    const shared = edge === 'rigid' ? size++ : -1;
    for (let ray = 0; ray < rays; ray++) {
      const symmetric = ray === 0 || ray === rays - 1;
      const supported = held.some((one) => one.ring === ring && one.ray === ray);
      for (let kind = 0; kind < 4; kind++) {
        if (HELD[edge][kind] || (symmetric && kind >= 2) || (supported && kind === 0)) continue;
        unknown[4 * (ring * rays + ray) + kind] = edge === 'rigid' ? shared : size++;
      }
    }
  }
  return { size, unknown, rays };
}

/** The unknowns of an element's sixteen freedoms, in the order of element.ts. */
export function unknownsOf(
  { unknown, rays }: Freedoms,
  ring: number,
  ray: number,
  out: Int32Array,
  at = 0,
): void {
  for (let corner = 0; corner < 4; corner++) {
    const node = (ring + (corner & 1)) * rays + ray + (corner >> 1);
    for (let kind = 0; kind < 4; kind++) out[at + 4 * corner + kind] = unknown[4 * node + kind]!;
  }
}

/**
 * The first unknown each row of the stiffness reaches back to. Elements of a `whole` row of elements also meet all
 * others of that row, as they do under a piston that follows the cover.
 */
export function firstUnknowns(
  freedoms: Freedoms,
  mesh: PlateMesh,
  whole: (row: number) => boolean,
): Int32Array {
  const first = Int32Array.from({ length: freedoms.size }, (_, i) => i);
  const of = new Int32Array(16);
  const lower = (least: number) => {
    for (const i of of) if (i >= 0 && least < first[i]!) first[i] = least;
  };
  for (let row = 0; row < mesh.radiiMm.length - 1; row++) {
    let ofRow = freedoms.size;
    for (let ray = 0; ray < mesh.anglesRad.length - 1; ray++) {
      unknownsOf(freedoms, row, ray, of);
      let least = freedoms.size;
      for (const i of of) if (i >= 0 && i < least) least = i;
      lower(least);
      if (least < ofRow) ofRow = least;
    }
    if (!whole(row)) continue;
    for (let ray = 0; ray < mesh.anglesRad.length - 1; ray++) {
      unknownsOf(freedoms, row, ray, of);
      lower(ofRow);
    }
  }
  return first;
}
