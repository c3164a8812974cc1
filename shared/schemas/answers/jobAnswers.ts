import * as z from 'zod';
import type { ComparedWall, NextPass, PassView } from '../../words/afterCut.ts';
import {
  type Inspected,
  type InspectedItem,
  type InspectionItem,
  ITEM_KINDS,
} from '../../words/inspection.ts';
import type {
  Closing,
  Decision,
  HistoryLine,
  Job,
  JobLine,
  JobSections,
  JobSteps,
  JointFrom,
  Kept,
  NewReading,
  Reading,
  ReplacedStudKept,
  RetorqueKept,
  SectionName,
  Signature,
  StepName,
  StepState,
  StudsChosen,
} from '../../words/job.ts';
import { STAGES, STEP_NAMES } from '../../words/job.ts';
import type { Fault } from '../../words/refusal.ts';
import { coverCheckSchema } from '../coverCheck.ts';
import { cutsSchema, lookedSchema, planSchema, readingSchema, receivedSchema, setupSchema } from '../job.ts';
import { replacedStudSchema, retorqueSchema } from '../studWork.ts';
import { bendingAnswer } from './bendingAnswer.ts';
import { type AnsweredKind, entryBodies } from './catalogueAnswer.ts';
import { coverAnswer, measuredAnswer } from './coverAnswer.ts';
import { errorBeside } from './errorAnswer.ts';
import { exactly, named } from './exactly.ts';
import { doubted, findings, number, numberOrNull, text, textOrNull, yes } from './finding.ts';
import { asKept, keptFields } from './kept.ts';
import { keptStudInput, studAnswer } from './studAnswer.ts';

const count = z.int();
const outcome = z.enum(['face', 'face-and-ring', 'replace']);
const stage = z.enum(STAGES);
const at = text.describe('UTC, ISO 8601.');

const decision = exactly<Decision>({
  decision: outcome,
  reason: text,
  input: asKept(coverCheckSchema),
  criteria: entryBodies.criteria,
  criteriaRevision: count.optional(),
  check: coverAnswer,
  calcVersion: text,
  bending: bendingAnswer.nullish(),
  workedOutAtRevision: count,
});

const revisions = exactly<NonNullable<StudsChosen['revisions']>>({
  stack: count,
  stud: count,
  criteria: count,
});

const studs = exactly<StudsChosen>({
  stackId: text,
  stack: entryBodies.stack,
  studId: text,
  stud: entryBodies.stud,
  revisions: revisions.optional(),
  pullForwardMm: numberOrNull,
  input: keptStudInput.optional(),
  check: studAnswer,
  calcVersion: text,
  note: text,
  jointFrom: exactly<JointFrom>({
    torque: z.enum(['maker', 'other']).nullable(),
    nutFactor: text,
    scatter: text,
    friction: text,
  }).nullish(),
  replaced: z.array(exactly<ReplacedStudKept>(keptFields(replacedStudSchema.shape, { findings }))).optional(),
  retightening: exactly<RetorqueKept>(keptFields(retorqueSchema.shape, { findings })).nullish(),
});

export const inspectionItem = exactly<InspectionItem>({
  id: text,
  name: text,
  kind: z.enum(ITEM_KINDS),
  least: numberOrNull.describe('In mm, N·m or MPa.'),
  most: numberOrNull,
  how: text,
});

export const inspectedItem = exactly<InspectedItem>({
  listId: text,
  listRevision: count,
  item: inspectionItem,
  ok: yes.nullable().describe('Of a yes or no.'),
  value: numberOrNull.describe('In mm, N·m or MPa.'),
  typed: text,
  confirmed: yes,
  note: text,
  who: text,
  at,
});

/** The sections of a job as they leave, each by its name. */
const sectionBodies: { readonly [S in SectionName]: z.ZodType<JobSections[S]> } = {
  received: named('Received', asKept(receivedSchema)),
  looked: named('Looked', asKept(lookedSchema)),
  inspected: named(
    'Inspected',
    exactly<Inspected>({
      items: z.array(inspectedItem),
    }),
  ),
  setup: named('Setup', asKept(setupSchema)),
  plan: named('Plan', asKept(planSchema)),
  decision: named('Decision', decision),
  cuts: named('Cuts', asKept(cutsSchema)),
  studs: named('StudsChosen', studs),
  signature: named(
    'Signature',
    exactly<Signature>({ statement: text, signedRevision: count, verified: findings.optional() }),
  ),
  closed: named('Closing', exactly<Closing>({ closed: yes })),
};

