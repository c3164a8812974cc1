import type { Job } from '../../shared/words/job.ts';
import type { CoverJob } from '../../shared/words/sameCover.ts';
import { thinnestRead } from '../calc/job/thinnestRead.ts';
import { isShown } from '../records/begun.ts';
import type { Db } from '../records/database/database.ts';
import { coverKey } from '../records/database/writing.ts';
import { getJob } from '../records/jobs/readJob.ts';

/** More jobs of one cover no shop has; the newest are told. */
const MOST = 20;

/** Every job of the cover with this number of its own, newest first; none where no number is given. */
export async function jobsOfCover(db: Db, coverNumber: string): Promise<readonly CoverJob[]> {
  const cover = coverKey(coverNumber);
  if (cover === '') return [];
  const rows = await db
    .selectFrom('job')
    .select('id')
    .where('cover_key', '=', cover)
    .where(isShown)
    .orderBy('received_on', 'desc')
    .orderBy('id', 'desc')
    .limit(MOST)
    .execute();
  const jobs: CoverJob[] = [];
  for (const { id } of rows) {
    const job = await getJob(db, id);
    if (job !== null) jobs.push(told(job));
  }
  return jobs;
}

function told(job: Job): CoverJob {
  const received = job.sections.received!.body;
  return {
    number: job.number,
    receivedOn: received.receivedOn,
    familyName: received.family.name,
    customerReference: received.customerReference,
    stage: job.stage,
    outcome: job.outcome,
    wallBeforeMm: thinnestRead(job, 'before'),
    wallAfterMm: thinnestRead(job, 'after'),
    heatMarks: job.sections.decision?.body.check.heatMarks ?? [],
  };
}
