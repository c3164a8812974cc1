import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { BandCompared, JudgedTwice, OtherLimit } from '../../../shared/words/trends/otherLimit.ts';
import { VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { OtherLimitPage } from '../../../views/pages/trends/otherLimitPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { doneInWords, Stopped } from '../../progress.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { underOtherLimit } from '../../shop/trends/otherLimit.ts';
import { NotWanted } from '../../shop/work/workPool.ts';
import { figureIn } from '../request/bodyColumns.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { UnderWay } from '../workUnderWay.ts';

/** The work that goes on, and what the last one found. It is in no record: it can be asked again. */
interface Asking {
  readonly work: UnderWay;
  found: OtherLimit | null;
}

/** What another minimum wall would have done: one question at a time, worked out beside the requests. */
export function otherLimitRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  const asking: Asking = { work: new UnderWay(), found: null };
  router.get(
    '/trends/limit',
    to((...asked) => show(asking, ...asked)),
  );
  router.post(
    '/trends/limit',
    to((...asked) => start(asking, ...asked)),
  );
  router.post(
    '/trends/limit/stop',
    to(async (_context, _req, res) => {
      await asking.work.stop();
      res.redirect(303, '/trends/limit');
    }),
  );
  router.get(
    '/trends/limit/covers.csv',
    to((...asked) => sendCovers(asking, ...asked)),
  );
  router.get(
    '/trends/limit/bands.csv',
    to((...asked) => sendBands(asking, ...asked)),
  );
  return router;
}

const BUSY = 'Covers are being judged already. Wait until that is done, or stop it.';
/** No minimum is moved farther than this. */
const MOST_MM = 3;

async function start(asking: Asking, context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  if (asking.work.part) {
    await show(asking, context, req, res, { status: 409, fields, faults: [{ path: '', message: BUSY }] });
    return;
  }
  const frame = await frameOf(req, context);
  const form = new TypedForm(fields, frame);
  const typed = form.length('by', LABEL);
  if (typed === null && form.faults.length === 0) {
    form.fault(
      'by',
      `${LABEL}: enter how far to move it, as in ${printLength(0.127, form.writing.lengthUnit)}.`,
    );
  }
  if (typed !== null && !(typed > 0 && typed <= MOST_MM)) {
    form.fault(
      'by',
      `${LABEL}: enter more than zero and at most ${printLength(MOST_MM, form.writing.lengthUnit)}. Choose the way beside it.`,
    );
  }
  if (typed === null || form.faults.length > 0) {
    await show(asking, context, req, res, { status: 422, fields, faults: form.faults });
    return;
  }
  const byMm = form.choice('way', ['less', 'more']) === 'more' ? typed : -typed;
  const { db } = context.shop;
  asking.work
    .run('Nothing was found out.', async (step) => {
      asking.found = await underOtherLimit(db, byMm, frame, context.now().toISOString(), step);
    })
    .catch((error: unknown) => {
      if (!(error instanceof Stopped) && !(error instanceof NotWanted)) console.error(error);
    });
  res.redirect(303, '/trends/limit');
}

const LABEL = 'Move the shop’s minimum by';

async function show(
  { work, found }: Asking,
  context: PageContext,
  req: Request,
  res: Response,
  sent: { readonly status?: number; readonly fields?: Fields; readonly faults?: readonly Fault[] } = {},
): Promise<void> {
  const { status = 200, fields = {}, faults = [] } = sent;
  const own = await frameOf(req, context);
  const frame = { ...own, ...writingIn(fields, own), address: '/trends/limit' };
  const { revision } = await currentCriteria(context.shop.db);
  const page = OtherLimitPage({
    frame,
    fields,
    faults,
    found,
    criteriaRevision: revision,
    underWay: work.part && { words: doneInWords(work.part), done: work.part.done, of: work.part.of },
    stopped: faults.length === 0 ? work.failure : null,
  });
  res.status(status).send(renderPage(page));
}

function foundBy({ found }: Asking): OtherLimit {
  if (found === null) throw new NoSuchPage('No covers were judged again yet. Go back to Trends.');
  return found;
}

const length = (mm: number | null, unit: LengthUnit) => (mm === null ? null : figureIn(mm, 'length', unit));

async function sendCovers(asking: Asking, context: PageContext, req: Request, res: Response): Promise<void> {
  const { saved, lost, otherwise } = foundBy(asking);
  const { lengthUnit: unit } = await frameOf(req, context);
  const rows = [
    ...saved.map((one) => ({ ...one, what: 'saved' })),
    ...lost.map((one) => ({ ...one, what: 'lost' })),
    ...otherwise.map((one) => ({ ...one, what: 'answered otherwise' })),
  ];
  const columns: readonly Column<JudgedTwice & { readonly what: string }>[] = [
    { name: 'job', of: ({ number }) => number },
    { name: 'cover type', of: ({ coverType }) => coverType },
    { name: 'result', of: ({ what }) => what },
    { name: 'today', of: ({ before }) => VERDICT_WORD[before] },
    { name: 'then', of: ({ after }) => VERDICT_WORD[after] },
    { name: `wall left (${unit})`, of: ({ leftMm }) => length(leftMm, unit) },
    { name: `minimum then (${unit})`, of: ({ minimumMm }) => length(minimumMm, unit) },
    { name: 'confidence', of: ({ confidence }) => confidence },
    { name: 'peak lining pressure, times new', of: ({ peakOverNew }) => peakOverNew },
  ];
  sendCsv(res, 'another-minimum-covers', columns, rows);
}

async function sendBands(asking: Asking, context: PageContext, req: Request, res: Response): Promise<void> {
  const { bands } = foundBy(asking);
  const { lengthUnit: unit } = await frameOf(req, context);
  const columns: readonly Column<BandCompared>[] = [
    { name: `from (${unit})`, of: ({ fromMm }) => length(fromMm, unit) },
    { name: `less than (${unit})`, of: ({ toMm }) => length(toMm, unit) },
    { name: 'saved', of: ({ saved }) => saved },
    { name: 'released before', of: ({ released }) => released },
    { name: 'came back', of: ({ back }) => back },
    { name: '95 % from', of: ({ interval }) => interval?.low ?? null },
    { name: '95 % to', of: ({ interval }) => interval?.high ?? null },
  ];
  sendCsv(res, 'another-minimum-wall-left', columns, bands);
}