function kept<Body>(body: z.ZodType<Body>) {
  return z.strictObject({ revision: count, at, who: text, why: text, body } satisfies {
    [F in keyof Kept<Body>]: z.ZodType;
  });
}

const reading = named(
  'Reading',
  exactly<Reading>(
    keptFields(readingSchema.shape, {
      confirmed: z
        .boolean()
        .nullable()
        .optional()
        .describe('It looked like a slip, and somebody said it is right; null where nobody kept whether.'),
      revision: count,
      who: text,
      at,
    }),
  ),
);

const sections = exactly<Job['sections']>({
  received: kept(sectionBodies.received).nullable(),
  looked: kept(sectionBodies.looked).nullable(),
  inspected: kept(sectionBodies.inspected).nullable(),
  setup: kept(sectionBodies.setup).nullable(),
  plan: kept(sectionBodies.plan).nullable(),
  decision: kept(sectionBodies.decision).nullable(),
  cuts: kept(sectionBodies.cuts).nullable(),
  studs: kept(sectionBodies.studs).nullable(),
  signature: kept(sectionBodies.signature).nullable(),
  closed: kept(sectionBodies.closed).nullable(),
});

const stands = z.enum(['done', 'partly', 'open', 'spared']);
const steps = exactly<JobSteps>({
  receive: stands,
  look: stands,
  measure: stands,
  decide: stands,
  cut: stands,
  verify: stands,
  studs: stands,
  sign: stands,
}).describe('open: needed and missing; spared: missing, and nothing needs it.');

const job = named(
  'Job',
  exactly<Job>({
    id: count,
    number: text,
    revision: count.describe('Goes up by one with every change.'),
    createdAt: at,
    changedAt: at,
    stage,
    steps,
    outcome: outcome.nullable(),
    demo: yes,
    sections,
    readings: z.array(reading).describe('Without those replaced or withdrawn.'),
    weldedAt: count.optional(),
    passesAt: z.array(count).optional(),
    earlierAfter: z.array(reading).optional(),
  }),
);

const line = named(
  'JobLine',
  exactly<JobLine>({
    id: count,
    number: text,
    revision: count,
    createdAt: at,
    changedAt: at,
    stage,
    outcome: outcome.nullable(),
    familyId: text,
    familyName: text,
    customerReference: text,
    receivedOn: text.describe('A day, as in 2026-11-24.'),
    demo: yes,
  }),
);

/** What `GET /api/jobs` answers. */
export const jobsAnswer = named(
  'Jobs',
  z.strictObject({
    jobs: z.array(line),
    next: textOrNull.describe('Where the next page begins; null at the end.'),
  }),
);

const missing = z.array(text).describe('What still keeps the job from being signed.');

const stepState = z.enum(['done', 'partly', 'next', 'missing', 'later']);
const answer = named(
  'JobWorkedOut',
  z.strictObject({
    check: coverAnswer
      .nullable()
      .describe('As POST /api/cover/check: the answer from the job’s readings as they are now.'),
    faults: z.array(exactly<Fault>({ path: text, message: text })).describe('Why they cannot be used.'),
    passes: z.array(
      exactly<PassView>({
        depthMm: number,
        totalMm: number,
        note: text,
        look: z.enum(['gone', 'dark']).nullable(),
        beforeRing: yes,
        thinnestMm: numberOrNull,
        darkMm: numberOrNull,
      }),
    ),
    compared: z
      .array(
        exactly<ComparedWall>({
          angleDeg: number,
          radiusMm: number,
          place: text,
          faceMm: numberOrNull,
          markDepthMm: numberOrNull,
          beforeMm: numberOrNull,
          decidedMm: numberOrNull,
          cutMm: numberOrNull,
          measuredMm: number,
        }),
      )
      .describe('Each station measured after the cut, with what should be left there.'),
    nextPass: exactly<NextPass>({
      state: z.enum(['look', 'gone', 'cut-more', 'plan-again', 'measure-again', 'stop']),
      headline: text,
      because: text,
      nextMm: numberOrNull,
      totalMm: numberOrNull,
      wallNowMm: number,
      measured: yes,
      roomMm: numberOrNull,
      check: measuredAnswer,
    }).nullable(),
    verified: findings.describe('What was found after the cut; once signed, as it was found then.'),
    next: z.enum(STEP_NAMES).nullable().describe('The step that is to be done.'),
    steps: exactly<Record<StepName, StepState>>({
      receive: stepState,
      look: stepState,
      measure: stepState,
      decide: stepState,
      cut: stepState,
      verify: stepState,
      studs: stepState,
      sign: stepState,
    }),
    statementNeeded: yes.describe('A signature has to say why.'),
    otherwise: textOrNull.describe('How today’s calculation answers differently from the decision’s inputs.'),
  }),
);

