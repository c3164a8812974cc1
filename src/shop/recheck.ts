import { isDeepStrictEqual } from 'node:util';
import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { ringNotJoined } from '../../shared/words/bending/solid.ts';
import type { CoverCheck } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Decision, StudsChosen } from '../../shared/words/job.ts';
import { type LengthUnit, listInWords } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import type { KeptSlip } from '../../shared/words/stud/slip.ts';
import type { StudCheck } from '../../shared/words/stud/stud.ts';
import { FIT_WORD, HOLDS_WORD, VERDICT_WORD } from '../../shared/words/verdicts.ts';
import { COVER_CALC_VERSION, checkWhatIsThere, judgeCover } from '../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { restsOnUnjoinedRing } from '../calc/job/ringCredit.ts';
import {
  coverAnswersOtherwise,
  type Otherwise,
  studAnswersOtherwise,
} from '../calc/judge/answersOtherwise.ts';
import { stiffnessFindings } from '../calc/judge/stiffnessFindings.ts';
import { PLATE_CALC_VERSION } from '../calc/plate/bendCover.ts';
import { checkStud, STUD_CALC_VERSION } from '../calc/stud/checkStud.ts';
import { retold } from './retold.ts';

/** A kept answer made anew from its inputs; or how it would be answered otherwise today, in a sentence. */
export type Anew<T> = { readonly check: T; readonly otherwise: null } | { readonly otherwise: string };

/**
 * A kept decision's inputs answered by today's calculation, in the reader's unit. `now`: the numbers of the job as it is,
 * which are not worked out again where they have the same inputs.
 */
export function decisionAnew(
  kept: Decision,
  unit: LengthUnit,
  now: CoverNumbers | null = null,
): Anew<CoverCheck> {
  const versions = restsOnUnjoinedRing(kept)
    ? { kept: kept.bending?.calcVersion ?? kept.calcVersion, now: PLATE_CALC_VERSION }
    : { kept: kept.calcVersion, now: COVER_CALC_VERSION };
  // Decisions from before items could be left open were made as if none were.
  const input = coverCheckSchema.safeParse({ notInspected: [], ...kept.input });
  if (!input.success) return { otherwise: refusedNow('decision', versions, input.error.issues[0]?.message) };
  return attempt('decision', versions, () => {
    const same = now !== null && isDeepStrictEqual(now.input, input.data);
    const found = keptOnBending(kept, unit);
    const check = same ? judgeCover(now, unit, found) : checkWhatIsThere(input.data, unit, found);
    return { check, differs: coverAnswersOtherwise(kept.check, check, VERDICT_WORD, unit) };
  });
}

/** Says so when today's calculation would answer a kept decision's inputs otherwise; null when it would not. */
export function recheckDecision(kept: Decision, unit: LengthUnit): string | null {
  return decisionAnew(kept, unit).otherwise;
}

/**
 * What was found on bending then: the verdict rests on it, and it is gone over by itself. What counted on a ring that is
 * not recorded as joined to the pads is not checked today.
 */
function keptOnBending(kept: Decision, unit: LengthUnit): readonly Finding[] {
  const found = kept.check.findings.filter(({ id }) => id.startsWith('stiffness'));
  if (!restsOnUnjoinedRing(kept)) {
    const { bending = null } = kept;
    const ringAllowed = found.some(({ id }) => id === 'stiffness-with-ring');
    const asked = bending && { limits: bending.limits, bending, why: null, ringAllowed, unit };
    return (asked && retold(found, stiffnessFindings(asked))) ?? found;
  }
  const counted = kept.bending?.welded ? 'stiffness' : 'stiffness-with-ring';
  return found.map((one) =>
    one.id === counted ? { ...one, status: 'not-checked', sentence: ringNotJoined(null) } : one,
  );
}

/** The same for studs that were chosen. Those kept without what was asked of them cannot be worked out again. */
export function studsAnew(kept: StudsChosen, unit: LengthUnit): Anew<StudCheck> | null {
  const { input } = kept;
  if (input === undefined) return null;
  const words = { fits: FIT_WORD, holds: HOLDS_WORD };
  return attempt('choice of studs', { kept: kept.calcVersion, now: STUD_CALC_VERSION }, () => {
    const check = checkStud(input, unit);
    return { check, differs: studAnswersOtherwise(kept.check, check, words, unit) };
  });
}

/** Says so when today's calculation would answer otherwise for the studs chosen; null when it would not. */
export function recheckStuds(kept: StudsChosen, unit: LengthUnit): string | null {
  return studsAnew(kept, unit)?.otherwise ?? null;
}

/** The same for a counter slip, in the unit it was answered in. */
export function recheckSlip({ asked, answered, calcVersion }: KeptSlip): string | null {
  const words = { fits: FIT_WORD, holds: HOLDS_WORD };
  return attempt('slip', { kept: calcVersion, now: STUD_CALC_VERSION }, () => {
    const check = checkStud(answered.input, asked.unit);
    return { check, differs: studAnswersOtherwise(answered.check, check, words, asked.unit) };
  }).otherwise;
}

interface Versions {
  readonly kept: string;
  readonly now: string;
}

function attempt<T>(
  what: string,
  versions: Versions,
  answer: () => { readonly check: T; readonly differs: readonly Otherwise[] },
): Anew<T> {
  try {
    const { check, differs } = answer();
    return differs.length === 0
      ? { check, otherwise: null }
      : { otherwise: changedNow(what, versions, differs) };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { otherwise: refusedNow(what, versions, error.message) };
  }
}

/** That today’s calculation answers otherwise, and how. */
export function changedNow(what: string, versions: Versions, otherwise: readonly Otherwise[]): string {
  const told = listInWords(otherwise.map((one) => `${one.what} ${one.kept} then and ${one.now} now`));
  return `The calculation has changed (${versions.kept} then, ${versions.now} now) and answers differently from the same readings: ${told}. The ${what} stays as it was made. Check it again before you rely on it.`;
}

/** That today’s calculation cannot use what was kept. */
export function refusedNow(what: string, versions: Versions, why: string | undefined): string {
  return `The calculation has changed (${versions.kept} then, ${versions.now} now) and can’t use what this ${what} was made from: ${why ?? 'it can’t be read.'} The ${what} stays as it was made.`;
}
