import type { NamedStud, Stud } from '../../../../shared/words/stud/stud.ts';

const SAME_MM = 0.05;
const SAME_MPA = 1;

export interface SameBut {
  readonly id: string;
  /** How much longer it is; negative is shorter. */
  readonly longerMm: number;
}

/**
 * The studs that are the same but longer or shorter in their pilot: the other one of a pair.
 *   same thread callout, thread from and to alike within 0.05 mm, pilot and strength alike; only the tip differs
 *   Valid: as measured; the 0.05 mm is a caliper's.   Source: this program's own rule
 *   Example: the long one of a demo pair is the short one and 6.35 mm (calc/stud/match/sameBut.test.ts)
 */
export function sameBut(stud: Stud, others: readonly NamedStud[]): SameBut[] {
  const alike = (a: number | null, b: number | null, within: number) =>
    a === null || b === null ? a === b : Math.abs(a - b) <= within;
  return others
    .filter(
      ({ stud: other }) =>
        other.thread.designation === stud.thread.designation &&
        alike(other.threadStartMm, stud.threadStartMm, SAME_MM) &&
        alike(other.threadEndMm, stud.threadEndMm, SAME_MM) &&
        alike(other.pilotDiameterMm, stud.pilotDiameterMm, SAME_MM) &&
        alike(other.tensileMPa, stud.tensileMPa, SAME_MPA) &&
        alike(other.proofMPa, stud.proofMPa, SAME_MPA) &&
        !alike(other.projectionMm, stud.projectionMm, SAME_MM),
    )
    .map(({ id, stud: other }) => ({ id, longerMm: other.projectionMm - stud.projectionMm }))
    .sort((a, b) => Math.abs(a.longerMm) - Math.abs(b.longerMm));
}
