import { type Request, type Response, Router } from 'express';
import { WhatIfPage } from '../../../views/pages/bending/whatIfPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { weldOf } from '../../shop/bending/bendings.ts';
import { jobInput } from '../../shop/jobInput.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { triedCut } from '../../shop/quickCover.ts';
import { readQuickForm } from '../cover/cover.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { askerOf } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, unitOf } from '../request/typed.ts';

/** What another cut would leave: the answer beside the slider. Looks, and keeps nothing. */
export function whatIfRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/cover/what-if', to(getCoverWhatIf));
  router.get('/jobs/:number/what-if', to(getJobWhatIf));
  return router;
}

async function getCoverWhatIf(context: PageContext, req: Request, res: Response): Promise<void> {
  const { try: _, ...fields } = fieldsOf(req.query);
  const frame = await frameOf(req, context);
  const unit = unitOf(fields) ?? frame.lengthUnit;
  const { form, input, bent } = await readQuickForm(context, fields, { ...frame, lengthUnit: unit });
  const back = `/cover?${new URLSearchParams(fields)}`;
  const asked = { ...bent, asker: askerOf(req, res) };
  const answer = await triedCut(input, cutOf(req), asked, unit);
  res.send(
    renderPage(WhatIfPage({ frame: keepingUnits({ ...frame, lengthUnit: unit }, form), ...answer, back })),
  );
}

async function getJobWhatIf(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const frame = await frameOf(req, context);
  const { criteria, atHand } = await jobUnder(db, job, frame);
  const { input } = jobInput(job, criteria, atHand, frame.timeZone);
  const back = `/jobs/${encodeURIComponent(job.number)}#decide`;
  const family = job.sections.received?.body.family ?? null;
  const bent = { family, criteria, welded: weldOf(job), asker: askerOf(req, res) };
  const answer = await triedCut(input, cutOf(req), bent, frame.lengthUnit);
  res.send(renderPage(WhatIfPage({ frame, ...answer, back })));
}

/** In mm, as the slider counts. */
function cutOf(req: Request): number {
  return Number(fieldsOf(req.query).try ?? '');
}
