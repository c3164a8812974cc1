import { dayIn } from '../../../shared/words/day.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { type Ctx, hasControls, refuseNul, signed } from '../database/writing.ts';
import { currentCriteria } from '../shopCriteria.ts';

const LONGEST = 80;

/** A copy of the records that was put on another machine or drive. */
export interface CopyAway {
  readonly at: string;
  readonly who: string;
  /** In words: "the drive in the safe". */
  readonly whither: string;
}

/** Records that a copy of the shop's records was put somewhere else. */
export async function recordCopyAway(db: Db, ctx: Ctx, typed: string): Promise<void> {
  const { who, at } = signed(ctx, undefined);
  const whither = typed.normalize('NFC').trim();
  if (whither === '' || whither.length > LONGEST || hasControls(whither))
    throw refuse('whither', 'whither', `Enter where the copy is now, in 1 to ${LONGEST} characters.`);
  refuseNul('whither', whither);
  await write(db, async (trx) => {
    const last = await trx
      .selectFrom('copy_away')
      .select((eb) => eb.fn.max('number').as('number'))
      .executeTakeFirst();
    await trx
      .insertInto('copy_away')
      .values({ number: Number(last?.number ?? 0) + 1, at, who, whither })
      .execute();
  });
}

/** The newest copy that left; null while none is recorded. */
export async function lastCopyAway(db: Db): Promise<CopyAway | null> {
  const row = await db
    .selectFrom('copy_away')
    .select(['at', 'who', 'whither'])
    .orderBy('number', 'desc')
    .limit(1)
    .executeTakeFirst();
  return row ?? null;
}

/** What a manager is reminded of, once no copy has left for as long as the shop limits say; null while nothing is due. */
export async function copyDue(db: Db, now: Date, timeZone: string): Promise<string | null> {
  const days = (await currentCriteria(db)).body.backupAwayDays ?? null;
  if (days === null) return null;
  const last = await lastCopyAway(db);
  const every = days === 1 ? 'every day' : `every ${days} days`;
  if (last === null)
    return `No backup is recorded as taken off this machine. The shop limits ask for one ${every}.`;
  const dayMs = 24 * 3600 * 1000;
  const since = Math.round((Date.parse(dayIn(timeZone, now)) - Date.parse(dayIn(timeZone, last.at))) / dayMs);
  if (since < days) return null;
  return `The last backup left this machine ${since === 1 ? '1 day' : `${since} days`} ago. The shop limits ask for one ${every}.`;
}
