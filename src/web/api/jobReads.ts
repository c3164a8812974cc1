import type { Finding } from '../../../shared/words/finding.ts';
import type { Job } from '../../../shared/words/job.ts';
import { missingOf } from '../../calc/job/jobStage.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { NotInRecords } from '../../records/database/errors.ts';
import { findJobs } from '../../records/jobs/findJobs.ts';
import { revisionsOf } from '../../records/jobs/history.ts';
import { getJob, jobAtRevision } from '../../records/jobs/jobs.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { bentJob } from '../../shop/bending/bentJob.ts';
import { keptBending, keptCheck } from '../../shop/jobKept.ts';
import { jobQuestion } from '../job/jobQuestion.ts';
import { revisionsInWords } from '../job/revisionWords.ts';
import { gaugesAtHand } from '../measuring/gaugeChosen.ts';
import { type JobAnswered, type JobAsked, type JobNeeds, ok } from './call.ts';

export async function answerJobs({ db }: JobNeeds, { query }: JobAsked): Promise<JobAnswered> {
  return ok(await findJobs(db, jobQuestion(query, { limit: 50 })));
}

export async function answerJob({ db }: JobNeeds, { named, query }: JobAsked): Promise<JobAnswered> {
  const now = await mustFind(db, named);
  const { revision } = query;
  const job = revision === undefined ? now : await jobAtRevision(db, now.id, numberIn(revision));
  return ok({ job, missing: missingOf(job), criteria: await currentCriteria(db) });
}

export async function answerHistory({ db }: JobNeeds, { named }: JobAsked): Promise<JobAnswered> {
  const job = await mustFind(db, named);
  const { body: writing } = await currentCriteria(db);
  return ok({ number: job.number, revisions: revisionsInWords(await revisionsOf(db, job.id), writing) });
}

export async function answerJobStiffness(needs: JobNeeds, { named }: JobAsked): Promise<JobAnswered> {
  return ok(await stiffnessOf(needs, await mustFind(needs.db, named)));
}

async function stiffnessOf({ db, timeZone }: JobNeeds, job: Job) {
  const kept = keptBending(job);
  const onBending = (findings: readonly Finding[]) => findings.filter(({ id }) => id.startsWith('stiffness'));
  if (kept !== null) return { bending: kept, why: null, findings: onBending(keptCheck(job)?.findings ?? []) };
  const { body: criteria } = await currentCriteria(db);
  const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
  const writing = { lengthUnit: criteria.lengthUnit, timeZone };
  const { told } = await bentJob(job, criteria, writing, atHand);
  if (told === null) {
    return { bending: null, why: 'Nothing has been measured yet; measure the wall first.', findings: [] };
  }
  const { bending, why, findings } = told;
  return { bending, why, findings };
}

/** The job a path names. Throws NotInRecords when there is none. */
export async function mustFind(db: Db, number: string): Promise<Job> {
  const job = await getJob(db, number);
  if (job === null) {
    throw new NotInRecords(
      'number',
      `There is no job "${number.slice(0, 40)}" in this shop; ask for /api/jobs.`,
    );
  }
  return job;
}

function numberIn(typed: string): number {
  return /^\d{1,9}$/.test(typed) ? Number(typed) : Number.NaN;
}
