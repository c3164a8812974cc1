import type { HistoryLine, Reading, RevisionShown } from '../../../shared/words/job.ts';
import type { Db } from '../database/database.ts';
import { readingsOf } from './readingRows.ts';

/** Higher than any job's revision, and still an integer of every database. */
const NEWEST = 2_000_000_000;

/** Who did what to a job, oldest first; empty when there is no such job. */
export async function historyOf(db: Db, jobId: number): Promise<readonly HistoryLine[]> {
  return db
    .selectFrom('job_revision')
    .select(['revision', 'at', 'who', 'why', 'what'])
    .where('job_id', '=', jobId)
    .orderBy('revision')
    .execute();
}

/** Every revision of a job with what it said, oldest first; empty when there is no such job. */
export async function revisionsOf(db: Db, jobId: number): Promise<readonly RevisionShown[]> {
  const rows = await db
    .selectFrom('job_revision')
    .select(['revision', 'at', 'who', 'why', 'what', 'body'])
    .where('job_id', '=', jobId)
    .orderBy('revision')
    .execute();
  const readings = await allReadings(db, jobId);
  return rows.map(({ body, ...line }) => ({
    ...line,
    body:
      line.what === 'reading'
        ? readings.filter((reading) => reading.revision === line.revision)
        : JSON.parse(body),
  }));
}

/** Every reading a job ever had, those since replaced or withdrawn too, in the order they came. */
export async function allReadings(db: Db, jobId: number): Promise<readonly Reading[]> {
  return readingsOf(db, jobId, NEWEST);
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
