import type { Job, Received } from '../../../shared/words/job.ts';
import type { Db } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { printable } from '../database/writing.ts';
import { jobRow } from './readJob.ts';

export function noEarlierJob(typed: string): string {
  return `There is no job "${printable(typed.slice(0, 40))}" here. Enter the number of the earlier job, or leave it blank.`;
}

/** A comeback names an earlier job that is there, is another job, and came in no later. Inside a write only. */
export async function refuseComeback(trx: Db, job: Job | null, received: Received): Promise<void> {
  const typed = received.comebackOf ?? null;
  if (typed === null) return;
  const earlier = await jobRow(trx, typed);
  if (earlier === undefined) throw refuse('no-earlier-job', 'comebackOf', noEarlierJob(typed));
  if (earlier.id === job?.id) {
    throw refuse(
      'comeback-of-itself',
      'comebackOf',
      `Job ${earlier.number} can’t be a comeback of itself. Enter the number of the earlier job.`,
    );
  }
  if (earlier.received_on > received.receivedOn) {
    throw refuse(
      'comeback-before',
      'comebackOf',
      `Job ${earlier.number} came in on ${earlier.received_on}, after this one. A cover comes back from an earlier job.`,
    );
  }
  if (job !== null && (await leadsTo(trx, earlier.id, job.id))) {
    throw refuse(
      'comeback-circle',
      'comebackOf',
      `Job ${earlier.number} is itself a comeback of job ${job.number}. Enter the number of the earlier job.`,
    );
  }
}

/** Whether a job came back from another, however often in between. */
async function leadsTo(trx: Db, from: number, to: number): Promise<boolean> {
  const seen = new Set<number>();
  for (let at: number | null = from; at !== null && !seen.has(at); ) {
    if (at === to) return true;
    seen.add(at);
    const row: { comeback_of: number | null } | undefined = await trx
      .selectFrom('job_trend')
      .select('comeback_of')
      .where('job_id', '=', at)
      .executeTakeFirst();
    at = row?.comeback_of ?? null;
  }
  return false;
}

export interface ComebackNamed {
  readonly number: string;
  readonly receivedOn: string;
}

/** The jobs that came back from one, the first first. */
export async function comebacksOf(db: Db, jobId: number): Promise<readonly ComebackNamed[]> {
  const rows = await db
    .selectFrom('job_trend as t')
    .innerJoin('job', 'job.id', 't.job_id')
    .select(['job.number', 'job.received_on'])
    .where('t.comeback_of', '=', jobId)
    .where('t.stage', '<>', 'closed')
    .orderBy('job.received_on')
    .orderBy('job.id')
    .execute();
  return rows.map(({ number, received_on }) => ({ number, receivedOn: received_on }));
}
