/**
 * How far the plate model is from a solid model of the same covers, as shares of the solid’s figures, least and most,
 * outward to whole hundredths (tests/calc/plate/solid.test.ts works them out; the solid is an independent second
 * implementation, not published).
 */
interface OffSolid {
  readonly ripple: readonly [number, number];
  readonly peak: readonly [number, number];
  readonly center: readonly [number, number];
  /** Of the cut cover’s figure over the new one’s. */
  readonly cutRipple: readonly [number, number];
  readonly cutPeak: readonly [number, number];
}

/** As the model is: the stiff part of each pad begins 0.44 walls within its edge. */
export const OFF_SOLID: OffSolid = {
  ripple: [-0.07, 0.2],
  peak: [-0.1, 0.02],
  center: [-0.01, 0.03],
  cutRipple: [-0.01, 0.09],
  cutPeak: [-0.02, 0.02],
};

/** With pads as drawn, which the model was before. */
export const OFF_SOLID_DRAWN: OffSolid = {
  ripple: [0.1, 0.9],
  peak: [-0.07, 0.12],
  center: [-0.09, -0],
  cutRipple: [-0.03, 0.06],
  cutPeak: [-0.03, 0.04],
};

/** Of an answer as it was kept: before this rule pads were taken as drawn. */
export function offSolid(calcVersion: string): OffSolid {
  return ['plate-0', 'plate-1', 'plate-2'].includes(calcVersion) ? OFF_SOLID_DRAWN : OFF_SOLID;
}

/**
 * A ring joined to the pads lies between its two bounds in the solid, for both rings that were tried. Two are few, so
 * its bounds on ripple and pressure peak are widened by these factors: the most that the cut cover over the new one is
 * off in the solid, with no ring.
 */
export const RING_WIDENED = { ripple: 1.09, peak: 1.02 } as const;

/** "7 % low to 20 % high" */
export function offInWords([least, most]: readonly [number, number]): string {
  const percent = (share: number) => `${Math.round(Math.abs(share) * 100)} %`;
  if (least >= 0) return `${percent(least)} to ${percent(most)} high`;
  if (most <= 0) return `${percent(most)} to ${percent(least)} low`;
  return `${percent(least)} low to ${percent(most)} high`;
}

/** The larger of both ends: "within 9 %". */
export function offAtMost([least, most]: readonly [number, number]): string {
  return `${Math.round(Math.max(-least, most) * 100)} %`;
}

/** Why a ring gets no credit, and what it may do. */
export function ringNotJoined(joinedToPads: boolean | null): string {
  const why =
    joinedToPads === false
      ? 'The stiffening ring is not welded to the pads, so it does not count.'
      : 'The stiffening ring does not count: it is not recorded as welded to the pads all around. Record it with the cover type or the weld.';
  return `${why} Such a ring can reverse the waviness of the friction surface.`;
}
