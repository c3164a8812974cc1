import type { HistoryLine, RevisionShown } from '../../shared/words/job.ts';
import type { Db } from './database.ts';
import { readingsOf } from './readingRows.ts';

/** Who did what to a job, oldest first; empty when there is no such job. */
export async function historyOf(db: Db, jobId: number): Promise<readonly HistoryLine[]> {
  return db
    .selectFrom('job_revision')
    .select(['revision', 'at', 'who', 'why', 'what'])
    .where('job_id', '=', jobId)
    .orderBy('revision')
    .execute();
}

/** One revision with what it said; null when the job has no such revision. */
export async function revisionOf(db: Db, jobId: number, revision: number): Promise<RevisionShown | null> {
  const row = await db
    .selectFrom('job_revision')
    .select(['revision', 'at', 'who', 'why', 'what', 'body'])
    .where('job_id', '=', jobId)
    .where('revision', '=', revision)
    .executeTakeFirst();
  if (!row) return null;
  const { body, ...line } = row;
  if (line.what !== 'reading') return { ...line, body: JSON.parse(body) };
  const readings = await readingsOf(db, jobId, revision);
  return { ...line, body: readings.filter((reading) => reading.revision === revision) };
}
