import { sql } from 'kysely';
import type { ReadingKind } from '../../../shared/words/job.ts';
import { shownIn } from '../begun.ts';
import type { Db } from '../database/database.ts';

/** The newest jobs that are looked through, so that the page stays quick in a shop of any size. */
const JOBS_LOOKED_AT = 500;

/**
 * What a gauge read more than once at one station of one job before its cut: lists of repeats [mm], from the newest jobs
 * with this gauge. Corrected and withdrawn readings do not count. Where the setup changed, by a weld or another gauge, only
 * those of the newest setup that was measured are held against one another.
 */
export async function repeatsInJobs(
  db: Db,
  gaugeId: string,
  kind: ReadingKind,
): Promise<{ readonly jobs: number; readonly repeats: readonly (readonly number[])[] }> {
  const jobs = await db
    .selectFrom('job_rests as r')
    .innerJoin('job as j', 'j.id', 'r.job_id')
    .select('j.id')
    .where('r.what', '=', 'gauge')
    .where('r.id', '=', gaugeId)
    .where(shownIn(sql`j`))
    .orderBy('j.id', 'desc')
    .limit(JOBS_LOOKED_AT)
    .execute();
  if (jobs.length === 0) return { jobs: 0, repeats: [] };
  const ids = jobs.map(({ id }) => id);
  const setups = await db
    .selectFrom('job_revision')
    .select(['job_id', 'revision'])
    .where('job_id', 'in', ids)
    .where('what', '=', 'setup')
    .execute();
  const setupsOf = new Map<number, number[]>();
  for (const { job_id, revision } of setups)
    setupsOf.set(job_id, [...(setupsOf.get(job_id) ?? []), revision]);
  const rows = await db
    .selectFrom('reading')
    .select(['id', 'job_id', 'revision', 'angle_deg', 'radius_mm', 'value_mm', 'replaces'])
    .where('job_id', 'in', ids)
    .where('pass', '=', 'before')
    .where('kind', '=', kind)
    .execute();
  const replaced = new Set(rows.map(({ replaces }) => replaces));
  const counting = rows
    .filter(({ id, value_mm }) => value_mm !== null && !replaced.has(id))
    .map((row) => ({
      ...row,
      setup: (setupsOf.get(row.job_id) ?? []).filter((revision) => revision < row.revision).length,
    }));
  const newest = new Map<number, number>();
  for (const { job_id, setup } of counting) newest.set(job_id, Math.max(setup, newest.get(job_id) ?? 0));
  const places = new Map<string, number[]>();
  for (const { job_id, setup, angle_deg, radius_mm, value_mm } of counting) {
    if (setup !== newest.get(job_id)) continue;
    const place = `${job_id}/${angle_deg}/${radius_mm}`;
    places.set(place, [...(places.get(place) ?? []), value_mm!]);
  }
  const repeats = [...places.entries()].filter(([, values]) => values.length > 1);
  return {
    jobs: new Set(repeats.map(([place]) => place.split('/')[0])).size,
    repeats: repeats.map(([, values]) => values),
  };
}
