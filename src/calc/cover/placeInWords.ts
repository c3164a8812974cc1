/**
 * A place on the face as a machinist says it: "behind stud 3", "between studs 3 and 4", "at 37°".
 * θ [deg] clockwise looking at the clutch face, 0° behind stud 1; within 360°/(8N) of a stud or of the middle
 * between two, as coverage counts it.
 */
export function placeInWords(angleDeg: number, studCount: number): string {
  const step = 360 / studCount;
  const half = (((angleDeg % 360) + 360) % 360) / (step / 2);
  const nearest = Math.round(half);
  if (Math.abs(half - nearest) * (step / 2) > step / 8 + 1e-9)
    return `at ${Math.round(((angleDeg % 360) + 360) % 360)}°`;
  const at = nearest % (2 * studCount);
  const stud = Math.floor(at / 2) + 1;
  return at % 2 === 0 ? `behind stud ${stud}` : `between studs ${stud} and ${(stud % studCount) + 1}`;
}
