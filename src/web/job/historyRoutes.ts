import { type Request, type Response, Router } from 'express';
import { HistoryPage } from '../../../views/pages/job/historyPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { revisionsOf } from '../../records/jobs/history.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { signedPrints } from '../../records/jobs/signedPrints.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { revisionsInWords } from './revisionWords.ts';

/** What every revision of a job changed, and one alone. */
export function historyRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/history', to(getHistory));
  router.get('/jobs/:number/history/:revision', to(getRevision));
  return router;
}

async function getHistory(context: PageContext, req: Request, res: Response): Promise<void> {
  res.send(await historyPage(context, req, null));
}

async function getRevision(context: PageContext, req: Request, res: Response): Promise<void> {
  const typed = String(req.params.revision);
  res.send(await historyPage(context, req, /^\d{1,9}$/.test(typed) ? Number(typed) : -1));
}

async function historyPage(context: PageContext, req: Request, alone: number | null): Promise<string> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const frame = await frameOf(req, context);
  const told = revisionsInWords(await revisionsOf(db, job.id), frame);
  const revisions = alone === null ? told.reverse() : told.filter((one) => one.revision === alone);
  if (revisions.length === 0) {
    throw new NoSuchPage(
      `Job ${job.number} has no such revision; its revisions are 1 to ${job.revision}. Open its history.`,
    );
  }
  const signed = await signedPrints(db, job.id);
  return renderPage(HistoryPage({ frame, job, revisions, alone, signedPrints: signed }));
}
