import type { Insertable } from 'kysely';
import { timesNew } from '../../../shared/words/bending/thanNew.ts';
import { type MarkPattern, patternsTold } from '../../../shared/words/heatMarks.ts';
import type { Job } from '../../../shared/words/job.ts';
import { countingPasses } from '../../../shared/words/passes.ts';
import { scrapReason } from '../../calc/job/scrapReason.ts';
import { thinnestRead } from '../../calc/job/thinnestRead.ts';
import { changedIn } from '../database/changedIn.ts';
import type { Db } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';
import { key } from '../database/writing.ts';

/** Raised when what a row says is made by another rule: rows of an older one are made anew at start. */
export const TREND_VERSION = 2;

type TrendRow = Insertable<Tables['job_trend']>;
type RestsRow = Insertable<Tables['job_rests']>;

const DAY_MS = 24 * 3600 * 1000;
/** Both databases put whole numbers into the same bin, and 0.0001 in is 2540 of these. */
const NM_PER_MM = 1e6;
const nm = (mm: number | null) => (mm === null ? null : Math.round(mm * NM_PER_MM));

/** Brings what the trends count of a job, and what it rests on, up to date. Inside a write only. */
export async function keepTrend(trx: Db, job: Job): Promise<void> {
  await keepCounts(trx, job);
  await trx.deleteFrom('job_rests').where('job_id', '=', job.id).execute();
  const rests = restsRows(job);
  if (rests.length > 0) await trx.insertInto('job_rests').values(rests).execute();
}

/** The same after a reading alone, which changes nothing else that the job rests on. Inside a write only. */
export async function keepReading(trx: Db, job: Job): Promise<void> {
  await keepCounts(trx, job);
  await trx
    .updateTable('job_rests')
    .set({ since: lastRead(job)! })
    .where('job_id', '=', job.id)
    .where('what', '=', 'gauge')
    .execute();
}

async function keepCounts(trx: Db, job: Job): Promise<void> {
  const now = trendRow(job, await firstSigned(trx, job), await earlierOf(trx, job));
  const row = await trx.selectFrom('job_trend').selectAll().where('job_id', '=', job.id).executeTakeFirst();
  if (row === undefined) {
    const { job_id: _, ...said } = now;
    // Another program may have gathered it meanwhile.
    await trx
      .insertInto('job_trend')
      .values(now)
      .onConflict((on) => on.column('job_id').doUpdateSet(said))
      .execute();
    return;
  }
  const changed = changedIn(row, now);
  if (Object.keys(changed).length === 0) return;
  await trx.updateTable('job_trend').set(changed).where('job_id', '=', job.id).execute();
}

/** When anything was last read, before the cut or after it: a gauge found wrong later that day may have been wrong then. */
function lastRead({ readings }: Job): string | null {
  return readings.at(-1)?.at ?? null;
}

/** When a job was first signed, whatever was amended since. */
async function firstSigned(trx: Db, job: Job): Promise<string | null> {
  if (job.sections.signature === null) return null;
  const row = await trx
    .selectFrom('job_revision')
    .select((eb) => eb.fn.min('at').as('at'))
    .where('job_id', '=', job.id)
    .where('what', '=', 'signature')
    .executeTakeFirst();
  return row?.at ?? null;
}

async function earlierOf(trx: Db, { sections }: Job): Promise<number | null> {
  const number = sections.received?.body.comebackOf ?? null;
  if (number === null) return null;
  const row = await trx
    .selectFrom('job')
    .select('id')
    .where('number_key', '=', key(number))
    .executeTakeFirst();
  return row?.id ?? null;
}

/** What the trends count of a job. */
export function trendRow(job: Job, signedAt: string | null, comebackOf: number | null): TrendRow {
  const { received, looked, decision } = job.sections;
  const stands = job.outcome === null ? null : (decision?.body ?? null);
  const passes = countingPasses(job);
  const decidedMm = stands === null || stands.decision === 'replace' ? null : stands.check.leastWall?.afterMm;
  return {
    job_id: job.id,
    version: TREND_VERSION,
    demo: job.demo ? 1 : 0,
    stage: job.stage,
    outcome: job.outcome,
    family_id: received?.body.familyId ?? '',
    received_on: received?.body.receivedOn ?? '',
    signed_at: signedAt,
    days_to_sign:
      signedAt === null
        ? null
        : Math.max(0, Math.floor((Date.parse(signedAt) - Date.parse(job.createdAt)) / DAY_MS)),
    scrap_reason: stands && scrapReason(stands, looked?.body ?? null),
    wall_nm: nm(thinnestRead(job, 'before')),
    cut_nm: passes.length === 0 ? null : nm(passes.reduce((sum, { depthMm }) => sum + depthMm, 0)),
    left_nm: nm(thinnestRead(job, 'after') ?? decidedMm ?? null),
    peak_over_new: peakOf(stands),
    pattern: patternOf(stands),
    comeback_of: comebackOf,
  };
}

type Stands = Job['sections']['decision'] extends infer Kept
  ? Kept extends { body: infer B }
    ? B
    : null
  : never;

function peakOf(stands: Stands | null): number | null {
  const of = (id: 'new' | 'after') => stands?.bending?.cases.find((one) => one.id === id)?.peakOverMean;
  const [fresh, after] = [of('new'), of('after')];
  if (fresh === undefined || after === undefined) return null;
  const times = timesNew(after, fresh);
  const most = Math.max(times.rigid, times.conforming);
  return Number.isFinite(most) ? most : null;
}

/** The strongest of what its heat marks say. */
function patternOf(stands: Stands | null): MarkPattern | null {
  const rows = stands?.check.heatMarks;
  if (rows === undefined || rows.length === 0) return null;
  const told = patternsTold(rows.map((row) => ({ ...row, told: row.pattern !== 'not-enough-stations' })));
  return (told.find(({ pattern }) => pattern !== 'not-enough-stations') ?? told[0])?.pattern ?? null;
}

/** The entries, limits and calculations that a job as it stands was worked out from. */
export function restsRows(job: Job): RestsRow[] {
  const { received, setup, plan, decision, studs } = job.sections;
  const read = lastRead(job);
  const rows: Omit<RestsRow, 'job_id'>[] = [];
  if (received) {
    const { familyId: id, familyRevision: revision } = received.body;
    rows.push({ what: 'family', id, revision, since: received.at });
  }
  for (const { id, revision } of setup?.body.gauges ?? []) {
    rows.push({ what: 'gauge', id, revision, since: read ?? setup!.at });
  }
  const lathe = plan?.body.lathe;
  if (plan && lathe) {
    rows.push({ what: 'lathe', id: lathe.id, revision: lathe.revision, since: plan.at });
  }
  if (decision) {
    const { at: since, body } = decision;
    if (body.criteriaRevision !== undefined) {
      rows.push({ what: 'criteria', id: 'shop', revision: body.criteriaRevision, since });
    }
    rows.push({ what: 'cover-calc', id: body.calcVersion, revision: 0, since });
    if (body.bending) rows.push({ what: 'plate-calc', id: body.bending.calcVersion, revision: 0, since });
  }
  if (studs) {
    const { at: since, body } = studs;
    rows.push({ what: 'stack', id: body.stackId, revision: body.revisions?.stack ?? 0, since });
    rows.push({ what: 'stud', id: body.studId, revision: body.revisions?.stud ?? 0, since });
    rows.push({ what: 'stud-calc', id: body.calcVersion, revision: 0, since });
  }
  const seen = new Map(rows.map((row) => [`${row.what} ${row.id}`, { ...row, job_id: job.id }]));
  return [...seen.values()];
}
