import type { Selectable } from 'kysely';
import type {
  HistoryLine,
  Job,
  JobSections,
  Kept,
  Looked,
  NewReading,
  Received,
  SectionName,
} from '../../../shared/words/job.ts';
import { isNoAddress, noAddress } from '../../../shared/words/jobNumber.ts';
import { listInWords } from '../../../shared/words/print.ts';
import {
  counting,
  decisionStands,
  type StageParts,
  sameFamily,
  stageOf,
  standing,
  stepsOf,
} from '../../calc/job/jobStage.ts';
import { refuseSeenOtherwise, type Seen } from '../catalogue.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse, StaleEdit } from '../database/errors.ts';
import { sayTheSame, toJson } from '../database/json.ts';
import type { Tables } from '../database/tables.ts';
import {
  type Ctx,
  hasControls,
  key,
  printable,
  refuseNul,
  type Signed,
  samePerson,
  signed,
} from '../database/writing.ts';
import { CRITERIA_ID } from '../shopCriteria.ts';
import { historyOf } from './history.ts';
import { readingsOf, toReadingRow } from './readingRows.ts';
import {
  refuseCutBeforeRing,
  refuseCutsThroughWall,
  refuseDecision,
  refuseFamilyUnexplained,
  refuseLiftedCrack,
  refusePlanThroughWall,
  refuseRingLeftOut,
  refuseSignature,
} from './rules.ts';

const FIRST_NUMBER = 1001;
/** A longer run of digits is a scanned code, not a number the shop counts by. */
const PLAIN_NUMBER = /^\d{1,7}$/;

const CHANGE_WORDS: Readonly<Record<What, string>> = {
  received: 'what was received',
  looked: 'the look',
  setup: 'the measuring set-up',
  plan: 'the planned cut',
  decision: 'the decision',
  cuts: 'the cuts made',
  studs: 'the studs chosen',
  signature: 'the signature',
  reading: 'the readings',
  photo: 'the photos',
};

export interface NewJob {
  readonly number?: string;
  readonly received: Received;
  readonly demo?: boolean;
  /** Made by whoever sends it: sent again, it leads to the job it made the first time. */
  readonly sentId?: string;
}