/** What `GET /api/jobs/{number}` answers. */
export const jobAnswer = named(
  'JobAnswer',
  z.strictObject({
    job,
    missing,
    answer,
    criteria: z.strictObject({
      revision: count.describe('0 until limits are saved.'),
      at: textOrNull,
      who: textOrNull,
      body: entryBodies.criteria,
    }),
  }),
);

const HISTORY_LINE = {
  revision: count,
  at,
  who: text,
  why: text,
  what: z.enum([
    'received',
    'looked',
    'inspected',
    'setup',
    'plan',
    'decision',
    'cuts',
    'studs',
    'signature',
    'reading',
    'photo',
    'closed',
  ]),
};
const historyLine = named('HistoryLine', exactly<HistoryLine>(HISTORY_LINE));

/** What `GET /api/jobs/{number}/history` answers. */
export const historyAnswer = named(
  'JobHistory',
  z.strictObject({
    number: text,
    revisions: z.array(
      z.strictObject({
        ...HISTORY_LINE,
        summary: text,
        changes: z.array(z.strictObject({ label: text, before: text, after: text })),
      }),
    ),
  }),
);

/** What `GET /api/jobs/{number}/stiffness` answers. */
export const jobStiffnessAnswer = named(
  'JobStiffness',
  z.strictObject({
    bending: bendingAnswer.nullable(),
    why: textOrNull.describe('Where it could not be worked out: what is missing.'),
    findings,
  }),
);

const STANDING = { number: text, revision: count, stage, outcome: outcome.nullable(), missing };

/** What every change of a job answers: where it now stands. */
export const changedAnswer = named('JobStanding', z.strictObject(STANDING));

/** What `POST /api/jobs/{number}/readings` answers. */
export const readingsAnswer = named(
  'ReadingsAdded',
  z.strictObject({
    ...STANDING,
    added: z.array(text).describe('The ids that are new.'),
    already: z.array(text).describe('The ids that were there.'),
    doubts: z.array(doubted).describe('The new ones that look like a slip.'),
  }),
);

/** A correction of a reading that came too late: what stands at its place, and it. */
export const staleReadings = named(
  'ReadingsStale',
  errorBeside({
    theirs: z.array(reading),
    yours: exactly<NewReading>(
      keptFields(readingSchema.shape, {
        confirmed: z.boolean().nullable().optional(),
      }),
    ).nullable(),
  }),
);

/** A change of a section that came too late: what was changed meanwhile, as it stands now, and it. */
function stale<Of extends SectionName, On extends AnsweredKind = never>(
  section: Of,
  restsOn: readonly On[] = [],
) {
  const bodies = [sectionBodies[section], ...restsOn.map((kind) => entryBodies[kind])];
  return named(
    `${section[0]!.toUpperCase()}${section.slice(1)}Stale`,
    errorBeside({
      of: z.enum([section, ...restsOn]),
      theirs: kept(z.union(bodies)).nullable(),
      yours: sectionBodies[section],
      currentRevision: count,
      since: z.array(historyLine),
    }),
  );
}

export const staleSections: { readonly [S in SectionName]: z.ZodType } = {
  inspected: stale('inspected'),
  received: stale('received'),
  looked: stale('looked'),
  setup: stale('setup'),
  plan: stale('plan'),
  decision: stale('decision', ['criteria']),
  cuts: stale('cuts'),
  studs: stale('studs', ['stack', 'stud', 'criteria']),
  signature: stale('signature'),
  closed: stale('closed'),
};
