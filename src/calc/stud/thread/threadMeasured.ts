import type { ThreadCandidate, ThreadGeometry, ThreadReading } from '../../../../shared/words/stud/thread.ts';

/** Two flanks at 60°: a pitch error δ takes up √3 δ of the pitch diameter. */
const DIAMETER_PER_PITCH = Math.sqrt(3);

/**
 * Which threads a stud may have whose major diameter was measured, and the length over a number of its pitches; nearest
 * first. A thread it may be lies within in both.
 *   off_d: measured less the nearest end of the class's major diameter, 0 between its ends   within: |off_d| ≤ u_d
 *   off_P = L/n − P   within: n |off_P| ≤ u_L + Td2/√3, the pitch error that the class's pitch diameter tolerance covers
 *   d major diameter [mm] · L length over n pitches [mm] · P pitch [mm] · Td2 pitch diameter tolerance [mm]
 *   u_d, u_L how well diameter and length were measured [mm]   nearest: √(share of d² + share of L²), a share 1 at the edge
 *   Valid: external threads with both ends of major and pitch diameter; not worn below the class, or u_d covers the wear.
 *   Source: limits ASME B1.1-2003 and ISO 965-1:1998 (threadGeometry.ts); √3 from the 60° flanks, first principles
 *   Example: 0.373 in and 10 pitches over 0.417 in → 3/8-24 UNF, 0 and 0.0000 in off (calc/stud/thread/threadMeasured.test.ts)
 */
export function threadMeasured<Named extends { readonly geometry: ThreadGeometry }>(
  { majorMm, majorWithinMm, pitches, overMm, overWithinMm }: ThreadReading,
  threads: readonly Named[],
): (ThreadCandidate & { readonly of: Named })[] {
  return threads
    .map((of) => {
      const { majorMm: major, pitchDiameterMm: pitch, pitchMm } = of.geometry;
      const [least, most] = [major.min ?? major.basic, major.max ?? major.basic];
      const offMajorMm = majorMm < least ? majorMm - least : majorMm > most ? majorMm - most : 0;
      const offPitchMm = overMm === null ? null : overMm / pitches - pitchMm;
      const spareMm = ((pitch.max ?? pitch.basic) - (pitch.min ?? pitch.basic)) / DIAMETER_PER_PITCH;
      const middle = (least + most) / 2;
      const shareMajor = (majorMm - middle) / ((most - least) / 2 + majorWithinMm);
      const sharePitch = (pitches * (offPitchMm ?? 0)) / (overWithinMm + spareMm);
      return {
        of,
        offMajorMm,
        offPitchMm,
        within: Math.abs(shareMajor) <= 1 + 1e-9 && Math.abs(sharePitch) <= 1 + 1e-9,
        far: Math.hypot(shareMajor, sharePitch),
      };
    })
    .sort((a, b) => a.far - b.far);
}
