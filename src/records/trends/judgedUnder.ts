import { type RawBuilder, sql } from 'kysely';
import { shownIn } from '../begun.ts';
import type { Db } from '../database/database.ts';
import { CRITERIA_ID } from '../shopCriteria.ts';

/** A job whose decision, as it stands, was made under a revision of the shop limits. */
export interface JudgedJob {
  readonly id: number;
  readonly number: string;
  readonly coverType: string;
  /** When it was decided; UTC, ISO 8601. */
  readonly at: string;
}

export const JUDGED_A_PAGE = 100;

/** The revision a decision names; one from before decisions named it was made under the newest of its time. */
export function limitsOf(c: RawBuilder<unknown>): RawBuilder<number> {
  return sql<number>`coalesce((
    select named.revision from job_rests named
    where named.job_id = ${c}.job_id and named.what = 'criteria' and named.id = ${sql.lit(CRITERIA_ID)}), (
    select max(e.revision) from entry_revision e
    where e.kind = 'criteria' and e.id = ${sql.lit(CRITERIA_ID)} and e.at <= ${c}.since), 0)`;
}
const revision = limitsOf(sql`c`);

function judged(db: Db) {
  return db
    .selectFrom('job_rests as c')
    .innerJoin('job as j', 'j.id', 'c.job_id')
    .where('c.what', '=', 'cover-calc')
    .where(shownIn(sql`j`));
}

/** How many jobs each revision of the shop limits judged, 0 for those the program starts with. */
export async function countJudged(db: Db): Promise<ReadonlyMap<number, number>> {
  const rows = await judged(db)
    .select([revision.as('revision'), (eb) => eb.fn.countAll().as('count')])
    .groupBy(revision)
    .execute();
  return new Map(rows.map((row) => [Number(row.revision), Number(row.count)]));
}

/** The jobs a revision judged, newest first, a page at a time; `before` is the id of the last one of the page before. */
export async function judgedUnder(db: Db, asked: number, before?: number): Promise<readonly JudgedJob[]> {
  let query = judged(db).where(revision, '=', asked);
  if (before !== undefined) query = query.where('j.id', '<', before);
  return query
    .select(['j.id', 'j.number', 'j.family_name as coverType', 'c.since as at'])
    .orderBy('j.id', 'desc')
    .limit(JUDGED_A_PAGE)
    .execute();
}
