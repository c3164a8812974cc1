import type { Selectable } from 'kysely';
import type {
  CutPlan,
  Job,
  JobSections,
  Kept,
  Reading,
  Received,
  SectionName,
} from '../../../shared/words/job.ts';
import {
  counting,
  currentReadings,
  decisionStands,
  sameFamily,
  stageOf,
  stepsOf,
} from '../../calc/job/jobStage.ts';
import { isShown } from '../begun.ts';
import type { Db } from '../database/database.ts';
import { NotInRecords } from '../database/errors.ts';
import type { Tables } from '../database/tables.ts';
import { key, printable } from '../database/writing.ts';
import { type JobParts, type PartsRead, partsOnce, type SectionRow } from './partsOnce.ts';
import { readingsOf } from './readingRows.ts';

/** A job by its id, or by its number as typed; null when there is none. */
export async function getJob(db: Db, idOrNumber: number | string): Promise<Job | null> {
  const row = await jobRow(db, idOrNumber);
  return row ? toJob(row, await partsOf(db, row.id, row.revision)) : null;
}

/** The job a person or a program names. Throws NotInRecords when there is none. */
export async function jobNamed(db: Db, number: string): Promise<Job> {
  const job = await getJob(db, number);
  if (job !== null) return job;
  const named = printable(number.slice(0, 40));
  throw new NotInRecords('number', `There is no job "${named}" here. Look for it under Jobs.`);
}

/** The job as it was. Throws NotInRecords when it has no such revision. */
export async function jobAtRevision(db: Db, jobId: number, revision: number): Promise<Job> {
  const row = await jobRow(db, jobId);
  if (!row) throw noJob(jobId);
  refuseUnknownRevision(row, revision);
  return toJob(row, await partsOf(db, jobId, revision));
}

export type JobRow = Selectable<Tables['job']>;

export async function jobRow(db: Db, idOrNumber: number | string): Promise<JobRow | undefined> {
  const query = db.selectFrom('job').selectAll().where(isShown);
  if (typeof idOrNumber === 'string')
    return query.where('number_key', '=', key(idOrNumber)).executeTakeFirst();
  return Number.isSafeInteger(idOrNumber) ? query.where('id', '=', idOrNumber).executeTakeFirst() : undefined;
}

/** The revision of the cover type a job has its figures from. */
export async function familyRevisionOf(db: Db, jobId: number): Promise<number> {
  const { body } = await db
    .selectFrom('job_revision')
    .select('body')
    .where('job_id', '=', jobId)
    .where('what', '=', 'received')
    .orderBy('revision', 'desc')
    .limit(1)
    .executeTakeFirstOrThrow();
  return (JSON.parse(body) as Received).familyRevision;
}

export function noJob(jobId: number | string): NotInRecords {
  return new NotInRecords('job', `There is no job ${printable(String(jobId))} here. Look for it under Jobs.`);
}

/** The sections and readings of a job at a revision; `readings` where they are known. Revisions are only ever added, so no transaction is needed to read them. */
export async function partsOf(
  db: Db,
  jobId: number,
  revision: number,
  readings?: readonly Reading[],
): Promise<JobParts> {
  const rows = await rowsOf(db, jobId, revision);
  const { at } = await db
    .selectFrom('job_revision')
    .select('at')
    .where('job_id', '=', jobId)
    .where('revision', '=', revision)
    .executeTakeFirstOrThrow();
  const read = { revision, at, rows, readings: readings ?? (await readingsOf(db, jobId, revision)) };
  return partsOnce(db, jobId, read, () => partsIn(read));
}

function partsIn({ revision, at, rows, readings }: PartsRead): JobParts {
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
  return {
    revision,
    changedAt: at,
    looks: all('looked'),
    sections: {
      received: newest('received'),
      looked: newest('looked'),
      inspected: newest('inspected'),
      setup: newest('setup'),
      plan: newest('plan'),
      decision: newest('decision'),
      cuts: newest('cuts'),
      studs: newest('studs'),
      signature: newest('signature'),
      closed: newest('closed'),
    },
    readings,
    familyChangedAt: lastChange(all('received'), sameFamily),
    planChangedAt: planChangedAt(all('plan')),
    weldedAt: weldedAt(all('setup')),
    passesAt: passesAt(all('cuts')),
    cutsChangedAt: lastChange(all('cuts'), (a, b) => depths(a.cuts) === depths(b.cuts)),
  };
}

/** Each section as it last was by then; of the short ones every revision, because some rules ask how they came about. */
function rowsOf(db: Db, jobId: number, revision: number): Promise<readonly SectionRow[]> {
  return db
    .selectFrom('job_revision as r')
    .select(['r.revision', 'r.at', 'r.who', 'r.why', 'r.what', 'r.body'])
    .where('r.job_id', '=', jobId)
    .where('r.revision', '<=', revision)
    .where('r.what', '<>', 'reading')
    .where((eb) =>
      eb.or([
        eb('r.what', 'in', ['received', 'looked', 'plan', 'cuts', 'setup']),
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
}

/** Where the cut to try last became another; a plan saved with another lathe and nothing else is the same cut. */
function planChangedAt(plans: readonly Kept<CutPlan>[]): number {
  const at = ({ lathe }: CutPlan) => (lathe ? `${lathe.id} ${lathe.revision}` : '');
  const changes = plans.filter(({ body }, i) => {
    const before: CutPlan = plans[i - 1]?.body ?? { plannedCutMm: null, typed: '' };
    const sameCut = body.plannedCutMm === before.plannedCutMm && body.typed === before.typed;
    return !sameCut || at(body) === at(before);
  });
  return changes.at(-1)?.revision ?? 0;
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

/** The job of a row and its parts: the same object for as long as both say the same. */
export function toJob(row: JobRow, parts: JobParts): Job {
  const known = jobs.get(parts);
  const same =
    known?.number === row.number && known.createdAt === row.created_at && known.demo === (row.demo === 1);
  const job = known !== undefined && same ? known : jobIn(row, parts);
  jobs.set(parts, job);
  return job;
}

const jobs = new WeakMap<JobParts, Job>();

function jobIn(row: JobRow, parts: JobParts): Job {
  const decision = parts.sections.decision;
  const steps = stepsOf(parts);
  return {
    id: row.id,
    number: row.number,
    revision: parts.revision,
    createdAt: row.created_at,
    changedAt: parts.changedAt,
    stage: stageOf(parts, steps),
    steps,
    outcome: decision && decisionStands(parts) ? decision.body.decision : null,
    demo: row.demo === 1,
    sections: parts.sections,
    readings: counting(parts.readings, parts),
    weldedAt: parts.weldedAt,
    passesAt: parts.passesAt,
    earlierAfter: currentReadings(parts.readings).filter(
      (one) =>
        one.pass === 'after' && one.revision > parts.weldedAt && one.revision <= (parts.passesAt.at(-1) ?? 0),
    ),
  };
}

export function refuseUnknownRevision(row: JobRow, revision: number): void {
  if (Number.isInteger(revision) && revision >= 1 && revision <= row.revision) return;
  throw new NotInRecords(
    'revision',
    `Job ${row.number} has no revision ${revision}; its revisions are 1 to ${row.revision}.`,
  );
}
