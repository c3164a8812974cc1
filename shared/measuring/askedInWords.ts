import { briefLength, type LengthUnit } from '../words/print.ts';
import type { Asked, BenchState } from './benchState.ts';

/** What the next reading is, in the largest type on the screen. */
export function askedHeading(asked: Asked | null, what: BenchState['what']): string {
  return asked === null ? 'Done' : `${what[asked.kind]} ${asked.place}`;
}

/** Where it is, and what typing there does. `news` stands in the place of the count where there is something newer to say. */
export function askedInWords(
  asked: Asked,
  unit: LengthUnit,
  counts: { readonly measured: number; readonly all: number },
  news: string | null = null,
): string {
  const station = asked.at === null ? 'Between stations' : `Station ${asked.at + 1}`;
  const what = asked.replaces
    ? `Already recorded: ${asked.replaces.shown}. A new reading replaces it.`
    : asked.again
      ? 'A repeat, saved beside the first.'
      : (news ?? `${counts.measured} of ${counts.all} measured.`);
  return `${station}, r ${briefLength(asked.radiusMm, unit)}. ${what}`;
}

/** A reading as typed, with the unit of bare numbers where it was typed without one. */
export function withUnit(shown: string, unit: LengthUnit): string {
  return /[a-z"]/i.test(shown) ? shown : `${shown} ${unit}`;
}
