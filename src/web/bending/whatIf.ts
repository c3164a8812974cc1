import { type Request, type Response, Router } from 'express';
import type { Bending } from '../../../shared/words/bending.ts';
import type { CoverCheck, CoverCheckInput } from '../../../shared/words/cover.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { WhatIfPage } from '../../../views/pages/bending/whatIfPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { checkCover } from '../../calc/cover/checkCover.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { type BendingAsked, bendingFor, weldOf } from '../../shop/bending/bendings.ts';
import { jobInput } from '../../shop/jobInput.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { readQuickForm } from '../cover/cover.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type House } from '../request/house.ts';
import { requestGoneSignal } from '../request/requestGone.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf, unitOf } from '../request/typed.ts';

/** What another cut would leave: the answer beside the slider. Looks, and keeps nothing. */
export function whatIfRouter(house: House): Router {
  const router = Router();
  const to = handledIn(house);
  router.get('/cover/what-if', to(getCoverWhatIf));
  router.get('/jobs/:number/what-if', to(getJobWhatIf));
  return router;
}

async function getCoverWhatIf(house: House, req: Request, res: Response): Promise<void> {
  const { try: _, ...fields } = fieldsOf(req.query);
  const frame = await frameOf(req, house);
  const unit = unitOf(fields) ?? frame.lengthUnit;
  const { form, criteria } = await readQuickForm(house, fields, { ...frame, lengthUnit: unit });
  const input = form.view.doubts.length > 0 ? null : form.input;
  const back = `/cover?${new URLSearchParams(fields)}`;
  const bent = {
    family: form.bends,
    own: form.familyId === 'own',
    criteria,
    signal: requestGoneSignal(res),
  };
  const answer = await withCut(input, req, unit, bent);
  res.send(renderPage(WhatIfPage({ frame: { ...frame, lengthUnit: unit }, ...answer, back })));
}

async function getJobWhatIf(house: House, req: Request, res: Response): Promise<void> {
  const { db } = house.shop;
  const job = await getJob(db, String(req.params.number));
  if (job === null) throw new NoSuchPage('There is no such job in this shop. Look for it under jobs.');
  const frame = await frameOf(req, house);
  const { criteria, atHand } = await jobUnder(db, job, frame);
  const { input } = jobInput(job, criteria, atHand, frame.timeZone);
  const back = `/jobs/${encodeURIComponent(job.number)}#decide`;
  const family = job.sections.received?.body.family ?? null;
  const bent = { family, criteria, welded: weldOf(job), signal: requestGoneSignal(res) };
  const answer = await withCut(input, req, frame.lengthUnit, bent);
  res.send(renderPage(WhatIfPage({ frame, ...answer, back })));
}

/** What follows the slider; the other cases do not move with it. */
const FOLLOWS = ['new', 'after', 'ring-unbonded'] as const;

/** The same cover with the cut of the slider, in mm as the slider counts: what it leaves, and how it then bends. */
async function withCut(
  input: CoverCheckInput | null,
  req: Request,
  unit: LengthUnit,
  bent: Omit<BendingAsked, 'check' | 'unit' | 'only'>,
): Promise<{ check: CoverCheck | null; bending: Bending | null }> {
  const cutMm = Number(fieldsOf(req.query).try ?? '');
  const nothing = { check: null, bending: null };
  if (input === null || !Number.isFinite(cutMm) || cutMm < 0) return nothing;
  const cut = { ...input, plannedCutMm: cutMm };
  try {
    const bare = checkCover(cut, unit);
    const { bending, findings } = await bendingFor({ ...bent, check: bare, unit, only: FOLLOWS });
    return { check: findings.length === 0 ? bare : checkCover(cut, unit, findings), bending };
  } catch (error) {
    if (error instanceof Refusal) return nothing;
    throw error;
  }
}
