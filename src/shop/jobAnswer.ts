import type { ComparedWall, NextPass, PassView } from '../../shared/words/afterCut.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, CutPlanAnswer, GaugeAtHand } from '../../shared/words/cover.ts';
import type { UnitAndZone } from '../../shared/words/day.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Job, Stage, StepName, StepState } from '../../shared/words/job.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import { COVER_CALC_VERSION, checkWhatIsThere, judgeCover, workOutCover } from '../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { missingOf, stepsShown } from '../calc/job/jobStage.ts';
import { PLATE_CALC_VERSION } from '../calc/plate/bendCover.ts';
import { findingsToAnswer } from '../records/jobs/rules.ts';
import { afterCut, passesOf } from './afterCut.ts';
import type { Asker } from './bending/bendingPool.ts';
import { type BendingTold, bendingFor, lasts, toldAsKept, weldOf } from './bending/bendings.ts';
import { cutPlanFor } from './cutPlanFor.ts';
import { jobInput } from './jobInput.ts';
import { decisionTold, studsTold, type Told, verifiedTold } from './jobTold.ts';
import { Remembered } from './remembered.ts';

/** What a job is worked out under, beside its own records. */
export interface JobUnder {
  readonly criteria: ShopCriteria;
  /** The gauges the shop has for walls. */
  readonly atHand: readonly GaugeAtHand[];
  /** Unit of the sentences, and the zone of the shop's days. */
  readonly writing: UnitAndZone;
  /** Nothing of the bending is worked out that was not kept with the decision. */
  readonly bendingAsKept?: boolean;
}

/** A job worked out once: page, sheet, JSON, decision and signature all read here. */
export interface JobAnswer {
  readonly input: CoverCheckInput | null;
  /** The job with what was decided, chosen and signed told in the reader's unit; its numbers are as they were kept. */
  readonly told: Job;
  /** Of which parts the sentences are shown as they were kept: today's calculation finds something otherwise. */
  readonly asKept: readonly ('decision' | 'studs' | 'verified')[];
  /** What the readings that stand say now; null while there are none, or where they cannot be used. */
  readonly check: CoverCheck | null;
  readonly faults: readonly Fault[];
  /** What the decision was made on while it stands, else `check`. */
  readonly stands: CoverCheck | null;
  /** How it bends, as kept while the decision stands; null while there is nothing to reckon from. */
  readonly bending: BendingTold | null;
  readonly plan: CutPlanAnswer | null;
  readonly passes: readonly PassView[];
  readonly compared: readonly ComparedWall[];
  readonly nextPass: NextPass | null;
  /** What was measured after the cut: as found at signing where the signature stands, else as found now. */
  readonly verified: readonly Finding[];
  /** The step that is to be done; null when nothing is. */
  readonly next: StepName | null;
  readonly steps: Readonly<Record<StepName, StepState>>;
  /** What still keeps the job from being signed, in words. */
  readonly missing: readonly string[];
  /** Whether a signature has to say why: something found after the cut is not as it should be. */
  readonly statementNeeded: boolean;
  /** What that is. */
  readonly toAnswer: readonly Finding[];
  /** What the present calculation would say otherwise of the decision's inputs; null when it says the same. */
  readonly otherwise: string | null;
  /** The same of the studs chosen. */
  readonly studsOtherwise: string | null;
}

const remembered = new Remembered<JobAnswer>(100);
const workedOut = new Remembered<CoverNumbers>(100);
const VERSIONS = [COVER_CALC_VERSION, PLATE_CALC_VERSION];

/**
 * A job's answer, worked out once and remembered for as long as nothing it rests on changes. `anew`: as if nothing had
 * been decided, which is what a decision is made on. Throws NotWanted once the asker is gone.
 */
export async function jobAnswer(
  job: Job,
  under: JobUnder,
  { anew = false, asker }: { readonly anew?: boolean; readonly asker?: Asker | undefined } = {},
): Promise<JobAnswer> {
  const asked = anew ? { ...job, outcome: null } : job;
  const { criteria, atHand, writing, bendingAsKept = false } = under;
  const { lengthUnit, timeZone } = writing;
  const key = Remembered.key([asked, criteria, atHand, lengthUnit, timeZone, bendingAsKept, VERSIONS]);
  const found = remembered.get(key);
  if (found !== undefined) return found;
  const answer = await workOut(asked, under, asker);
  if (answer.bending === null || lasts(answer.bending)) remembered.set(key, answer);
  return answer;
}

