import { type Request, type Response, Router } from 'express';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf } from '../request/typed.ts';
import { listsRouter } from './csvLists.ts';
import { drawnRouter } from './drawnRoutes.ts';
import { EDITS } from './editForms.ts';
import { historyRouter } from './historyRoutes.ts';
import { postEdit } from './jobEdit.ts';
import { jobListRouter } from './jobList.ts';
import { postReadings } from './jobReadings.ts';
import { jobAsked, showJob } from './jobRequest.ts';
import { getNewJob, postNewJob } from './newJob.ts';

/** The jobs: the list, a new one, and the whole of each on one page. */
export function jobsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.use(historyRouter(context));
  router.use(jobListRouter(context));
  router.use(listsRouter(context));
  router.use(drawnRouter(context));
  router.get('/jobs/new', to(getNewJob));
  router.post('/jobs', to(postNewJob));
  router.get('/jobs/:number', to(getWholeJob));
  router.post('/jobs/:number/readings', to(postReadings));
  for (const section of Object.keys(EDITS) as (keyof typeof EDITS)[]) {
    router.post(
      `/jobs/:number/${section}`,
      to((...asked) => postEdit(section, ...asked)),
    );
  }
  return router;
}

async function getWholeJob(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const { job, asItWas } = await jobAsked(context.shop.db, req, fields);
  // Back from adding a cover type: what was typed of Receive stands there again.
  const again = fields.again === 'received' && asItWas === null;
  const refused = again ? ({ section: 'received', fields, faults: [], stale: null } as const) : null;
  await showJob(context, req, res, job, { asItWas, fields, refused });
}
