import { sql } from 'kysely';
import {
  AGAINST_WORD,
  type ShelfChange,
  type ShelfFacts,
  type ShelfWhat,
} from '../../../shared/words/shelf.ts';
import { isShown } from '../begun.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import { type Ctx, hasControls, printable, refuseNul, samePerson, signed } from '../database/writing.ts';
import { jobRow, noJob } from '../jobs/readJob.ts';

const LONGEST_PLACE = 80;

/** A change of a cover's stay on the shelf as somebody wants it. */
export interface ShelfEdit {
  readonly jobId: number;
  readonly what: ShelfWhat;
  /** The place of the change that was seen; 0 where it never lay there. */
  readonly from: number;
  /** Where it lies from now on; asked for when it is put there or moved. */
  readonly lies?: string;
  /** Number of the job it is kept for. */
  readonly forJob?: string;
  readonly facts: ShelfFacts;
}

/** Somebody else changed it first; nothing was written, and this is how it stands. */
export class ShelfChanged extends Error {
  readonly theirs: ShelfChange | null;

  constructor(theirs: ShelfChange | null) {
    super('The shelf changed since this page was opened.');
    this.name = 'ShelfChanged';
    this.theirs = theirs;
  }
}

/**
 * Puts a cover on the shelf, moves it, reserves it, frees it or takes it off. Throws ShelfChanged when somebody did
 * something else with it since `from`; the same sent twice is kept once.
 */
export async function changeShelf(db: Db, ctx: Ctx, edit: ShelfEdit): Promise<ShelfChange> {
  const { who, why, at } = signed(ctx, undefined);
  const typed = (edit.lies ?? '').normalize('NFC').trim();
  const facts = toJson(edit.facts);
  return write(db, async (trx) => {
    const job = await jobRow(trx, edit.jobId);
    if (!job) throw noJob(edit.jobId);
    const now = await shelfOf(trx, edit.jobId);
    const asked = { ...edit, typed, why };
    const place = now?.place ?? 0;
    if (edit.from !== place) {
      if (now !== null && place === edit.from + 1 && samePerson(now.who, who) && saysTheSame(now, asked))
        return now;
      throw new ShelfChanged(now);
    }
    const stands = now !== null && now.what !== 'off' ? now : null;
    refuseShelf(stands, { ...asked, number: job.number });
    const forJob = edit.what === 'reserved' ? await jobFor(trx, edit) : null;
    const keepsFor = edit.what === 'moved' ? (stands?.forJob ?? null) : null;
    const keptId = keepsFor === null ? null : ((await jobRow(trx, keepsFor))?.id ?? null);
    await trx
      .insertInto('shelf_change')
      .values({
        job_id: edit.jobId,
        place: place + 1,
        what: edit.what,
        at,
        who,
        why,
        lies: edit.what === 'put' || edit.what === 'moved' ? typed : stands!.lies,
        for_job_id: forJob?.id ?? keptId,
        facts,
      })
      .execute();
    return (await shelfOf(trx, edit.jobId))!;
  });
}

function saysTheSame(
  now: ShelfChange,
  { what, typed, forJob, why }: ShelfEdit & { readonly typed: string; readonly why: string },
): boolean {
  if (now.what !== what || now.why !== why) return false;
  if (what === 'put' || what === 'moved') return now.lies === typed;
  return what !== 'reserved' || now.forJob === (forJob ?? '').trim();
}

function refuseShelf(
  stands: ShelfChange | null,
  {
    what,
    typed,
    why,
    number,
    facts,
  }: ShelfEdit & { readonly typed: string; readonly why: string; readonly number: string },
): void {
  if (what === 'put') {
    if (stands !== null)
      throw refuse('on-shelf', '', `The cover of job ${number} is on the shelf already, at ${stands.lies}.`);
    if (facts.against !== null)
      throw refuse('not-for-shelf', '', `${AGAINST_WORD[facts.against]} It can’t be put on the shelf.`);
  } else if (stands === null) {
    throw refuse('not-on-shelf', '', `The cover of job ${number} is not on the shelf.`);
  }
  if (what === 'put' || what === 'moved') refusePlace(typed);
  if (what === 'freed' && stands?.forJob === null)
    throw refuse('not-reserved', '', `The cover of job ${number} is not reserved.`);
  if (what === 'off' && why === '') throw refuse('why-needed', 'why', 'Enter why it is taken off the shelf.');
}

