import type { Job } from '../../../shared/words/job.ts';
import { findJobs } from '../../records/jobs/findJobs.ts';
import { revisionsOf } from '../../records/jobs/history.ts';
import { jobAtRevision, jobNamed } from '../../records/jobs/readJob.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { type JobAnswer, jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { jobQuestion } from '../job/jobQuestion.ts';
import { revisionsInWords } from '../job/revisionWords.ts';
import { type JobAnswered, type JobAsked, type JobNeeds, ok } from './call.ts';

export async function answerJobs({ db }: JobNeeds, { query }: JobAsked): Promise<JobAnswered> {
  return ok(await findJobs(db, jobQuestion(query, { limit: 50 })));
}

/** Of a job’s answer; the rest is in its sections, or has a call of its own. */
const TOLD = [
  'check',
  'faults',
  'passes',
  'compared',
  'nextPass',
  'verified',
  'next',
  'steps',
  'statementNeeded',
  'otherwise',
] as const satisfies readonly (keyof JobAnswer)[];

export async function answerJob(needs: JobNeeds, { named, query, asker }: JobAsked): Promise<JobAnswered> {
  const { db } = needs;
  const now = await jobNamed(db, named);
  const { revision } = query;
  const job = revision === undefined ? now : await jobAtRevision(db, now.id, numberIn(revision));
  const answer = await answerOf(needs, job, asker, revision === undefined ? null : job.revision);
  return ok({
    job,
    missing: answer.missing,
    answer: Object.fromEntries(TOLD.map((name) => [name, answer[name]])),
    criteria: await currentCriteria(db),
  });
}

export async function answerHistory({ db }: JobNeeds, { named }: JobAsked): Promise<JobAnswered> {
  const job = await jobNamed(db, named);
  const { body: writing } = await currentCriteria(db);
  return ok({ number: job.number, revisions: revisionsInWords(await revisionsOf(db, job.id), writing) });
}

export async function answerJobStiffness(needs: JobNeeds, { named, asker }: JobAsked): Promise<JobAnswered> {
  return ok(await stiffnessOf(needs, await jobNamed(needs.db, named), asker));
}

async function stiffnessOf(needs: JobNeeds, job: Job, asker: Asker) {
  const answer = await answerOf(needs, job, asker);
  if (answer.bending === null) {
    return { bending: null, why: 'Nothing is measured yet. Measure the wall first.', findings: [] };
  }
  const { bending, why } = answer.bending;
  const findings = (answer.stands?.findings ?? []).filter(({ id }) => id.startsWith('stiffness'));
  return { bending, why, findings };
}

/** A job worked out, in the words of the shop's own unit. */
async function answerOf(
  { db, timeZone }: JobNeeds,
  job: Job,
  asker: Asker,
  asItWas: number | null = null,
): Promise<JobAnswer> {
  const { lengthUnit } = (await currentCriteria(db)).body;
  return jobAnswer(job, await jobUnder(db, job, { lengthUnit, timeZone }, asItWas), { asker });
}

function numberIn(typed: string): number {
  return /^\d{1,9}$/.test(typed) ? Number(typed) : Number.NaN;
}
