import type { StudSettingLimits } from '../../shared/words/catalogue.ts';
import type { CoverCheck } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Decision, Job, StudsChosen } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { StudCheck } from '../../shared/words/stud/stud.ts';
import { COVER_CALC_VERSION } from '../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { retorque } from '../calc/stud/joint/retorque.ts';
import { replacedInStack } from '../calc/stud/match/replacedInStack.ts';
import { afterCutUnder } from './afterCut.ts';
import { isListFinding, listFindings } from './inspection/listFindings.ts';
import { decisionAnew, studsAnew } from './recheck.ts';
import { Remembered } from './remembered.ts';
import { retold } from './retold.ts';

/** What somebody decided, chose or signed, told to a reader. */
export interface Told<Body> {
  /** Its sentences in the reader's unit where today's calculation still finds the same, else as they were kept. */
  readonly body: Body;
  /** They are shown as they were kept, perhaps in another unit. */
  readonly asKept: boolean;
  /** What today's calculation would say otherwise; null where it says the same. */
  readonly otherwise: string | null;
}

const decisions = new Remembered<Told<Decision>>(100);

/** A decision told in the reader's unit. `now`: the numbers of the job as it is, where they were worked out. */
export function decisionTold(
  kept: Decision,
  unit: LengthUnit,
  now: CoverNumbers | null = null,
): Told<Decision> {
  const key = Remembered.key([kept, unit, COVER_CALC_VERSION]);
  const known = decisions.get(key);
  if (known !== undefined) return known;
  const anew = decisionAnew(kept, unit, now);
  const check = 'check' in anew ? inTodaysWords(kept.check, anew.check) : null;
  const told = {
    body: check ? { ...kept, check } : kept,
    asKept: check === null,
    otherwise: anew.otherwise,
  };
  decisions.set(key, told);
  return told;
}

/** The kept numbers with the words of today; null where a finding is otherwise today. */
function inTodaysWords<Check extends CoverCheck | StudCheck>(kept: Check, anew: Check): Check | null {
  const findings = retold(kept.findings, anew.findings);
  return findings && { ...kept, headline: anew.headline, because: anew.because, findings };
}

/** Studs that were chosen, told in the reader's unit, with what was found of those replaced and of the nuts re-torqued. */
export function studsTold(
  kept: StudsChosen,
  unit: LengthUnit,
  limits: StudSettingLimits | null = null,
): Told<StudsChosen> {
  const anew = studsAnew(kept, unit);
  const check = anew !== null && 'check' in anew ? inTodaysWords(kept.check, anew.check) : null;
  const work = workTold(kept, unit, limits);
  return {
    body: { ...kept, ...work, ...(check && { check }) },
    asKept: check === null || work === null,
    otherwise: anew?.otherwise ?? null,
  };
}

function workTold(
  { input, replaced = [], retightening = null }: StudsChosen,
  unit: LengthUnit,
  limits: StudSettingLimits | null,
): Pick<StudsChosen, 'replaced' | 'retightening'> | null {
  if (input === undefined) return null;
  const studs = replaced.flatMap((one) => {
    const findings = retold(one.findings, replacedInStack(input, one, limits, unit));
    return findings === null ? [] : [{ ...one, findings }];
  });
  const found = retightening && retorque(retightening, input.joint?.torqueNm ?? null, unit);
  const again = retightening && found && retold(retightening.findings, found);
  if (studs.length < replaced.length || (retightening && !again)) return null;
  return {
    ...(studs.length > 0 && { replaced: studs }),
    ...(retightening && again && { retightening: { ...retightening, findings: again } }),
  };
}

/** What was found after the cut when it was signed, told in the reader's unit. */
export function verifiedTold(job: Job, kept: readonly Finding[], unit: LengthUnit): Told<readonly Finding[]> {
  const minimumThenMm = kept.find(({ id }) => id === 'after-criteria')?.limit ?? null;
  const ofList = listFindings(job, [], unit, {});
  // What was open of a list then has no figure to be told in another unit.
  const open = kept.filter((one) => isListFinding(one) && one.status !== 'fail');
  const again = retold(kept, [...afterCutUnder(job, minimumThenMm, unit).found, ...ofList, ...open]);
  return { body: again ?? kept, asKept: again === null, otherwise: null };
}
