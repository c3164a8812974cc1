import type { ComparedWall, NextPass, PassView } from '../../shared/words/afterCut.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CutPlanAnswer } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { ListForJob } from '../../shared/words/inspection.ts';
import type { Job, Stage, StepName, StepState } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { missingOf, stepsShown } from '../calc/job/jobStage.ts';
import { findingsToAnswer } from '../records/jobs/rules.ts';
import { afterCut, passesOf } from './afterCut.ts';
import { cutPlanFor } from './cutPlanFor.ts';
import { listFindings, listStands } from './inspection/listFindings.ts';
import { decisionTold, studsTold, type Told, verifiedTold } from './jobTold.ts';

/** What a job says beside what its readings do. */
export interface JobRest {
  /** The job with what was decided, chosen and signed told in the reader's unit; its numbers are as they were kept. */
  readonly told: Job;
  /** Of which parts the sentences are shown as they were kept: today's calculation finds something otherwise. */
  readonly asKept: readonly ('decision' | 'studs' | 'verified')[];
  /** What the decision was made on while it stands, else what the readings say. */
  readonly stands: CoverCheck | null;
  readonly plan: CutPlanAnswer | null;
  readonly passes: readonly PassView[];
  readonly compared: readonly ComparedWall[];
  readonly nextPass: NextPass | null;
  /** What was measured after the cut, and what the inspection list found: as found at signing where the signature stands, else as found now. */
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

/** What else a job says, once its readings are worked out. Plain values in and out: it may be asked of another thread. */
export function restOfJob(
  job: Job,
  { criteria, lists }: { readonly criteria: ShopCriteria; readonly lists: readonly ListForJob[] },
  unit: LengthUnit,
  numbers: CoverNumbers | null,
  check: CoverCheck | null,
): JobRest {
  const { told, asKept, otherwise, studsOtherwise } = jobTold(job, criteria, unit, numbers);
  const decided = job.outcome === null ? null : (told.sections.decision?.body ?? null);
  const stands = decided?.check ?? check;
  const family = job.sections.received?.body.family ?? null;
  const after = afterCut(job, criteria, unit);
  const signed = job.stage === 'signed' ? told.sections.signature?.body.verified : undefined;
  const listed = listFindings(job, lists, unit, criteria);
  const verified = signed ?? [...after.found, ...listed];
  const toAnswer = findingsToAnswer(job, verified);
  const next = nextStep(job, after.nextPass);
  return {
    told,
    asKept,
    stands,
    // What was decided is cut as it was decided, whatever the shop has changed since, unless a lathe is chosen.
    plan: cutPlanFor(
      stands,
      family,
      job.sections.plan?.body.lathe?.lathe ?? (decided?.criteria ?? criteria).lathe,
    ),
    passes: passesOf(job),
    compared: after.compared,
    nextPass: after.nextPass,
    verified,
    next,
    steps: stepsShown(withList(job, lists), next),
    missing: missingOf(job),
    statementNeeded: toAnswer.length > 0,
    toAnswer,
    otherwise,
    studsOtherwise,
  };
}

/** A job is inspected when its list is. */
function withList({ steps, sections }: Job, lists: readonly ListForJob[]): Job['steps'] {
  const { done, of } = listStands(lists, sections.inspected?.body ?? null);
  return steps.look === 'done' && done < of ? { ...steps, look: 'partly' } : steps;
}

/** What was decided, chosen and signed, in the reader's unit. */
function jobTold(job: Job, criteria: ShopCriteria, unit: LengthUnit, numbers: CoverNumbers | null) {
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
