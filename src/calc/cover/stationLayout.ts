const MM_PER_INCH = 25.4;
const DUST = 1e-6;

/**
 * Where to measure: behind every stud and between every two on the friction surface's inner part, and behind every stud
 * again on its outer part. This is what coverage asks for (a station behind and between on one ring, and a second
 * ring somewhere), so a cover measured at each of them is never sent back for a missing place.
 *
 *   r_main = r_i + w/8,  r_second = r_o − w/6,  w = r_o − r_i   each to the nearest whole mm, or the nearest 1/16 in
 *   where both diameters are sizes of an inch rule (whole 1/32 in, not whole mm)
 *
 * r_i, r_o inner and outer radius of the friction surface [mm]. Valid: a friction surface at least 6 mm wide; a narrower one has both
 * rings at its edges. Source: common practice, no source.
 * Example: friction surface Ø 214–264, 4 studs → 8 stations at r 110 and 4 at r 128 (tests/calc/cover/stationLayout.test.ts)
 */
export function stationLayout(cover: {
  readonly studCount: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
}): { angleDeg: number; radiusMm: number }[] {
  const inner = cover.trackInnerDiameterMm / 2;
  const outer = cover.trackOuterDiameterMm / 2;
  const width = outer - inner;
  const step = givenInInches(cover) ? MM_PER_INCH / 16 : 1;
  const main = width < 6 ? inner : toStep(inner + width / 8, step);
  const second = width < 6 ? outer : toStep(outer - width / 6, step);
  const turn = 360 / cover.studCount;
  const round = (angle: number) => Math.round(angle * 1000) / 1000;
  return [
    ...Array.from({ length: 2 * cover.studCount }, (_, i) => ({
      angleDeg: round((i * turn) / 2),
      radiusMm: main,
    })),
    ...Array.from({ length: cover.studCount }, (_, i) => ({ angleDeg: round(i * turn), radiusMm: second })),
  ];
}

function givenInInches(track: {
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
}): boolean {
  const both = [track.trackInnerDiameterMm, track.trackOuterDiameterMm];
  return both.every((mm) => isWhole((mm / MM_PER_INCH) * 32)) && !both.every(isWhole);
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < DUST;
}

/** To the nearest whole step; halfway goes down, whatever the last digit of the arithmetic. */
function toStep(mm: number, step: number): number {
  return Number((Math.round(mm / step - DUST) * step).toFixed(6));
}