function refusePlace(typed: string): void {
  if (typed === '') throw refuse('no-place', 'lies', 'Enter where the cover lies, as “rack B, third board”.');
  if (typed.length > LONGEST_PLACE || hasControls(typed))
    throw refuse(
      'bad-place',
      'lies',
      `The place "${printable(typed)}" is not up to ${LONGEST_PLACE} plain characters. Shorten it.`,
    );
  refuseNul('lies', typed);
}

/** The job a cover is reserved for: another one, that is still open. */
async function jobFor(db: Db, { jobId, forJob = '' }: ShelfEdit) {
  const number = forJob.trim();
  if (number === '') throw refuse('no-job', 'forJob', 'Enter the number of the job it is reserved for.');
  const row = await jobRow(db, number);
  if (!row)
    throw refuse(
      'no-such-job',
      'forJob',
      `There is no job "${printable(number)}". Receive the job first, then reserve a cover for it.`,
    );
  if (row.id === jobId)
    throw refuse('own-job', 'forJob', `Job ${row.number} is this cover’s own. Enter the job that needs it.`);
  if (row.stage === 'closed')
    throw refuse('closed', 'forJob', `Job ${row.number} is closed. Open it again first, with the reason.`);
  return row;
}

/** How a cover stands, as its newest change says; null where it never lay on the shelf. */
export async function shelfOf(db: Db, jobId: number): Promise<ShelfChange | null> {
  const row = await changes(db)
    .where('c.job_id', '=', jobId)
    .orderBy('c.place', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ? toChange(row) : null;
}

/** Every change of a cover's stays, oldest first. */
export async function shelfHistory(db: Db, jobId: number): Promise<readonly ShelfChange[]> {
  const rows = await changes(db).where('c.job_id', '=', jobId).orderBy('c.place').execute();
  return rows.map(toChange);
}

/** A cover on the shelf, with its job as it now is. */
export interface OnShelf extends ShelfChange {
  readonly familyId: string;
  readonly jobRevision: number;
}

/** Every cover that lies on the shelf, in the order it was put there or last changed. */
export async function coversOnShelf(db: Db): Promise<readonly OnShelf[]> {
  const rows = await changes(db)
    .select(['job.family_id', 'job.revision'])
    .where('c.what', '<>', 'off')
    .where(isNewest)
    .where(isShown)
    .orderBy('c.at')
    .orderBy('c.job_id')
    .execute();
  return rows.map((row) => ({ ...toChange(row), familyId: row.family_id, jobRevision: row.revision }));
}

/** Covers that lie on the shelf for a job. */
export async function reservedFor(db: Db, jobId: number): Promise<readonly ShelfChange[]> {
  const rows = await changes(db)
    .where('c.for_job_id', '=', jobId)
    .where('c.what', '<>', 'off')
    .where(isNewest)
    .orderBy('c.job_id')
    .execute();
  return rows.map(toChange);
}

const isNewest = sql<boolean>`not exists (
  select 1 from shelf_change n where n.job_id = c.job_id and n.place = c.place + 1)`;

function changes(db: Db) {
  return db
    .selectFrom('shelf_change as c')
    .innerJoin('job', 'job.id', 'c.job_id')
    .leftJoin('job as kept', 'kept.id', 'c.for_job_id')
    .select(['c.job_id', 'c.place', 'c.what', 'c.at', 'c.who', 'c.why', 'c.lies', 'c.facts'])
    .select(['job.number as job_number', 'kept.number as for_number']);
}

type Row = Awaited<ReturnType<ReturnType<typeof changes>['execute']>>[number];

function toChange(row: Row): ShelfChange {
  return {
    jobId: row.job_id,
    jobNumber: row.job_number,
    place: row.place,
    what: row.what,
    at: row.at,
    who: row.who,
    why: row.why,
    lies: row.lies,
    forJob: row.for_number,
    facts: JSON.parse(row.facts),
  };
}
