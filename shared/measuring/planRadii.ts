import { RING_WIDTH_MM } from '../words/places.ts';

/** A radius on the cover, and how far from the middle the plan of the face draws it. */
interface Knot {
  readonly radiusMm: number;
  readonly drawn: number;
}

/** From the middle outwards, both growing: between two knots the plan is to scale. */
export type PlanRadii = readonly [Knot, Knot, ...Knot[]];

/** In units of the drawing: 48 px and a little on a phone, a finger's width. */
const FINGER = 53;
/** The outermost row keeps this far from the rim, and the innermost this far from the middle. */
const FROM_RIM = 10;
const FROM_MIDDLE = 40;

const MIDDLE: Knot = { radiusMm: 0, drawn: 0 };

/** Everything to scale. */
export function toScale(rim: Knot): PlanRadii {
  return [MIDDLE, rim];
}

/**
 * Rows of stations drawn a finger apart, where to scale they would lie closer than that: a plan for touching. What
 * lies between them keeps its order.
 */
export function rowsApart(radiiMm: readonly number[], rim: Knot): PlanRadii {
  const rows = rowsOf(radiiMm);
  const scale = rim.drawn / rim.radiusMm;
  const close = rows.some((row, i) => i > 0 && scale * (row - rows[i - 1]!) < FINGER);
  if (!close || rows.at(-1)! >= rim.radiusMm) return toScale(rim);
  const outermost = rim.drawn - FROM_RIM;
  const apart = Math.min(FINGER, (outermost - FROM_MIDDLE) / (rows.length - 1));
  const knots = rows.map((radiusMm, i) => ({
    radiusMm,
    drawn: outermost - apart * (rows.length - 1 - i),
  }));
  return [MIDDLE, ...(knots as [Knot, ...Knot[]]), rim];
}

/** The middle of each row, from the inside out. */
function rowsOf(radiiMm: readonly number[]): number[] {
  const rows: [number, number][] = [];
  for (const radius of [...radiiMm].sort((a, b) => a - b)) {
    const row = rows.at(-1);
    if (row !== undefined && radius - row[0] <= RING_WIDTH_MM) row[1] = radius;
    else rows.push([radius, radius]);
  }
  return rows.map(([least, most]) => (least + most) / 2);
}

/** How far from the middle a radius is drawn. */
export function drawnRadius(radii: PlanRadii, radiusMm: number): number {
  const [low, high] = stretch(radii, (knot) => knot.radiusMm >= radiusMm);
  return low.drawn + ((radiusMm - low.radiusMm) * (high.drawn - low.drawn)) / (high.radiusMm - low.radiusMm);
}

/** The radius that is drawn so far from the middle. */
export function radiusDrawnAt(radii: PlanRadii, drawn: number): number {
  const [low, high] = stretch(radii, (knot) => knot.drawn >= drawn);
  return low.radiusMm + ((drawn - low.drawn) * (high.radiusMm - low.radiusMm)) / (high.drawn - low.drawn);
}

/** The two knots round a place; beyond the last, the last two. */
function stretch(radii: PlanRadii, reaches: (knot: Knot) => boolean): [Knot, Knot] {
  const found = radii.findIndex((knot, i) => i > 0 && reaches(knot));
  const high = found < 0 ? radii.length - 1 : found;
  return [radii[high - 1]!, radii[high]!];
}
