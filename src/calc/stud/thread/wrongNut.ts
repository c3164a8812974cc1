import type { ThreadGeometry } from '../../../../shared/words/stud/thread.ts';

/** At least so much of the nut’s thread height must meet the stud’s, or it only rattles on it. */
const CATCHES = 0.4;
/** From so many threads on, a hand takes it for the right one. */
const GOES_ON = 1.5;

/**
 * How many threads a nut of another thread goes onto a stud by hand before the two pitches bind, loosest nut on
 * slackest stud; 0 where it does not catch.
 *   k = (D2,max − d2,min) / (√3 |P_nut − P_stud|)     h = (d,max − D1,min) / (1.0825 P_nut)
 *   a twin, which a hand takes for the right nut: k ≥ 1.5 and h ≥ 0.4
 *   D2, d2 pitch diameter of nut and stud [mm] · d stud's major diameter, D1 nut's minor [mm] · P pitch [mm]
 *   Valid: right-hand 60° threads of ASME B1.1 and ISO 261.   Source: 60° flanks, first principles; 1.5 threads and 0.4
 *   common practice, no source
 *   Example: an M8×1 nut goes 3.7 threads onto a 5/16-24 stud (calc/stud/thread/wrongNut.test.ts)
 */
export function wrongNut(stud: ThreadGeometry, nut: ThreadGeometry): number {
  const slack = (nut.pitchDiameterMm.max ?? 0) - (stud.pitchDiameterMm.min ?? 0);
  const overlap = (stud.majorMm.max ?? 0) - (nut.minorMm.min ?? 0);
  if (slack <= 0 || overlap < CATCHES * 1.0825 * nut.pitchMm) return 0;
  return slack / (Math.sqrt(3) * Math.abs(nut.pitchMm - stud.pitchMm));
}

/** Whether a hand may take that nut for the right one. */
export function goesOnByHand(threads: number): boolean {
  return threads >= GOES_ON;
}