/** Starts a job. Without a number it gets the one after the shop's highest. */
export async function createJob(db: Db, ctx: Ctx, job: NewJob): Promise<Job> {
  const by = signed(ctx, undefined);
  const { received } = job;
  const body = toJson(received);
  refuseDay(received.receivedOn);
  return write(db, async (trx) => {
    const made = job.sentId === undefined ? null : await jobSentAs(trx, job.sentId);
    if (made !== null) return sameAsSent(trx, made, job, by);
    const number = await numberFor(trx, job.number);
    const { id } = await trx
      .insertInto('job')
      .values({
        number,
        number_key: key(number),
        plain_number: PLAIN_NUMBER.test(number) ? Number(number) : null,
        demo: job.demo === true ? 1 : 0,
        created_at: by.at,
        revision: 1,
        changed_at: by.at,
        stage: 'to-look',
        outcome: null,
        ...projectionOf(number, received),
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    await addRevision(trx, by, { jobId: id, revision: 1, what: 'received', body });
    if (job.sentId !== undefined) {
      await trx.insertInto('job_sent').values({ id: job.sentId, job_id: id }).execute();
    }
    return jobAtRevision(trx, id, 1);
  });
}

/** What was sent under an id before is sent again: the same, or something else, which is never taken for it. */
async function sameAsSent(db: Db, made: Job, sent: NewJob, by: Signed): Promise<Job> {
  const first = (await jobAtRevision(db, made.id, 1)).sections.received!;
  const differs = [
    ...SENT_WORDS.filter(([name]) => first.body[name] !== sent.received[name]).map(([, word]) => word),
    ...(sent.number !== undefined && key(sent.number) !== key(made.number) ? ['the job number'] : []),
    ...(samePerson(by.who, first.who) ? [] : ['the initials']),
  ];
  if (differs.length === 0) return made;
  throw refuse(
    'sent-otherwise',
    'id',
    `This was sent before and made job ${made.number}, but now ${listInWords(differs)} ${differs.length === 1 ? 'is' : 'are'} different. Change job ${made.number}, or send a new job under an id of its own.`,
  );
}

const SENT_WORDS = [
  ['familyId', 'the cover family'],
  ['customerReference', 'the customer reference'],
  ['receivedOn', 'the day'],
  ['note', 'the note'],
] as const;

/** The job that a sender's own id made; null when it made none yet. */
export async function jobSentAs(db: Db, sentId: string): Promise<Job | null> {
  const row = await db.selectFrom('job_sent').select('job_id').where('id', '=', sentId).executeTakeFirst();
  return row ? getJob(db, row.job_id) : null;
}

/** A job by its id, or by its number as typed; null when there is none. */
export async function getJob(db: Db, idOrNumber: number | string): Promise<Job | null> {
  const row = await jobRow(db, idOrNumber);
  return row ? toJob(row, await partsOf(db, row.id, row.revision)) : null;
}

/** The job as it was. Throws NotInRecords when it has no such revision. */
export async function jobAtRevision(db: Db, jobId: number, revision: number): Promise<Job> {
  const row = await jobRow(db, jobId);
  if (!row) throw noJob(jobId);
  refuseUnknownRevision(row, revision);
  return toJob(row, await partsOf(db, jobId, revision));
}

/**
 * Changes one section: a new revision, unless it already says just that. Throws StaleEdit when somebody changed the
 * section since `fromRevision`; a decision, the studs and a signature rest on the whole job.
 */
export async function reviseJob(db: Db, ctx: Ctx, edit: SectionEdit): Promise<Job> {
  const by = signed(ctx, edit.why);
  const { jobId, what } = edit;
  if (edit.what === 'received') refuseDay(edit.body.receivedOn);
  const body = toJson(edit.body);
  return write(db, async (trx) => {
    const row = await jobRow(trx, jobId);
    if (!row) throw noJob(jobId);
    const parts = await partsOf(trx, jobId, row.revision);
    const job = toJob(row, parts);
    const now = job.sections[what];
    if (now && samePerson(by.who, now.who) && sayTheSame(body, JSON.stringify(now.body))) return job;
    refuseUnknownRevision(row, edit.fromRevision);
    if (edit.what === 'decision') refuseUnknownRevision(row, edit.body.workedOutAtRevision);
    await refuseStale(trx, job, edit);
    await refuseSeenOtherwise(trx, seenFor(edit));
    if (edit.what === 'looked') refuseLiftedCrack(parts.looks, edit.body, by.who);
    if (edit.what === 'decision') refuseDecision(edit.body, parts.sections.looked);
    if (edit.what === 'signature') refuseSignature(job, edit.body);
    else refuseUnexplained(job, by);
    if (edit.what === 'received') refuseFamilyUnexplained(job, edit.body, by.why);
    if (edit.what === 'plan') refusePlanThroughWall(job, edit.body);
    if (edit.what === 'cuts') {
      refuseCutBeforeRing(job, edit.body);
      refuseCutsThroughWall(job, edit.body);
    }
    if (edit.what === 'setup') refuseRingLeftOut(job.sections.setup?.body ?? null, edit.body, by.why);
    return addToJob(trx, by, row, { what, body });
  });
}

/** A section as somebody wants it, and the revision of the job they were looking at. */
export type SectionEdit = {
  readonly jobId: number;
  readonly fromRevision: number;
  readonly why?: string;
} & { [S in SectionName]: { readonly what: S; readonly body: JobSections[S] } }[SectionName];

type What = HistoryLine['what'];
const ON_ITSELF = () => false;
/** A photo shows what is there and changes no number. */
const ON_ALL_BUT_PHOTOS = (what: What) => what !== 'photo';
const ON_ALL = () => true;

/** What else, changed since, makes an edit of a section stale. */
const RESTS_ON: Readonly<Record<SectionName, (what: What) => boolean>> = {
  received: ON_ITSELF,
  looked: ON_ITSELF,
  setup: ON_ITSELF,
  plan: ON_ITSELF,
  cuts: ON_ITSELF,
  decision: (what) => what !== 'studs' && what !== 'photo',
  studs: ON_ALL_BUT_PHOTOS,
  signature: ON_ALL,
};

/** What of the catalogue an edit was worked out from. */
function seenFor(edit: SectionEdit): readonly Seen[] {
  const criteria = (revision: number): Seen => ({ kind: 'criteria', id: CRITERIA_ID, revision });
  if (edit.what === 'decision' && edit.body.criteriaRevision !== undefined) {
    return [criteria(edit.body.criteriaRevision)];
  }
  if (edit.what === 'studs' && edit.body.revisions !== undefined) {
    const { stackId, studId, revisions } = edit.body;
    return [
      { kind: 'stack', id: stackId, revision: revisions.stack },
      { kind: 'stud', id: studId, revision: revisions.stud },
      criteria(revisions.criteria),
    ];
  }
  return [];
}

async function refuseStale(db: Db, job: Job, edit: SectionEdit): Promise<void> {
  const theirs = job.sections[edit.what];
  const rests = RESTS_ON[edit.what];
  // A decision rests on what it was worked out from, which may be older than the page it was sent from.
  const from =
    edit.what === 'decision' ? Math.min(edit.fromRevision, edit.body.workedOutAtRevision) : edit.fromRevision;
  const since = (await historyOf(db, job.id)).filter((line) => line.revision > from);
  if (!since.some((line) => line.what === edit.what || rests(line.what))) return;
  const changed = [...new Set(since.map((line) => CHANGE_WORDS[line.what]))];
  const who = [...new Set(since.map((line) => line.who))];
  const sentence =
    theirs && theirs.revision > from
      ? `${theirs.who} changed ${CHANGE_WORDS[edit.what]} of job ${job.number} while you had it open (yours began at revision ${from}, theirs is ${theirs.revision}). Nothing of yours was saved; compare the two and save again.`
      : `${listInWords(who)} changed ${listInWords(changed)} of job ${job.number} after revision ${from}, on which ${CHANGE_WORDS[edit.what]} rests. Nothing was saved; look at the job as it is now and do it again.`;
  throw new StaleEdit(sentence, { section: edit.what, theirs, currentRevision: job.revision, since });
}

/** Adds one revision to a job and brings its line in the lists up to date. Inside a write only. */
export async function addToJob(
  trx: Db,
  by: Signed,
  row: JobRow,
  change: {
    readonly what: What;
    readonly body: string;
    readonly readings?: readonly NewReading[];
  },
): Promise<Job> {
  const revision = row.revision + 1;
  await addRevision(trx, by, { jobId: row.id, revision, what: change.what, body: change.body });
  for (const [place, reading] of (change.readings ?? []).entries()) {
    await trx
      .insertInto('reading')
      .values(toReadingRow(row.id, place, { ...reading, revision, who: by.who, at: by.at }))
      .execute();
  }
  const job = toJob(row, await partsOf(trx, row.id, revision));
  const received = job.sections.received;
  await trx
    .updateTable('job')
    .set({
      revision,
      changed_at: by.at,
      stage: job.stage,
      outcome: job.outcome,
      ...(received ? projectionOf(job.number, received.body) : {}),
    })
    .where('id', '=', row.id)
    .execute();
  return job;
}

/** After signing every change is an amendment, and says why. */
export function refuseUnexplained(job: Job, by: Signed): void {
  const { signature } = job.sections;
  if (signature === null || by.why !== '') return;
  throw refuse(
    'why-needed',
    'why',
    `Job ${job.number} was signed by ${signature.who}; say why it changes now. It will have to be signed again.`,
  );
}

type JobRow = Selectable<Tables['job']>;

export async function jobRow(db: Db, idOrNumber: number | string): Promise<JobRow | undefined> {
  const query = db.selectFrom('job').selectAll();
  if (typeof idOrNumber === 'string')
    return query.where('number_key', '=', key(idOrNumber)).executeTakeFirst();
  return Number.isSafeInteger(idOrNumber) ? query.where('id', '=', idOrNumber).executeTakeFirst() : undefined;
}

export function noJob(jobId: number | string): NotInRecords {
  return new NotInRecords('job', `There is no job ${printable(String(jobId))} in these records.`);
}

interface JobParts extends StageParts {
  readonly changedAt: string;
  readonly looks: readonly Kept<Looked>[];
}

/** What a job was made of at a revision. Revisions are only ever added, so no transaction is needed to read them. */
async function partsOf(db: Db, jobId: number, revision: number): Promise<JobParts> {
  // Of the short sections every revision is read, because some rules ask how they came about.
  const rows = await db
    .selectFrom('job_revision as r')
    .select(['r.revision', 'r.at', 'r.who', 'r.why', 'r.what', 'r.body'])
    .where('r.job_id', '=', jobId)
    .where('r.revision', '<=', revision)
    .where('r.what', '<>', 'reading')
    .where((eb) =>
      eb.or([
        eb('r.what', 'in', ['received', 'looked', 'cuts', 'setup']),
        eb('r.revision', '=', (inner) =>
          inner
            .selectFrom('job_revision as newer')
            .select((q) => q.fn.max('newer.revision').as('revision'))
            .where('newer.job_id', '=', jobId)
            .where('newer.revision', '<=', revision)
            .whereRef('newer.what', '=', 'r.what'),
        ),
      ]),
    )
    .orderBy('r.revision')
    .execute();
  const all = <S extends SectionName>(what: S): readonly Kept<JobSections[S]>[] =>
    rows
      .filter((row) => row.what === what)
      .map((row) => ({
        revision: row.revision,
        at: row.at,
        who: row.who,
        why: row.why,
        body: JSON.parse(row.body),
      }));
  const newest = <S extends SectionName>(what: S): Kept<JobSections[S]> | null => all(what).at(-1) ?? null;
  const last = await db
    .selectFrom('job_revision')
    .select('at')
    .where('job_id', '=', jobId)
    .where('revision', '=', revision)
    .executeTakeFirstOrThrow();
  return {
    revision,
    changedAt: last.at,
    looks: all('looked'),
    sections: {
      received: newest('received'),
      looked: newest('looked'),
      setup: newest('setup'),
      plan: newest('plan'),
      decision: newest('decision'),
      cuts: newest('cuts'),
      studs: newest('studs'),
      signature: newest('signature'),
    },
    readings: await readingsOf(db, jobId, revision),
    familyChangedAt: lastChange(all('received'), sameFamily),
    weldedAt: weldedAt(all('setup')),
    passesAt: passesAt(all('cuts')),
    cutsChangedAt: lastChange(all('cuts'), (a, b) => depths(a.cuts) === depths(b.cuts)),
  };
}

/** The revision at which what `same` compares last became another; 0 when there is none. */
function lastChange<Body>(history: readonly Kept<Body>[], same: (a: Body, b: Body) => boolean): number {
  const changes = history.filter((kept, i) => i === 0 || !same(kept.body, history[i - 1]!.body));
  return changes.at(-1)?.revision ?? 0;
}

/**
 * Where the ring that is on now was first recorded. A later day is another weld, which pulls the face again; other
 * changes of the set-up void nothing.
 */
function weldedAt(setups: readonly Kept<JobSections['setup']>[]): number {
  let [at, on] = [0, ''];
  for (const { revision, body } of setups) {
    const day = body.ringWelded?.on ?? '';
    if (day > on) at = revision;
    if (day === '') at = 0;
    on = day;
  }
  return at;
}

/** Where each pass of the present list was first recorded: putting a figure of an earlier one right is no new pass. */
function passesAt(history: readonly Kept<JobSections['cuts']>[]): readonly number[] {
  let at: number[] = [];
  for (const { revision, body } of history) {
    at = at.slice(0, body.cuts.length);
    while (at.length < body.cuts.length) at.push(revision);
  }
  return at;
}

function depths(cuts: JobSections['cuts']['cuts']): string {
  return JSON.stringify(cuts.map((cut) => cut.depthMm));
}

function toJob(row: JobRow, parts: JobParts): Job {
  const decision = parts.sections.decision;
  return {
    id: row.id,
    number: row.number,
    revision: parts.revision,
    createdAt: row.created_at,
    changedAt: parts.changedAt,
    stage: stageOf(parts),
    steps: stepsOf(parts),
    outcome: decision && decisionStands(parts) ? decision.body.decision : null,
    demo: row.demo === 1,
    sections: parts.sections,
    readings: counting(parts.readings, parts),
    weldedAt: parts.weldedAt,
    passesAt: parts.passesAt,
    earlierAfter: standing(parts.readings).filter(
      (one) =>
        one.pass === 'after' && one.revision > parts.weldedAt && one.revision <= (parts.passesAt.at(-1) ?? 0),
    ),
  };
}

function projectionOf(number: string, received: Received) {
  return {
    family_id: received.familyId,
    family_name: received.family.name,
    customer_reference: received.customerReference,
    received_on: received.receivedOn,
    search: [number, received.family.name, received.customerReference].map(key).join('\n'),
  };
}

async function addRevision(
  db: Db,
  by: Signed,
  revision: {
    readonly jobId: number;
    readonly revision: number;
    readonly what: What;
    readonly body: string;
  },
): Promise<void> {
  await db
    .insertInto('job_revision')
    .values({
      job_id: revision.jobId,
      revision: revision.revision,
      at: by.at,
      who: by.who,
      why: by.why,
      what: revision.what,
      body: revision.body,
    })
    .execute();
}

async function numberFor(db: Db, typed: string | undefined): Promise<string> {
  if (typed === undefined || typed.trim() === '') return nextNumber(db);
  const number = typed.normalize('NFC').trim();
  if (number.length > 40 || hasControls(number)) {
    throw refuse(
      'bad-number',
      'number',
      `"${printable(number)}" cannot be a job number; give 1 to 40 plain characters.`,
    );
  }
  refuseNul('number', number);
  if (isNoAddress(number)) throw refuse('bad-number', 'number', noAddress(number));
  const taken = await jobRow(db, number);
  if (taken) {
    throw refuse(
      'number-taken',
      'number',
      `Job number ${taken.number} is taken by the ${taken.family_name} received on ${taken.received_on}; give another number.`,
    );
  }
  return number;
}

async function nextNumber(db: Db): Promise<string> {
  const row = await db
    .selectFrom('job')
    .select((eb) => eb.fn.max('plain_number').as('highest'))
    .executeTakeFirst();
  let next = Math.max(FIRST_NUMBER, Number(row?.highest ?? 0) + 1);
  while (await jobRow(db, String(next))) next++;
  return String(next);
}

function refuseDay(day: string): void {
  const date = /^\d{4}-\d\d-\d\d$/.test(day) ? new Date(`${day}T00:00:00Z`) : new Date(Number.NaN);
  // 31 February is read as 3 March.
  if (!Number.isNaN(date.getTime()) && date.toISOString().startsWith(day)) return;
  throw refuse('bad-day', 'receivedOn', `"${printable(day)}" is not a day; write it as in 2026-11-24.`);
}

function refuseUnknownRevision(row: JobRow, revision: number): void {
  if (Number.isInteger(revision) && revision >= 1 && revision <= row.revision) return;
  throw new NotInRecords(
    'revision',
    `Job ${row.number} has no revision ${revision}; its revisions are 1 to ${row.revision}.`,
  );
}
