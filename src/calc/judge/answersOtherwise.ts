import { type BendingCase, CASE_WORD, type PistonRange } from '../../../shared/words/bending/bending.ts';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import {
  type LengthUnit,
  printAgainst,
  printNumber,
  printShare,
  STRESS,
  WAVINESS,
} from '../../../shared/words/print.ts';
import type { StudCheck } from '../../../shared/words/stud/stud.ts';

/** Lengths closer than this are the same; shares too. */
const SAME = 1e-6;

export interface Otherwise {
  /** Which answer differs: "verdict", "depth of cut". */
  readonly what: string;
  readonly kept: string;
  readonly now: string;
}

/** The words a verdict or a fit goes by. */
type Words<T extends string> = Readonly<Record<T, string>>;

/**
 * Where the present calculation answers the inputs of a kept decision otherwise than it was answered then: verdict,
 * depth of cut, least wall left, and how sure it is. Empty when it answers the same.
 *
 *   |now − kept| > 1e-6, lengths [mm] and shares [1]
 *
 * Valid: both answers are of the same inputs. Source: plain comparison.
 * Example: kept least wall 4.500, now 4.470 → "least wall left", 4.500 mm, 4.470 mm (tests/calc/judge/answersOtherwise.test.ts)
 */
export function coverAnswersOtherwise(
  kept: CoverCheck,
  now: CoverCheck,
  words: Words<CoverCheck['verdict']>,
  unit: LengthUnit,
): readonly Otherwise[] {
  return [
    ...word('verdict', kept.verdict, now.verdict, words),
    ...length('depth of cut', kept.cut?.dialledMm ?? null, now.cut?.dialledMm ?? null, unit),
    ...length('least wall left', kept.leastWall?.afterMm ?? null, now.leastWall?.afterMm ?? null, unit),
    ...share(kept.conformanceProbability, now.conformanceProbability),
  ];
}

/** The same for a stud in its stack: whether it fits, whether the joint holds, how far it engages and reaches. */
export function studAnswersOtherwise(
  kept: StudCheck,
  now: StudCheck,
  words: { readonly fits: Words<StudCheck['fits']>; readonly holds: Words<StudCheck['holds']> },
  unit: LengthUnit,
): readonly Otherwise[] {
  return [
    ...word('whether it fits', kept.fits, now.fits, words.fits),
    ...word('whether the joint holds', kept.holds, now.holds, words.holds),
    ...length('least engagement', kept.engagement?.leastMm ?? null, now.engagement?.leastMm ?? null, unit),
    ...length('reach pushed back', kept.reach.pushedBackMm, now.reach.pushedBackMm, unit),
  ];
}

function word<T extends string>(what: string, kept: T, now: T, words: Words<T>): Otherwise[] {
  return kept === now ? [] : [{ what, kept: words[kept], now: words[now] }];
}

function length(what: string, kept: number | null, now: number | null, unit: LengthUnit): Otherwise[] {
  if (kept === now || (kept !== null && now !== null && Math.abs(kept - now) <= SAME)) return [];
  const none = 'not worked out';
  if (kept === null || now === null) {
    const print = (mm: number | null) => (mm === null ? none : printAgainst(mm, mm, unit));
    return [{ what, kept: print(kept), now: print(now) }];
  }
  return [{ what, kept: printAgainst(kept, now, unit), now: printAgainst(now, kept, unit) }];
}

function share(kept: number | null, now: number | null): Otherwise[] {
  if (kept === now || (kept !== null && now !== null && Math.abs(kept - now) <= SAME)) return [];
  const coarse = (of: number | null) => (of === null ? 'not worked out' : printShare(of));
  const fine = (of: number | null) => (of === null ? 'not worked out' : printShare(of, 4));
  const print = coarse(kept) === coarse(now) ? fine : coarse;
  return [{ what: 'how sure it is above the minimum', kept: print(kept), now: print(now) }];
}

/** Figures closer than this share are the same: they differ only in the last digits of the solver. */
const SAME_SHARE = 1e-3;

const PISTON_WORD = { rigid: 'stiffest', conforming: 'most flexible' } as const;

/** The same for one case of the advice on bending. */
export function bendingAnswersOtherwise(kept: BendingCase, now: BendingCase, unit: LengthUnit): Otherwise[] {
  const found: Otherwise[] = [];
  const finely = (of: (typeof WAVINESS)[LengthUnit]) => (value: number) =>
    `${printNumber(value * of.per, of.decimals + 1)} ${of.unit}`;
  const compare = (what: string, of: (one: BendingCase) => PistonRange, print: (value: number) => string) => {
    for (const piston of ['rigid', 'conforming'] as const) {
      const [was, is] = [of(kept)[piston], of(now)[piston]];
      if (Math.abs(is - was) <= SAME_SHARE * Math.abs(was)) continue;
      found.push({
        what: `${what} (${CASE_WORD[kept.id]}, ${PISTON_WORD[piston]} piston)`,
        kept: print(was),
        now: print(is),
      });
    }
  };
  compare(
    'peak lining pressure',
    ({ peakOverMean }) => peakOverMean,
    (value) => `${printNumber(value, 3)} times the mean`,
  );
  compare('friction-surface waviness', ({ rippleMm }) => rippleMm, finely(WAVINESS[unit]));
  compare('greatest stress', ({ greatestStressMPa }) => greatestStressMPa, finely(STRESS[unit]));
  return found;
}
