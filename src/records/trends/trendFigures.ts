import { type RawBuilder, sql } from 'kysely';
import type { MarkPattern } from '../../../shared/words/heatMarks.ts';
import type { DecisionKind } from '../../../shared/words/job.ts';
import type { ScrapReason } from '../../../shared/words/trends/trends.ts';
import { shownIn } from '../begun.ts';
import { type Db, readAtOnce } from '../database/database.ts';

/** Which jobs are counted; closed ones never are. */
export interface TrendQuestion {
  readonly familyId?: string | undefined;
  /** Days of receipt, both included. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** How wide the bins are, in whole nanometers. */
export interface BinWidths {
  readonly wallNm: number;
  readonly cutNm: number;
  readonly leftNm: number;
}

/** Something in the bin from `bin` times its width. */
export interface BinCount {
  readonly bin: number;
  readonly n: number;
}

type Released = Exclude<DecisionKind, 'replace'>;

/** Of the covers released, how many came back. */
export interface CameBack {
  readonly released: number;
  readonly back: number;
}

export interface TrendFigures {
  readonly jobs: number;
  readonly months: readonly {
    readonly month: string;
    readonly outcome: DecisionKind | null;
    readonly n: number;
  }[];
  readonly scrapped: readonly { readonly reason: ScrapReason; readonly n: number }[];
  readonly walls: readonly (BinCount & { readonly familyId: string })[];
  readonly cuts: readonly BinCount[];
  readonly days: readonly BinCount[];
  readonly byDecision: readonly (CameBack & { readonly decision: Released })[];
  readonly byWallLeft: readonly (CameBack & { readonly bin: number })[];
  readonly patterns: readonly (CameBack & {
    readonly familyId: string;
    readonly pattern: MarkPattern;
    readonly n: number;
  })[];
  /** What the heat marks of covers that came back say, as they came back. */
  readonly patternsBack: readonly { readonly pattern: MarkPattern; readonly n: number }[];
}

/** Everything the trends show, counted by the database. */
export async function trendFigures(db: Db, question: TrendQuestion, width: BinWidths): Promise<TrendFigures> {
  return readAtOnce(db, async (at) => {
    const ask = async <Row>(query: RawBuilder<Row>) => (await query.execute(at)).rows;
    const all = counted(question, sql`t`);
    const month = sql`substr(t.received_on, 1, 7)`;
    const months = await ask(sql<TrendFigures['months'][number]>`
      select ${month} as month, t.outcome, count(*) as n from job_trend t where ${all}
      group by ${month}, t.outcome order by 1`);
    const back = sql`case when exists (
      select 1 from job_trend c where c.comeback_of = t.job_id and c.stage <> 'closed') then 1 else 0 end`;
    const released = sql`t.signed_at is not null and t.outcome in ('face', 'face-and-ring')`;
    const bins = async (column: RawBuilder<unknown>, nm: number) =>
      ask(sql<BinCount>`
        select ${column} / ${sql.lit(nm)} as bin, count(*) as n from job_trend t
        where ${all} and ${column} is not null group by 1 order by 1`);
    return {
      jobs: months.reduce((sum, { n }) => sum + n, 0),
      months,
      scrapped: await ask(sql<TrendFigures['scrapped'][number]>`
        select t.scrap_reason as reason, count(*) as n from job_trend t
        where ${all} and t.scrap_reason is not null group by 1 order by 2 desc, 1`),
      walls: await ask(sql<TrendFigures['walls'][number]>`
        select t.family_id as "familyId", t.wall_nm / ${sql.lit(width.wallNm)} as bin, count(*) as n
        from job_trend t where ${all} and t.wall_nm is not null group by 1, 2 order by 1, 2`),
      cuts: await bins(sql`t.cut_nm`, width.cutNm),
      days: await bins(sql`t.days_to_sign`, 1),
      byDecision: await ask(sql<TrendFigures['byDecision'][number]>`
        select t.outcome as decision, count(*) as released, sum(${back}) as back
        from job_trend t where ${all} and ${released} group by 1 order by 1`),
      byWallLeft: await ask(sql<TrendFigures['byWallLeft'][number]>`
        select t.left_nm / ${sql.lit(width.leftNm)} as bin, count(*) as released, sum(${back}) as back
        from job_trend t where ${all} and ${released} and t.left_nm is not null group by 1 order by 1`),
      patterns: await ask(sql<TrendFigures['patterns'][number]>`
        select t.family_id as "familyId", t.pattern, count(*) as n,
          sum(case when ${released} then 1 else 0 end) as released,
          sum(case when ${released} then ${back} else 0 end) as back
        from job_trend t where ${all} and t.pattern is not null group by 1, 2 order by 1, 2`),
      patternsBack: await ask(sql<TrendFigures['patternsBack'][number]>`
        select t.pattern, count(*) as n from job_trend t
        where ${all} and t.comeback_of is not null and t.pattern is not null group by 1 order by 2 desc, 1`),
    };
  });
}

/** How many covers of each type came in thinner than its minimum. */
export async function wallsUnder(
  db: Db,
  question: TrendQuestion,
  minimums: readonly { readonly familyId: string; readonly minimumMm: number }[],
): Promise<readonly { readonly familyId: string; readonly measured: number; readonly under: number }[]> {
  if (minimums.length === 0) return [];
  const rows = sql.join(
    minimums.map(
      ({ familyId, minimumMm }) =>
        sql`(cast(${familyId} as text), cast(${Math.round(minimumMm * 1e6)} as bigint))`,
    ),
  );
  const { rows: found } = await sql<{ familyId: string; measured: number; under: number }>`
    select t.family_id as "familyId", count(*) as measured,
      sum(case when t.wall_nm < m.column2 then 1 else 0 end) as under
    from job_trend t join (values ${rows}) as m on m.column1 = t.family_id
    where ${counted(question, sql`t`)} and t.wall_nm is not null group by 1 order by 1`.execute(db);
  return found;
}

function counted({ familyId, from, to }: TrendQuestion, t: RawBuilder<unknown>): RawBuilder<boolean> {
  const parts = [
    sql`${shownIn(t)}`,
    sql`${t}.stage <> 'closed'`,
    ...(familyId === undefined ? [] : [sql`${t}.family_id = ${familyId}`]),
    ...(from === undefined ? [] : [sql`${t}.received_on >= ${from}`]),
    ...(to === undefined ? [] : [sql`${t}.received_on <= ${to}`]),
  ];
  return sql<boolean>`(${sql.join(parts, sql` and `)})`;
}

/** Jobs whose trend is not gathered yet, after an import or from an earlier version. */
export async function notGathered(db: Db, version: number): Promise<number> {
  const row = await db
    .selectFrom('job')
    .leftJoin('job_trend as t', 't.job_id', 'job.id')
    .select((eb) => eb.fn.countAll().as('n'))
    .where((eb) => eb.or([eb('t.version', 'is', null), eb('t.version', '<>', version)]))
    .executeTakeFirstOrThrow();
  return Number(row.n);
}

/** The jobs whose wall was measured, but closed ones, the oldest first. */
export async function measuredJobs(db: Db): Promise<readonly number[]> {
  const { rows } = await sql<{ id: number }>`select t.job_id as id from job_trend t
    where ${counted({}, sql`t`)} and t.wall_nm is not null order by t.job_id`.execute(db);
  return rows.map(({ id }) => id);
}

export interface Peaks {
  readonly n: number;
  readonly mean: number | null;
  readonly most: number | null;
}

/** Peak lining pressures as kept with the decisions on covers released: of those that came back, and of the others. */
export async function peaksKept(
  db: Db,
  question: TrendQuestion = {},
): Promise<{ readonly back: Peaks; readonly stayed: Peaks }> {
  const { rows } = await sql<Peaks & { readonly back: number }>`
    select case when exists (
        select 1 from job_trend c where c.comeback_of = t.job_id and c.stage <> 'closed') then 1 else 0 end as back,
      count(*) as n, avg(t.peak_over_new) as mean, max(t.peak_over_new) as most
    from job_trend t where ${counted(question, sql`t`)} and t.signed_at is not null
      and t.outcome in ('face', 'face-and-ring') and t.peak_over_new is not null
    group by 1`.execute(db);
  const of = (wanted: number): Peaks => {
    const { n = 0, mean = null, most = null } = rows.find(({ back }) => back === wanted) ?? {};
    return { n, mean, most };
  };
  return { back: of(1), stayed: of(0) };
}

/** Covers released by what was decided, and how many of them came back. */
export async function releasedByDecision(db: Db): Promise<TrendFigures['byDecision']> {
  const { rows } = await sql<TrendFigures['byDecision'][number]>`
    select t.outcome as decision, count(*) as released, sum(case when exists (
      select 1 from job_trend c where c.comeback_of = t.job_id and c.stage <> 'closed') then 1 else 0 end) as back
    from job_trend t where ${counted({}, sql`t`)} and t.signed_at is not null
      and t.outcome in ('face', 'face-and-ring') group by 1 order by 1`.execute(db);
  return rows;
}
