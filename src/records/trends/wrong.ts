import { type Selectable, sql } from 'kysely';
import { instantIn, isDay } from '../../../shared/words/day.ts';
import { slipName } from '../../../shared/words/stud/slip.ts';
import type { RestsOn } from '../../../shared/words/trends/trends.ts';
import type { Wrong, WrongClosed } from '../../../shared/words/trends/wrong.ts';
import { isShown } from '../begun.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import type { Tables } from '../database/tables.ts';
import { type Ctx, refuseNul, signed } from '../database/writing.ts';
import { countedOut, toSlip } from '../slips/slips.ts';
import { limitsOf } from './judgedUnder.ts';

/** Everything found to be wrong, the newest first. */
export async function allWrong(db: Db): Promise<readonly Wrong[]> {
  const rows = await db.selectFrom('wrong').selectAll().orderBy('number', 'desc').execute();
  return rows.map(toWrong);
}

export async function wrongNumbered(db: Db, number: number): Promise<Wrong> {
  const row = Number.isSafeInteger(number)
    ? await db.selectFrom('wrong').selectAll().where('number', '=', number).executeTakeFirst()
    : undefined;
  if (row === undefined) throw new NotInRecords('number', 'Nothing with that number was marked wrong.');
  return toWrong(row);
}

function toWrong({ bias_mm, u_mm, ...row }: Selectable<Tables['wrong']>): Wrong {
  return { ...row, biasMm: bias_mm, calibrationUMm: u_mm };
}

/** Marks something wrong from a day on. Throws Refusal without a day, a reason or initials. */
export async function markWrong(
  db: Db,
  ctx: Ctx,
  { biasMm, calibrationUMm, ...found }: Omit<Wrong, 'number' | 'at' | 'who'>,
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
      .values({ ...found, reason, number, bias_mm: biasMm, u_mm: calibrationUMm, at: by.at, who: by.who })
      .execute();
    return number;
  });
}

/** When that day of the shop's begins. */
export function wrongFrom({ since }: Pick<Wrong, 'since'>, timeZone: string): string {
  return instantIn(timeZone, since, { hour: 0, minute: 0 }).toISOString();
}

/** The jobs that rest on it since that day of the shop's, with the word that closed some; the newest first. */
export async function jobsResting(db: Db, { number, what, id, revision, since }: Wrong, timeZone: string) {
  const from = wrongFrom({ since }, timeZone);
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
    .where('r.since', '>=', from)
    // A decision of before decisions named their limits rests on them all the same.
    .$if(what === 'criteria', (asked) => asked.where('r.what', '=', 'cover-calc'))
    .$if(what !== 'criteria', (asked) => asked.where('r.what', '=', what).where('r.id', '=', id))
    .$if(revision !== null, (asked) =>
      asked.where(what === 'criteria' ? limitsOf(sql`r`) : sql<number>`r.revision`, '=', revision),
    )
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
  readonly closed_at: string | null;
  readonly closed_who: string | null;
  readonly word: string | null;
}): WrongClosed | null {
  if (row.closed_at === null) return null;
  return { at: row.closed_at, who: row.closed_who ?? '', word: row.word ?? '' };
}

/** The slips that rest on it since that day of the shop's, the newest first; none on what no slip rests on. */
export async function slipsResting(db: Db, wrong: Wrong, timeZone: string) {
  const { what, id } = wrong;
  if (what !== 'stack' && what !== 'stud' && what !== 'stud-calc') return [];
  const rows = await db
    .selectFrom('slip')
    .leftJoin('wrong_slip_closed as c', (on) =>
      on.onRef('c.slip_number', '=', 'slip.number').on('c.wrong_number', '=', wrong.number),
    )
    .selectAll('slip')
    .select(['c.at as closed_at', 'c.who as closed_who', 'c.word'])
    .select(countedOut.as('counted'))
    .where('slip.at', '>=', wrongFrom(wrong, timeZone))
    .$if(what === 'stud-calc', (asked) => asked.where('slip.calc_version', '=', id))
    // Which it is, is read from what was asked; this only leaves out those that cannot be.
    .$if(what !== 'stud-calc', (asked) => asked.where('slip.asked', 'like', `%${id}%`))
    .orderBy('slip.number', 'desc')
    .execute();
  return rows.flatMap((row) => {
    const slip = toSlip(row);
    const of = what === 'stack' ? slip.asked.stackId : slip.asked.studId;
    if (what !== 'stud-calc' && of !== id) return [];
    return [{ slip, counted: Number(row.counted) === 1, closed: closedBy(row) }];
  });
}

/** The job or the slip that was gone through, and what was done about it. */
export type GoneThrough = { readonly number: number; readonly word: string } & (
  | { readonly jobId: number }
  | { readonly slipNumber: number }
);

/** Closes a job or a slip that was gone through, with a word. Throws Refusal without one, or where it is closed already. */
export async function closeWrong(db: Db, ctx: Ctx, gone: GoneThrough, timeZone: string): Promise<void> {
  const by = signed(ctx, undefined);
  const word = gone.word.trim();
  if (word === '')
    throw refuse(
      'word-needed',
      'word',
      `Enter what was done about this ${'jobId' in gone ? 'job' : 'slip'}.`,
    );
  refuseNul('word', word);
  await write(db, async (trx) => {
    const found = await wrongNumbered(trx, gone.number);
    const row = { wrong_number: gone.number, at: by.at, who: by.who, word };
    if ('jobId' in gone) {
      const job = (await jobsResting(trx, found, timeZone)).find(({ jobId }) => jobId === gone.jobId);
      refuseClosedWrong(job, `job ${job?.number}`, 'That job');
      await trx
        .insertInto('wrong_closed')
        .values({ ...row, job_id: gone.jobId })
        .execute();
      return;
    }
    const slip = (await slipsResting(trx, found, timeZone)).find(
      (one) => one.slip.number === gone.slipNumber,
    );
    refuseClosedWrong(slip, `slip ${slipName(gone.slipNumber)}`, 'That slip');
    await trx
      .insertInto('wrong_slip_closed')
      .values({ ...row, slip_number: gone.slipNumber })
      .execute();
  });
}

function refuseClosedWrong(
  resting: { readonly closed: WrongClosed | null } | undefined,
  name: string,
  that: string,
): void {
  if (resting === undefined) throw refuse('not-resting', 'word', `${that} does not rest on it.`);
  if (resting.closed === null) return;
  throw refuse(
    'closed-already',
    'word',
    `${resting.closed.who} closed ${name} already: ${resting.closed.word}`,
  );
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