async function workOut(job: Job, under: JobUnder, asker: Asker | undefined): Promise<JobAnswer> {
  const { criteria, writing } = under;
  const unit = writing.lengthUnit;
  const { input, numbers, check, faults, bending } = await checked(job, under, asker);
  const { told, asKept, otherwise, studsOtherwise } = jobTold(job, under, numbers);
  const decided = job.outcome === null ? null : (told.sections.decision?.body ?? null);
  const stands = decided?.check ?? check;
  const family = job.sections.received?.body.family ?? null;
  const after = afterCut(job, criteria, unit);
  const signed = job.stage === 'signed' ? told.sections.signature?.body.verified : undefined;
  const verified = signed ?? after.found;
  const toAnswer = findingsToAnswer(job, verified);
  const next = nextStep(job, after.nextPass);
  return {
    input,
    told,
    asKept,
    check,
    faults,
    stands,
    bending,
    // What was decided is cut as it was decided, whatever the shop has changed since.
    plan: cutPlanFor(stands, family, decided?.criteria ?? criteria),
    passes: passesOf(job),
    compared: after.compared,
    nextPass: after.nextPass,
    verified,
    next,
    steps: stepsShown(job.steps, next),
    missing: missingOf(job),
    statementNeeded: toAnswer.length > 0,
    toAnswer,
    otherwise,
    studsOtherwise,
  };
}

/** What was decided, chosen and signed, in the reader's unit. */
function jobTold(job: Job, { criteria, writing }: JobUnder, numbers: CoverNumbers | null) {
  const unit = writing.lengthUnit;
  const { decision, studs, signature } = job.sections;
  const decided = decision && decisionTold(decision.body, unit, numbers);
  const chosen = studs && studsTold(studs.body, unit, criteria.studSetting ?? null);
  const kept = job.stage === 'signed' ? (signature?.body.verified ?? null) : null;
  const verified = kept && verifiedTold(job, kept, unit);
  const parts: readonly (readonly ['decision' | 'studs' | 'verified', Told<unknown> | null])[] = [
    ['decision', decided],
    ['studs', chosen],
    ['verified', verified],
  ];
  const told: Job = {
    ...job,
    sections: {
      ...job.sections,
      decision: decision && decided && { ...decision, body: decided.body },
      studs: studs && chosen && { ...studs, body: chosen.body },
      signature:
        signature && verified
          ? { ...signature, body: { ...signature.body, verified: verified.body } }
          : signature,
    },
  };
  return {
    told,
    asKept: parts.flatMap(([part, one]) => (one?.asKept ? [part] : [])),
    otherwise: decided?.otherwise ?? null,
    studsOtherwise: chosen?.otherwise ?? null,
  };
}

/** A signature changes no reading: the paper that is kept with it has the numbers it was signed on. */
function numbersOf(input: CoverCheckInput): CoverNumbers {
  const key = Remembered.key([input, COVER_CALC_VERSION]);
  const known = workedOut.get(key) ?? workOutCover(input);
  workedOut.set(key, known);
  return known;
}

/** What the readings say; where the shop has set a limit on bending, with what is found on that. */
async function checked(
  job: Job,
  { criteria, atHand, writing, bendingAsKept = false }: JobUnder,
  asker: Asker | undefined,
): Promise<Pick<JobAnswer, 'input' | 'check' | 'faults' | 'bending'> & { numbers: CoverNumbers | null }> {
  const { input, faults } = jobInput(job, criteria, atHand, writing.timeZone);
  const unit = writing.lengthUnit;
  const kept = job.outcome === null ? null : (job.sections.decision?.body.bending ?? null);
  const family = job.sections.received?.body.family ?? null;
  const asKept = kept && toldAsKept(kept, family, criteria, unit);
  const none = { input: null, numbers: null, check: null, bending: asKept };
  if (input === null) return { ...none, faults };
  try {
    if (input.stations.length === 0)
      return { ...none, input, check: checkWhatIsThere(input, unit), faults: [] };
    const numbers = numbersOf(input);
    const bare = judgeCover(numbers, unit);
    const further = { family, criteria, check: bare, unit, welded: weldOf(job), asker };
    const bending = asKept ?? (bendingAsKept ? null : await bendingFor(further));
    const found = bending?.findings ?? [];
    const check = found.length === 0 ? bare : judgeCover(numbers, unit, found);
    return { input, numbers, check, faults: [], bending };
  } catch (error) {
    if (error instanceof Refusal) return { ...none, faults: error.faults };
    throw error;
  }
}

/** Where a job stands after a change, and what still keeps it from being signed. */
export function whereItStands(job: Job) {
  const { number, revision, stage, outcome } = job;
  return { number, revision, stage, outcome, missing: missingOf(job) };
}

const NEXT_AT: Readonly<Record<Stage, StepName | null>> = {
  'to-look': 'look',
  'to-measure': 'measure',
  'to-decide': 'decide',
  'to-cut': 'cut',
  'to-verify': 'verify',
  'to-sign': 'sign',
  signed: null,
  closed: null,
};

/** While it is still dark, the cut comes before all else. */
function nextStep(job: Job, pass: NextPass | null): StepName | null {
  const dark = pass !== null && pass.state !== 'gone' && pass.state !== 'look';
  if (dark && (job.stage === 'to-verify' || job.stage === 'to-sign')) return 'cut';
  // Walls are there, but not at every place the plan asks for: the rest is measured before it is decided.
  if (job.stage === 'to-decide' && job.steps.measure === 'partly') return 'measure';
  return NEXT_AT[job.stage];
}
