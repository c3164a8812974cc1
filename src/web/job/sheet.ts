import { type Request, type Response, Router } from 'express';
import type { Paper } from '../../../shared/words/paper.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { printedAt, printedPart, signedPrints } from '../../records/jobs/signedPrints.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { fieldsOf } from '../request/typed.ts';
import { jobAsked } from './jobRequest.ts';
import { sheetOf, tagOf } from './papers.ts';
import { partsToday, slipPartsToday } from './printedParts.ts';

/** What goes on paper: the sheet of a job, as it stands or as it was, its tag, and both as they were signed. */
export function sheetRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/jobs/:number/sheet', to(showSheet));
  router.get('/jobs/:number/tag', to(showTag));
  router.get(
    '/jobs/:number/sheet/signed',
    to((...asked) => showSigned('sheet', ...asked)),
  );
  router.get(
    '/jobs/:number/tag/signed',
    to((...asked) => showSigned('tag', ...asked)),
  );
  router.get('/printed/:name', to(sendPart));
  return router;
}

async function showSheet(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const { job, asItWas } = await jobAsked(db, req, fieldsOf(req.query));
  const frame = await frameOf(req, context);
  res.send(await sheetOf(db, job, { frame, publicUrl: context.settings.publicUrl, asItWas }));
}

async function showTag(context: PageContext, req: Request, res: Response): Promise<void> {
  const job = await jobNamed(context.shop.db, String(req.params.number));
  const frame = await frameOf(req, context);
  const on = fieldsOf(req.query).on === 'page' ? 'page' : 'label';
  res.send(tagOf(job, { frame, publicUrl: context.settings.publicUrl }, on));
}

/** A paper byte for byte as it was printed at signing: of the newest signature, or of the one at a revision. */
async function showSigned(paper: Paper, context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const job = await jobNamed(db, String(req.params.number));
  const { revision: typed = '' } = fieldsOf(req.query);
  const kept = await signedPrints(db, job.id);
  const asked = typed === '' ? kept[0] : kept.find(({ revision }) => String(revision) === typed);
  const html = asked && (await printedAt(db, job.id, { paper, revision: asked.revision }));
  if (!html) throw new NoSuchPage(nonePrinted(job.number, paper, job.sections.signature !== null));
  res.send(html);
}

function nonePrinted(number: string, paper: Paper, signed: boolean): string {
  return signed
    ? `Job ${number} was signed before sheets and tags were saved at signing. Print the ${paper} as it is now.`
    : `Job ${number} is not signed, so no signed ${paper} is saved. Print the ${paper} as it is now.`;
}

const NAME = /^([0-9a-f]{64})\.(css|woff2)$/;
const TYPE = { css: 'text/css', woff2: 'font/woff2' } as const;

/** Style or type of a paper; what is named by its content never changes. */
async function sendPart(context: PageContext, req: Request, res: Response): Promise<void> {
  const [, hash = '', kind] = NAME.exec(String(req.params.name)) ?? [];
  const part =
    [...partsToday().parts, ...slipPartsToday().parts].find((one) => one.hash === hash) ??
    (await printedPart(context.shop.db, hash));
  if (!part || part.kind !== kind) throw new NoSuchPage('No sheet, tag or slip of this shop uses that file.');
  res.set('Cache-Control', 'private, max-age=31536000, immutable');
  res.type(TYPE[part.kind]).send(Buffer.from(part.base64, 'base64'));
}
