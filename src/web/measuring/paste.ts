import { randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import type { Job } from '../../../shared/words/job.ts';
import { writePlace } from '../../../shared/words/places.ts';
import type { PlaceView } from '../../../views/pages/job/measure.tsx';
import { ClosedPage } from '../../../views/pages/measuring/closedPage.tsx';
import { PastePage, type PastePreview } from '../../../views/pages/measuring/pastePage.tsx';
import { renderPage } from '../../../views/render.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, unitOf, type Writing } from '../request/typed.ts';
import { PASTED, pastedReadings } from './pastedReadings.ts';
import { passOf } from './plainReading.ts';
import { placeViews, readReadings } from './table.ts';

/** Readings pasted from a spreadsheet or a measuring machine: shown first, and saved by the form of the measuring table. */
export function pasteRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/measure/paste', to(getPaste));
  router.post('/jobs/:number/measure/paste', to(postPaste));
  return router;
}

async function getPaste(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  await show(context, req, res, job, fieldsOf(req.query), 200, null);
}

/** Reads what was pasted and shows it; nothing is saved. */
async function postPaste(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const fields = fieldsOf(req.body);
  const frame = await frameOf(req, context);
  const writing = { ...frame, lengthUnit: unitOf(fields) ?? frame.lengthUnit };
  const preview = await previewOf(job, fields, writing);
  const empty = preview.places.length === 0 && preview.refused.length === 0;
  await show(context, req, res, job, fields, empty ? 422 : 200, empty ? null : preview);
}

async function previewOf(job: Job, fields: Fields, writing: Writing): Promise<PastePreview> {
  const pass = passOf(fields);
  const rows = placeViews(job, pass, writing).filter(({ own }) => !own);
  const pasted = PASTED.find((one) => one === fields.pasted) ?? 'wall';
  const { boxes, refused } = pastedReadings(fields.text ?? '', rows, { writing, pasted });
  const places = rows.filter(({ index }) =>
    ['w', 'f', 'd'].some((letter) => boxes.has(`${letter}.${index}`)),
  );
  const token = randomUUID();
  const shown = Object.assign(
    { pass, token, unit: writing.lengthUnit },
    ...places.map(rowAsShown),
    Object.fromEntries(boxes),
  ) as Fields;
  const sent = await readReadings(job, shown, writing, job.sections.setup?.body.gauge ?? '');
  return { places, refused, token, fields: shown, faults: sent.faults, doubts: sent.doubts };
}

/** A row of the measuring table as its form sends it, before anything is pasted over it. */
function rowAsShown(place: PlaceView): Record<string, string> {
  const { index, was } = place;
  return {
    [`at.${index}`]: writePlace(place),
    [`w.${index}`]: place.wall,
    [`f.${index}`]: place.face,
    [`d.${index}`]: place.mark,
    [`was.w.${index}`]: was.wall,
    [`was.f.${index}`]: was.face,
    [`was.d.${index}`]: was.mark,
  };
}

async function show(
  context: PageContext,
  req: Request,
  res: Response,
  job: Job,
  fields: Fields,
  status: number,
  preview: PastePreview | null,
): Promise<void> {
  const frame = await frameOf(req, context);
  if (job.stage === 'closed') {
    res.status(status).send(renderPage(ClosedPage({ frame, job })));
    return;
  }
  const pass = passOf(fields);
  const address = `/jobs/${encodeURIComponent(job.number)}/measure/paste?${new URLSearchParams({ pass })}`;
  const nothing =
    status === 422 ? 'No reading was found. Paste a column of readings, or a table with headings.' : null;
  const props = { frame: { ...frame, address }, job, pass, fields, preview, nothing };
  res.status(status).send(renderPage(PastePage(props)));
}
