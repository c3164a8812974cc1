import { briefLength, type LengthUnit } from '../words/print.ts';
import type { Asked, BenchState } from './benchState.ts';
import { type Order, type Step, timesOf } from './steps.ts';

/** What the next reading is, in the largest type on the screen. */
export function askedHeading(
  asked: Asked | null,
  what: BenchState['what'],
  { order, skipped = 0, inDoubt = 0 }: { order: Order; skipped?: number; inDoubt?: number },
): string {
  if (asked === null) {
    const but = [
      ...(skipped > 0 ? [`${skipped} skipped`] : []),
      ...(inDoubt > 0 ? [`${inDoubt} to check`] : []),
    ];
    return but.length === 0 ? 'Done' : `Measured, ${but.join(', ')}`;
  }
  const reading = `${what[asked.kind]} ${asked.place}`;
  if (asked.replaces) return `Replace: ${lowerFirst(reading)}`;
  const times = timesOf(asked.kind, order);
  return times > 1 && asked.at !== null && asked.nth < times
    ? `${reading}, ${asked.nth + 1} of ${times}`
    : reading;
}

/** What the heading looks like: a wall is plain, everything else has a color and a sign of its own. */
export function askedClass(asked: Asked | null): string {
  if (asked === null) return 'asked-none';
  return `asked-${asked.kind}${asked.replaces ? ' asked-replaces' : ''}`;
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
      ? 'A second reading here; the first one stays.'
      : (news ?? `${counts.measured} of ${counts.all} measured.`);
  return `${station}, r ${briefLength(asked.radiusMm, unit)}. ${what}`;
}

const COVERED_WORD = { wall: 'Walls', face: 'Indicator readings', mark: 'Heat marks' } as const;

/** How much of what was to be measured is there: "Walls at 12 of 12 stations, 2 each. Heat marks at 11 of 12." */
export function coverageInWords(
  steps: readonly Step[],
  order: Order,
  measured: (step: Step) => boolean,
  notLaidOut: readonly string[],
): string {
  const kinds = [...new Set(steps.map((step) => step.kind))];
  const told = kinds.map((kind, i) => {
    const stations = [...new Set(steps.flatMap((step) => (step.kind === kind ? [step.at] : [])))];
    const whole = stations.filter((at) =>
      steps.every((step) => step.kind !== kind || step.at !== at || measured(step)),
    );
    const each = timesOf(kind, order) > 1 ? `, ${timesOf(kind, order)} each` : '';
    const of = i === 0 ? ` station${stations.length === 1 ? '' : 's'}` : '';
    return `${COVERED_WORD[kind]} at ${whole.length} of ${stations.length}${of}${each}.`;
  });
  const beside = notLaidOut.length > 0 ? [`No station is set up ${notLaidOut.join(', ')}.`] : [];
  return [...told, ...beside].join(' ');
}

/** A reading as typed, with the unit of bare numbers where it was typed without one. */
export function withUnit(shown: string, unit: LengthUnit): string {
  return /[a-z"]/i.test(shown) ? shown : `${shown} ${unit}`;
}

/** The same in a list, where a heat mark of no depth is said in words. */
export function shownInList(
  { kind, valueMm, shown }: { readonly kind: string; readonly valueMm: number; readonly shown: string },
  unit: LengthUnit,
): string {
  return kind === 'mark' && valueMm === 0 ? 'no mark' : withUnit(shown, unit);
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
