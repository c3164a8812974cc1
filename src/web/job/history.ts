import { type Request, Router } from 'express';
import { HistoryPage } from '../../../views/pages/job/historyPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { revisionsOf } from '../../records/jobs/history.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { signedPrints } from '../../records/jobs/signedPrints.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { revisionsInWords } from './revisionWords.ts';

/** What every revision of a job changed, and one alone. */
export function historyRouter(context: PageContext): Router {
  const router = Router();
  const { db } = context.shop;

  router.get('/jobs/:number/history', async (req, res) => {
    res.send(await page(req, null));
  });

  router.get('/jobs/:number/history/:revision', async (req, res) => {
    const typed = String(req.params.revision);
    res.send(await page(req, /^\d{1,9}$/.test(typed) ? Number(typed) : -1));
  });

  async function page(req: Request, alone: number | null): Promise<string> {
    const job = await jobNamed(db, String(req.params.number));
    const frame = await frameOf(req, context);
    const told = revisionsInWords(await revisionsOf(db, job.id), frame);
    const revisions = alone === null ? told.reverse() : told.filter((one) => one.revision === alone);
    if (revisions.length === 0) {
      throw new NoSuchPage(
        `Job ${job.number} has no such revision; its revisions are 1 to ${job.revision}. Open its history.`,
      );
    }
    return renderPage(
      HistoryPage({ frame, job, revisions, alone, signedPrints: await signedPrints(db, job.id) }),
    );
  }

  return router;
}
