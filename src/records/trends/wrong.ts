import { instantIn, isDay } from '../../../shared/words/day.ts';
import type { RestsOn } from '../../../shared/words/trends.ts';
import type { Wrong, WrongClosed } from '../../../shared/words/wrong.ts';
import { isShown } from '../begun.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { type Ctx, refuseNul, signed } from '../database/writing.ts';

/** Everything found to be wrong, the newest first. */
export async function allWrong(db: Db): Promise<readonly Wrong[]> {
  return db.selectFrom('wrong').selectAll().orderBy('number', 'desc').execute();
}

export async function wrongNumbered(db: Db, number: number): Promise<Wrong> {
  const row = Number.isSafeInteger(number)
    ? await db.selectFrom('wrong').selectAll().where('number', '=', number).executeTakeFirst()
    : undefined;
  if (row === undefined) throw new NotInRecords('number', 'Nothing with that number was marked wrong.');
  return row;
}

/** Marks something wrong from a day on. Throws Refusal without a day, a reason or initials. */
export async function markWrong(
  db: Db,
  ctx: Ctx,
  found: Pick<Wrong, 'what' | 'id' | 'name' | 'since' | 'reason'>,
): Promise<number> {
  const by = signed(ctx, undefined);
  const reason = found.reason.trim();
  if (!isDay(found.since)) throw refuse('bad-day', 'since', 'Enter the day from which it was wrong.');
  if (reason === '') throw refuse('why-needed', 'reason', 'Enter what was wrong with it.');
  refuseNul('reason', reason);
  return write(db, async (trx) => {
    const last = await trx
      .selectFrom('wrong')
      .select((eb) => eb.fn.max('number').as('number'))
      .executeTakeFirst();
    const number = Number(last?.number ?? 0) + 1;
    await trx
      .insertInto('wrong')
      .values({ ...found, reason, number, at: by.at, who: by.who })
      .execute();
    return number;
  });
}

/** The jobs that rest on it since that day of the shop's, with the word that closed some; the newest first. */
export async function jobsResting(db: Db, { number, what, id, since }: Wrong, timeZone: string) {
  const from = instantIn(timeZone, since, { hour: 0, minute: 0 }).toISOString();
  const rows = await db
    .selectFrom('job_rests as r')
    .innerJoin('job', 'job.id', 'r.job_id')
    .leftJoin('wrong_closed as c', (on) =>
      on.onRef('c.job_id', '=', 'job.id').on('c.wrong_number', '=', number),
    )
    .select(['job.id', 'job.number', 'job.family_name', 'job.stage', 'job.outcome', 'r.since'])
    .select(['c.at as closed_at', 'c.who as closed_who', 'c.word'])
    .where(isShown)
    .where('job.stage', '<>', 'closed')
    .where('r.what', '=', what)
    .where('r.id', '=', id)
    .where('r.since', '>=', from)
    .orderBy('r.since', 'desc')
    .orderBy('job.id', 'desc')
    .execute();
  return rows.map((row) => ({
    jobId: row.id,
    number: row.number,
    familyName: row.family_name,
    stage: row.stage,
    outcome: row.outcome,
    since: row.since,
    closed: closedBy(row),
  }));
}

function closedBy(row: {
  readonly id: number;
  readonly closed_at: string | null;
  readonly closed_who: string | null;
  readonly word: string | null;
}): WrongClosed | null {
  if (row.closed_at === null) return null;
  return { jobId: row.id, at: row.closed_at, who: row.closed_who ?? '', word: row.word ?? '' };
}

/** Closes a job that was gone through, with a word. Throws Refusal without one, or where it is closed already. */
export async function closeWrong(
  db: Db,
  ctx: Ctx,
  { number, jobId, word }: { readonly number: number; readonly jobId: number; readonly word: string },
  timeZone: string,
): Promise<void> {
  const by = signed(ctx, undefined);
  const said = word.trim();
  if (said === '') throw refuse('word-needed', 'word', 'Enter what was done about this job.');
  refuseNul('word', said);
  await write(db, async (trx) => {
    const found = await wrongNumbered(trx, number);
    const job = (await jobsResting(trx, found, timeZone)).find((one) => one.jobId === jobId);
    if (job === undefined) throw refuse('not-resting', 'word', 'That job does not rest on it.');
    if (job.closed !== null) {
      throw refuse(
        'closed-already',
        'word',
        `${job.closed.who} closed job ${job.number} already: ${job.closed.word}`,
      );
    }
    await trx
      .insertInto('wrong_closed')
      .values({ wrong_number: number, job_id: jobId, at: by.at, who: by.who, word: said })
      .execute();
  });
}

/** The calculations that any job rests on, and limits revisions, to choose from. */
export async function restedOnNames(db: Db, what: RestsOn): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('job_rests')
    .select('id')
    .distinct()
    .where('what', '=', what)
    .orderBy('id')
    .execute();
  return rows.map(({ id }) => id);
}
