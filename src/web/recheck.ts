import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import type { Decision, StudsChosen } from '../../shared/words/job.ts';
import { type LengthUnit, listInWords } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { VERDICT_WORD } from '../../views/pages/job/words.ts';
import { FIT_WORD } from '../../views/pages/stud.tsx';
import { COVER_CALC_VERSION, checkCover } from '../calc/cover/checkCover.ts';
import {
  coverAnswersOtherwise,
  type Otherwise,
  studAnswersOtherwise,
} from '../calc/judge/answersOtherwise.ts';
import { checkStud, STUD_CALC_VERSION } from '../calc/stud/checkStud.ts';

const HOLDS_WORD = { yes: 'it holds', no: 'it does not hold', 'not-checked': 'not checked' } as const;

/** Says so when today's calculation would answer a kept decision's inputs otherwise; null when it would not. */
export function recheckDecision(kept: Decision, unit: LengthUnit): string | null {
  const versions = { kept: kept.calcVersion, now: COVER_CALC_VERSION };
  const input = coverCheckSchema.safeParse(kept.input);
  if (!input.success) return refusedNow('decision', versions, input.error.issues[0]?.message);
  return attempt('decision', versions, () =>
    coverAnswersOtherwise(kept.check, checkCover(input.data, unit), VERDICT_WORD, unit),
  );
}

/** The same for studs that were chosen. Those kept without what was asked of them cannot be worked out again. */
export function recheckStuds(kept: StudsChosen, unit: LengthUnit): string | null {
  const { input } = kept;
  if (input === undefined) return null;
  const words = { fits: FIT_WORD, holds: HOLDS_WORD };
  return attempt('choice of studs', { kept: kept.calcVersion, now: STUD_CALC_VERSION }, () =>
    studAnswersOtherwise(kept.check, checkStud(input, unit), words, unit),
  );
}

interface Versions {
  readonly kept: string;
  readonly now: string;
}

function attempt(what: string, versions: Versions, compare: () => readonly Otherwise[]): string | null {
  let otherwise: readonly Otherwise[];
  try {
    otherwise = compare();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return refusedNow(what, versions, error.message);
  }
  if (otherwise.length === 0) return null;
  const told = listInWords(otherwise.map((one) => `${one.what} ${one.kept} then and ${one.now} now`));
  return `The calculation has changed (${versions.kept} then, ${versions.now} now) and would answer the same inputs otherwise: ${told}. The ${what} is kept as it was made; look at it again before you rely on it.`;
}

function refusedNow(what: string, versions: Versions, why: string | undefined): string {
  return `The calculation has changed (${versions.kept} then, ${versions.now} now) and no longer takes the inputs this ${what} was made from: ${why ?? 'they cannot be read.'} The ${what} is kept as it was made.`;
}
