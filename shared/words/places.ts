/** Where on the face: clockwise from stud 1 looking at the clutch side, and from the crank axis. */
export interface Place {
  readonly angleDeg: number;
  readonly radiusMm: number;
}

const SAME_PLACE = 1e-6;

export function samePlace(a: Place, b: Place): boolean {
  return Math.abs(a.angleDeg - b.angleDeg) < SAME_PLACE && Math.abs(a.radiusMm - b.radiusMm) < SAME_PLACE;
}
