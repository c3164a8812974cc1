/** The square that stands for a pad, on the flat of half a sector. */
export interface PadPatch {
  readonly innerMm: number;
  /** At most the rim. */
  readonly outerMm: number;
  readonly halfAngleRad: number;
  /** The rim cut it off, so that its outer edge is no edge of the pad. */
  readonly clipped: boolean;
}

/**
 * A round pad as a square patch of the same area.   s = d·√π/2;  r_stud ± s/2, clipped at the rim;  ± s/(2·r_stud)
 *
 * d pad diameter, r_stud bolt circle radius [mm].
 * Valid: pads that do not meet one another.   Source: this program’s own model (a square of the same area)
 * Example: Ø 24 on Ø 286 → s 21.269 mm (tests/calc/plate/springs.test.ts)
 */
export function padPatch({
  padDiameterMm,
  studCircleDiameterMm,
  rimDiameterMm,
}: {
  readonly padDiameterMm: number;
  readonly studCircleDiameterMm: number;
  readonly rimDiameterMm: number;
}): PadPatch {
  const half = (padDiameterMm * Math.sqrt(Math.PI)) / 4;
  const [stud, rim] = [studCircleDiameterMm / 2, rimDiameterMm / 2];
  return {
    innerMm: stud - half,
    outerMm: Math.min(rim, stud + half),
    halfAngleRad: half / stud,
    clipped: stud + half >= rim,
  };
}
