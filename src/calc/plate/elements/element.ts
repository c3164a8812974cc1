/**
 * The Bogner–Fox–Schmit element in polar coordinates: cubic Hermite in r times cubic Hermite in θ.
 *
 * Freedoms at each corner: w, w_r, w_θ, w_rθ. Corners run inner, outer at the first angle, then inner, outer at the
 * second, so freedom 4c + s + 2t belongs to corner c, s times derived by r and t times by θ.
 * Valid: r > 0; w and its slopes are continuous, as thin plates want.
 * Source: Bogner, Fox & Schmit 1965 (from memory); curvatures in polar coordinates: Timoshenko & Woinowsky-Krieger,
 * 2nd ed., §62 (from memory)
 * Example: stiffness of a strip with a known cubic (tests/calc/plate/elements/element.test.ts)
 */
export const ELEMENT_FREEDOMS = 16;

/** Where the Hermite function of a freedom stands among the four of its direction. */
export const ALONG_RADIUS = new Int32Array(ELEMENT_FREEDOMS);
export const ALONG_ANGLE = new Int32Array(ELEMENT_FREEDOMS);
for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
  const corner = k >> 2;
  ALONG_RADIUS[k] = 2 * (corner & 1) + (k & 1);
  ALONG_ANGLE[k] = 2 * (corner >> 1) + ((k >> 1) & 1);
}

/** The sixteen functions at a point, from the four of each direction as `hermite` writes them. */
export function shapes(
  alongRadius: Float64Array,
  radiusAt: number,
  alongAngle: Float64Array,
  angleAt: number,
  out: Float64Array,
): void {
  for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
    out[k] = alongRadius[radiusAt + ALONG_RADIUS[k]!]! * alongAngle[angleAt + ALONG_ANGLE[k]!]!;
  }
}

/**
 * Curvatures of the sixteen functions at radius r: κ_r = −w_rr, then κ_θ = −(w_r/r + w_θθ/r²), then
 * κ_rθ = −(w_rθ/r − w_θ/r²), sixteen of each one after the other in `out`.
 */
export function curvatures(
  radiusMm: number,
  alongRadius: Float64Array,
  radiusAt: number,
  alongAngle: Float64Array,
  angleAt: number,
  out: Float64Array,
): void {
  const perR = 1 / radiusMm;
  for (let k = 0; k < ELEMENT_FREEDOMS; k++) {
    const r = radiusAt + ALONG_RADIUS[k]!;
    const a = angleAt + ALONG_ANGLE[k]!;
    const f = alongRadius[r]!;
    const slope = alongRadius[r + 4]!;
    const g = alongAngle[a]!;
    out[k] = -alongRadius[r + 8]! * g;
    out[k + 16] = -perR * (slope * g + perR * f * alongAngle[a + 8]!);
    out[k + 32] = -perR * alongAngle[a + 4]! * (slope - perR * f);
  }
}
