import type { Job, Pass } from '../../shared/words/job.ts';
import type { CoverJob } from '../../shared/words/sameCover.ts';
import { stationsRead } from '../calc/job/jobPlaces.ts';
import { isShown } from '../records/begun.ts';
import type { Db } from '../records/database/database.ts';
import { key } from '../records/database/writing.ts';
import { getJob } from '../records/jobs/readJob.ts';

/** More jobs of one cover no shop has; the newest are told. */
const MOST = 20;

/** Every job of the cover with this number of its own, newest first; none where no number is given. */
export async function jobsOfCover(db: Db, coverNumber: string): Promise<readonly CoverJob[]> {
  const coverKey = key(coverNumber);
  if (coverKey === '') return [];
  const rows = await db
    .selectFrom('job')
    .select('id')
    .where('cover_key', '=', coverKey)
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
    wallBeforeMm: thinnest(job, 'before'),
    wallAfterMm: thinnest(job, 'after'),
  };
}

/** The thinnest station of a pass, each the mean of its readings; null where none was read. */
function thinnest(job: Job, pass: Pass): number | null {
  const means = stationsRead(job, pass).flatMap(({ readings }) => {
    const walls = readings.flatMap(({ kind, valueMm }) =>
      kind === 'wall' && valueMm !== null ? [valueMm] : [],
    );
    return walls.length === 0 ? [] : [walls.reduce((sum, mm) => sum + mm, 0) / walls.length];
  });
  return means.length === 0 ? null : Math.min(...means);
}
