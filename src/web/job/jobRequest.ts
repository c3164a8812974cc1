import { randomUUID } from 'node:crypto';
import type { Request, Response } from 'express';
import type { Job } from '../../../shared/words/job.ts';
import type { Db } from '../../records/database/database.ts';
import type { Ctx } from '../../records/database/writing.ts';
import { jobAtRevision, jobNamed } from '../../records/jobs/readJob.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { askerOf } from '../request/requestGone.ts';
import { type Fields, revisionIn } from '../request/typed.ts';
import { type JobShown, jobPage } from './jobPage.ts';

/** The job as it stands, or as it was at the revision that was asked for. */
export async function jobAsked(
  db: Db,
  req: Request,
  { revision: typed = '' }: Fields,
): Promise<{ readonly job: Job; readonly asItWas: number | null }> {
  const now = await jobNamed(db, String(req.params.number));
  if (!/^\d{1,9}$/.test(typed)) return { job: now, asItWas: null };
  const asItWas = Number(typed);
  if (asItWas < 1 || asItWas > now.revision) {
    throw new NoSuchPage(`Job ${now.number} has no revision ${asItWas}; it has ${now.revision}.`);
  }
  return { job: await jobAtRevision(db, now.id, asItWas), asItWas };
}

/** Sends the page of a job. */
export async function showJob(
  context: PageContext,
  req: Request,
  res: Response,
  job: Job,
  { status = 200, ...what }: Omit<JobShown, 'token' | 'asker'> & { readonly status?: number },
): Promise<void> {
  const own = await frameOf(req, context);
  // A form that was not taken is answered where nothing can be opened: its job can.
  const frame = req.method === 'GET' ? own : { ...own, address: addressOf(job) };
  const shown = { ...what, token: randomUUID(), asker: askerOf(req, res) };
  res.status(status).send(await jobPage(context, frame, job, shown));
}

/** Who changes it, and why. */
export function ctxOf({ now }: PageContext, { who = '', why = '' }: Fields): Ctx {
  return { who, why, now };
}

/** The revision a form was filled from; 0, which no job has, when it does not say. */
export function fromOf(fields: Fields): number {
  return revisionIn(fields.from, 0);
}

export function addressOf({ number }: Job): string {
  return `/jobs/${encodeURIComponent(number)}`;
}
