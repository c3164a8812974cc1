import type { z } from 'zod';
import { doubt } from '../../../shared/quantity/doubt.ts';
import {
  addReadingsSchema,
  receiveJobSchema,
  type SectionCall,
  sectionCallSchemas,
} from '../../../shared/schemas/jobCalls.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Job, NewReading, Reading, SectionName } from '../../../shared/words/job.ts';
import { STAGES } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { jointFrom } from '../../calc/stud/joint/jointFigures.ts';
import { currentCriteria, listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { NotInRecords, StaleEdit } from '../../records/database/errors.ts';
import type { Ctx } from '../../records/database/writing.ts';
import { findJobs } from '../../records/jobs/findJobs.ts';
import { allReadings, revisionsOf } from '../../records/jobs/history.ts';
import { createJob, getJob, jobAtRevision, jobSentAs, reviseJob } from '../../records/jobs/jobs.ts';
import { addReadings } from '../../records/jobs/readings.ts';
import { missingOf } from '../../records/jobs/stage.ts';
import { bentJob } from '../../shop/bending/bentJob.ts';
import { decisionFrom, type Edit, receivedFrom, signatureFrom, studsFrom } from '../../shop/jobEdits.ts';
import { keptBending, keptCheck } from '../../shop/jobKept.ts';
import { jobQuestion } from '../job/jobQuestion.ts';
import { revisionsInWords } from '../job/revisionWords.ts';
import { gaugesAtHand } from '../measuring/gaugeChosen.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import type { Fields, Writing } from '../request/typed.ts';

export interface JobNeeds {
  readonly db: Db;
  readonly now: () => Date;
}

export interface JobAsked {
  /** What the path names: a job's number, a kind of the catalogue. */
  readonly named: string;
  readonly query: Fields;
  readonly body: unknown;
}

export interface JobAnswered {
  readonly status: 200 | 201;
  readonly body: unknown;
}

/** One call about jobs or the catalogue. */
export interface JobCall {
  readonly methods: readonly ('GET' | 'POST' | 'PUT')[];
  /** Below /api, with the one thing it names in braces. */
  readonly path: string;
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  /** What may stand after the question mark, each with what it means. */
  readonly query: Readonly<Record<string, string>>;
  /** Of the body; null where there is none. */
  readonly schema: z.ZodType | null;
  readonly answer: (needs: JobNeeds, asked: JobAsked) => Promise<JobAnswered>;
}

const CONFLICT =
  'fromRevision is the job’s revision the change was thought of at. Where somebody changed the same since, the answer is 409 with both versions, and nothing is written.';
const SEEN: Partial<Record<SectionName, string>> = {
  decision:
    ' criteriaRevision is the revision of the shop’s criteria the answer was seen under, as the job is answered with them; where they changed since, the answer is 409 with the criteria of now.',
  studs:
    ' The revisions are those of the stack, the stud and the criteria that were seen; where one changed since, the answer is 409 with it as it is now.',
};
const RETIRED = { retired: 'true: with those out of use' };
const MOST_LISTED = 200;

const SECTION_SUMMARY: Readonly<Record<SectionName, string>> = {
  received: 'Correct what came in.',
  looked: 'Record the look for cracks and faults.',
  setup:
    'Say how it is measured. It is sent whole: what is left out counts as not said, and what was said before stays in the history.',
  plan: 'Name a cut to try.',
  decision: 'Decide, on what the readings say now.',
  cuts: 'Record the cuts made.',
  studs: 'Choose the studs for a stack.',
  signature: 'Sign.',
};

export const jobCalls: readonly JobCall[] = [
  {
    methods: ['GET'],
    path: '/jobs',
    name: 'findJobs',
    summary: 'Jobs, newest first.',
    description: 'A page at a time: send the next of one page as after for the page behind it.',
    query: {
      text: 'words found in the number, the family or the customer reference',
      family: 'the id of a cover family',
      stage: `one of ${STAGES.join(', ')}`,
      outcome: 'face, face-and-ring or replace',
      from: 'received on this day or later, 2026-11-24',
      to: 'received on this day or earlier',
      after: 'the next of the page before',
      limit: `1 to ${MOST_LISTED}; 50 without it`,
    },
    schema: null,
    answer: async ({ db }, { query }) => ok(await findJobs(db, jobQuestion(query, { limit: 50 }))),
  },
  {
    methods: ['POST'],
    path: '/jobs',
    name: 'receiveJob',
    summary: 'Receive a cover: a new job.',
    description:
      'With an id of the sender’s own, sending it again answers 200 with the job it made the first time. Without a number it gets the next free one.',
    query: {},
    schema: receiveJobSchema,
    answer: receive,
  },
  {
    methods: ['GET'],
    path: '/jobs/{number}',
    name: 'getJob',
    summary: 'A job, whole.',
    description:
      'As it stands, or as it was at a revision. missing says what keeps it from being signed; criteria are the shop’s of today, whose revision a decision names.',
    query: { revision: 'the job as it was then' },
    schema: null,
    answer: async ({ db }, { named, query }) => {
      const now = await mustFind(db, named);
      const { revision } = query;
      const job = revision === undefined ? now : await jobAtRevision(db, now.id, numberIn(revision));
      return ok({ job, missing: missingOf(job), criteria: await currentCriteria(db) });
    },
  },
  {
    methods: ['GET'],
    path: '/jobs/{number}/history',
    name: 'jobHistory',
    summary: 'What every revision of a job changed.',
    description: 'Oldest first, in plain words; the whole of a revision is the job asked for with revision.',
    query: {},
    schema: null,
    answer: async ({ db }, { named }) => {
      const job = await mustFind(db, named);
      const told = revisionsInWords(await revisionsOf(db, job.id), await writingOf(db));
      return ok({ number: job.number, revisions: told });
    },
  },
  {
    methods: ['GET'],
    path: '/jobs/{number}/stiffness',
    name: 'jobStiffness',
    summary: 'How a job’s cover bends and heats. Advice.',
    description:
      'As kept while the decision stands, else as the readings stand: new, now, after the cut and with a ring, each from a rigid to a conforming piston. bending is null where it could not be worked out, and why says what is missing. Findings are there where the shop has set a limit.',
    query: {},
    schema: null,
    answer: async ({ db }, { named }) => ok(await stiffnessOf(db, await mustFind(db, named))),
  },
  {
    methods: ['POST'],
    path: '/jobs/{number}/readings',
    name: 'addReadings',
    summary: 'Add readings, all or none.',
    description:
      'Each has an id of the sender’s own, so that sending it again is harmless: added names the new ones, already those that were there. A correction replaces an earlier reading; one without a value withdraws it. A wall that looks like a slipped decimal is put down as doubtful, unless doubtful is sent.',
    query: {},
    schema: addReadingsSchema,
    answer: add,
  },
  ...(Object.keys(sectionCallSchemas) as SectionName[]).map(sectionCall),
  ...(['family', 'stud', 'stack'] as const).map(
    (kind): JobCall => ({
      methods: ['GET'],
      path: `/catalogue/${kind}`,
      name: `list${kind[0]!.toUpperCase()}${kind.slice(1)}`,
      summary: `Every ${kind === 'family' ? 'cover family' : kind} of the catalogue.`,
      description: 'By name, each with its revision, who made it so and when.',
      query: RETIRED,
      schema: null,
      answer: async ({ db }, { query }) =>
        ok({ entries: await listEntries(db, kind, { retired: query.retired === 'true' }) }),
    }),
  ),
];

function ok(body: unknown): JobAnswered {
  return { status: 200, body };
}

async function stiffnessOf(db: Db, job: Job) {
  const kept = keptBending(job);
  const onBending = (findings: readonly Finding[]) => findings.filter(({ id }) => id.startsWith('stiffness'));
  if (kept !== null) return { bending: kept, why: null, findings: onBending(keptCheck(job)?.findings ?? []) };
  const { body: criteria } = await currentCriteria(db);
  const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
  const { told } = await bentJob(job, criteria, criteria.lengthUnit, atHand);
  if (told === null) {
    return { bending: null, why: 'Nothing has been measured yet; measure the wall first.', findings: [] };
  }
  const { bending, why, findings } = told;
  return { bending, why, findings };
}

async function receive(needs: JobNeeds, { body }: JobAsked): Promise<JobAnswered> {
  const { id, number, who, received } = readBody(receiveJobSchema, body);
  const { db } = needs;
  const made = id === null ? null : await jobSentAs(db, id);
  if (made !== null) return ok(toldOf(made));
  const job = await createJob(db, ctxOf(needs, who), {
    ...(id !== null && { sentId: id }),
    ...(number !== null && { number }),
    received: await receivedFrom(db, received, 'received.familyId'),
  });
  return { status: 201, body: toldOf(job) };
}

async function add(needs: JobNeeds, { named, body }: JobAsked): Promise<JobAnswered> {
  const { who, why, readings } = readBody(addReadingsSchema, body);
  const { db } = needs;
  const job = await mustFind(db, named);
  const known = new Map((await allReadings(db, job.id)).map((reading) => [reading.id, reading]));
  const looked = (body as { readings: { doubtful?: unknown }[] }).readings.map((one) => one.doubtful ?? null);
  const weighed = readings.map((reading, i): NewReading => {
    const angleDeg = ((reading.angleDeg % 360) + 360) % 360;
    const doubtful = looked[i] === null ? doubted(job, reading, known.get(reading.id)) : reading.doubtful;
    return { ...reading, angleDeg, doubtful };
  });
  try {
    const done = await addReadings(db, ctxOf(needs, who, why), { jobId: job.id, readings: weighed });
    return ok({ ...toldOf(done.job), added: done.added, already: done.already });
  } catch (error) {
    const late =
      error instanceof Refusal && (error.code === 'nothing-to-replace' || error.code === 'reading-differs');
    if (!late) throw error;
    const index = Number(/^readings\.(\d+)\./.exec(error.faults[0]?.path ?? '')?.[1]);
    const yours = weighed[index];
    const standing = (await mustFind(db, named)).readings;
    const theirs = standing.filter(
      (one) =>
        one.pass === yours?.pass &&
        one.kind === yours.kind &&
        one.angleDeg === yours.angleDeg &&
        one.radiusMm === yours.radiusMm,
    );
    throw new ApiError(409, 'stale', error.message, error.faults, { theirs, yours: yours ?? null });
  }
}

/** A reading sent before keeps what was made of it then. */
function doubted(job: Job, reading: NewReading, before: Reading | undefined): boolean {
  if (before) return before.doubtful;
  const expectedMm = job.sections.received?.body.family.nominalWallMm;
  if (reading.kind !== 'wall' || reading.valueMm === null || expectedMm === undefined) return false;
  const typed = reading.typed === '' ? String(reading.valueMm) : reading.typed;
  return doubt({ valueMm: reading.valueMm, expectedMm, typed, unit: 'mm', decimalSign: 'point' }) !== null;
}

function sectionCall(section: SectionName): JobCall {
  const schema: z.ZodType = sectionCallSchemas[section];
  return {
    methods: ['PUT', 'POST'],
    path: `/jobs/{number}/${section}`,
    name: `change${section[0]!.toUpperCase()}${section.slice(1)}`,
    summary: SECTION_SUMMARY[section],
    description: `${CONFLICT}${SEEN[section] ?? ''} After signing every change says why.`,
    query: {},
    schema,
    answer: async (needs, { named, body }) => {
      const sent = readBody(schema, body) as { fromRevision: number; who: string; why: string };
      const job = await mustFind(needs.db, named);
      const edit = await editOf(needs.db, job, section, sent);
      try {
        const { fromRevision } = sent;
        const ctx = ctxOf(needs, sent.who, sent.why);
        return ok(toldOf(await reviseJob(needs.db, ctx, { jobId: job.id, fromRevision, ...edit })));
      } catch (error) {
        if (!(error instanceof StaleEdit)) throw error;
        const { section: of, theirs, currentRevision, since } = error;
        const both = { of, theirs, yours: edit.body, currentRevision, since };
        throw new ApiError(409, 'stale', error.message, [], both);
      }
    },
  };
}

async function editOf(db: Db, job: Job, section: SectionName, sent: unknown): Promise<Edit> {
  const { lengthUnit } = await writingOf(db);
  switch (section) {
    case 'received': {
      const { received } = sent as SectionCall<'received'>;
      return { what: 'received', body: await receivedFrom(db, received, 'received.familyId') };
    }
    case 'decision': {
      const { decision, fromRevision } = sent as SectionCall<'decision'>;
      const field = 'decision.criteriaRevision';
      return decisionFrom(db, job, { ...decision, fromRevision }, lengthUnit, field);
    }
    case 'studs': {
      const { studs } = sent as SectionCall<'studs'>;
      const { joint, torqueFrom, stackRevision, studRevision, criteriaRevision } = studs;
      const asked = {
        ...studs,
        jointFrom: joint && jointFrom(joint, torqueFrom),
        revisions: { stack: stackRevision, stud: studRevision, criteria: criteriaRevision },
      };
      return studsFrom(db, job, asked, lengthUnit, {
        stack: 'studs.stackId',
        stud: 'studs.studId',
        note: 'studs.note',
        criteria: 'studs.criteriaRevision',
        joint: (path) => `studs.${path}`,
        replaced: (index) => `studs.replaced.${index}.stud`,
      });
    }
    case 'signature': {
      const { signature, fromRevision } = sent as SectionCall<'signature'>;
      const { body: criteria } = await currentCriteria(db);
      return signatureFrom(job, { ...signature, fromRevision }, criteria, lengthUnit);
    }
    case 'looked':
      return { what: section, body: (sent as SectionCall<'looked'>).looked };
    case 'setup':
      return { what: section, body: (sent as SectionCall<'setup'>).setup };
    case 'plan':
      return { what: section, body: (sent as SectionCall<'plan'>).plan };
    case 'cuts':
      return { what: section, body: (sent as SectionCall<'cuts'>).cuts };
  }
}

/** What every change answers with: where the job now stands. */
function toldOf(job: Job) {
  const { number, revision, stage, outcome } = job;
  return { number, revision, stage, outcome, missing: missingOf(job) };
}

async function writingOf(db: Db): Promise<Writing> {
  return (await currentCriteria(db)).body;
}

function ctxOf(needs: JobNeeds, who: string, why = ''): Ctx {
  return { who, why, now: needs.now };
}

function numberIn(typed: string): number {
  return /^\d{1,9}$/.test(typed) ? Number(typed) : Number.NaN;
}

async function mustFind(db: Db, number: string): Promise<Job> {
  const job = await getJob(db, number);
  if (job === null) {
    throw new NotInRecords(
      'number',
      `There is no job "${number.slice(0, 40)}" in this shop; ask for /api/jobs.`,
    );
  }
  return job;
}
