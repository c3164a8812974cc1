import { type Request, Router } from 'express';
import type { CoverCheckInput } from '../../shared/words/cover.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { WhatIfPage } from '../../views/pages/whatIf.tsx';
import { renderPage } from '../../views/render.ts';
import { checkCover } from '../calc/cover/checkCover.ts';
import { currentCriteria, listEntries } from '../records/catalogue.ts';
import { getJob } from '../records/jobs.ts';
import { readQuickForm } from './cover.ts';
import { NoSuchPage } from './errors.ts';
import { gaugesAtHand } from './gaugeChosen.ts';
import { frameOf, type House } from './house.ts';
import { checkJob } from './jobCheck.ts';
import { fieldsOf } from './typed.ts';

/** What another cut would leave: the answer beside the slider. Looks, and keeps nothing. */
export function whatIfRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.get('/cover/what-if', async (req, res) => {
    const { try: _, ...fields } = fieldsOf(req.query);
    const frame = await frameOf(req, house);
    const unit = fields.unit === 'in' || fields.unit === 'mm' ? fields.unit : frame.lengthUnit;
    const { form } = await readQuickForm(house, fields, { ...frame, lengthUnit: unit });
    const input = form.view.doubts.length > 0 ? null : form.input;
    const back = `/cover?${new URLSearchParams(fields)}`;
    const check = withCut(input, req, unit);
    res.send(renderPage(WhatIfPage({ frame: { ...frame, lengthUnit: unit }, check, back })));
  });

  router.get('/jobs/:number/what-if', async (req, res) => {
    const job = await getJob(db, req.params.number);
    if (job === null) throw new NoSuchPage('There is no such job in this shop. Look for it under jobs.');
    const frame = await frameOf(req, house);
    const criteria = (await currentCriteria(db)).body;
    const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
    const { input } = checkJob(job, criteria, frame.lengthUnit, atHand);
    const back = `/jobs/${encodeURIComponent(job.number)}#decide`;
    const check = withCut(input, req, frame.lengthUnit);
    res.send(renderPage(WhatIfPage({ frame, check, back })));
  });

  return router;
}

/** The same cover with the cut of the slider, in mm as the slider counts. */
function withCut(input: CoverCheckInput | null, req: Request, unit: 'mm' | 'in') {
  const cutMm = Number(fieldsOf(req.query).try ?? '');
  if (input === null || !Number.isFinite(cutMm) || cutMm < 0) return null;
  try {
    return checkCover({ ...input, plannedCutMm: cutMm }, unit);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
