/** In walls; the farthest that was still right beside the solid model. */
const FARTHEST_WALLS = 0.52;

export interface PadsOverTrack {
  readonly overlapMm: number;
  /** Farther than was found right: the pressure peak comes out too low. */
  readonly peakTooLow: boolean;
}

/**
 * How far the round pads reach over the friction surface, where the model's square pads reach less far and its pressure
 * peak may be too low.   overlap = min(r_o, r_stud + d/2) − max(r_i, r_stud − d/2)
 *
 * r_o, r_i outer and inner radius of the friction surface · r_stud bolt circle radius · d pad diameter [mm]; 0 where they do not
 * overlap. Of the five covers beside the solid, two overlap by 0.34 and 0.52 walls and their peak is within 2 %; one
 * overlaps by 1.02 walls and its peak is 8 to 10 % too low. The limit lies between, and the lower end is taken.
 * Valid: pads on one circle. Source: five covers worked out as solids (tests/calc/plate/solid.test.ts), an
 * independent second implementation, not published
 * Example: pads Ø 29 on Ø 218, friction surface to Ø 196, wall 3.43 → 3.5 mm, too far (tests/calc/plate/padsOverTrack.test.ts)
 */
export function padsOverTrack(cover: {
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly studCircleDiameterMm: number;
  readonly padDiameterMm: number;
  readonly wallMm: number;
}): PadsOverTrack {
  const { trackInnerDiameterMm, trackOuterDiameterMm, studCircleDiameterMm, padDiameterMm } = cover;
  const from = Math.max(trackInnerDiameterMm, studCircleDiameterMm - padDiameterMm);
  const to = Math.min(trackOuterDiameterMm, studCircleDiameterMm + padDiameterMm);
  const overlapMm = Math.max(0, to - from) / 2;
  return { overlapMm, peakTooLow: overlapMm > FARTHEST_WALLS * cover.wallMm };
}
