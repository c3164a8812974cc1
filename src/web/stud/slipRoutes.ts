import { createHash, randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  type CounterSlip,
  type KeptSlip,
  partsOf,
  type SlipLine,
  slipName,
  slipNumber,
} from '../../../shared/words/stud/slip.ts';
import { FIT_WORD } from '../../../shared/words/verdicts.ts';
import type { Frame } from '../../../views/frame.ts';
import { KeptSlipPage } from '../../../views/pages/stud/keptSlipPage.tsx';
import { SlipPage } from '../../../views/pages/stud/slipPage.tsx';
import { SlipsPage } from '../../../views/pages/stud/slipsPage.tsx';
import { StudPage, type StudPageProps } from '../../../views/pages/stud/studPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { getEntry } from '../../records/catalogue.ts';
import {
  findSlips,
  getSlip,
  jobsOfSlip,
  MOST_SLIPS,
  NEWEST_SLIPS,
  printedSlip,
} from '../../records/slips/slips.ts';
import { countBack, countOut, countsOf, TOO_FEW } from '../../records/slips/stock.ts';
import { recheckSlip } from '../../shop/recheck.ts';
import { keepSlip } from '../../shop/studs/counterSlip.ts';
import { type Column, sendCsv } from '../request/csv.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { printsWith } from './slipPrint.ts';
import { slipQuestion } from './slipQuestion.ts';
import { studsAsked } from './stud.ts';

/** Counter slips: the answer as a slip, saved under a number, found, printed again, counted out of stock. */
export function slipsRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/stud/slip', to(getNewSlip));
  router.post('/slips', to(postSlip));
  router.get('/slips', to(getSlips));
  router.get('/slips.csv', to(sendSlips));
  router.get('/slips/:number', to(getKeptSlip));
  router.get('/slips/:number/printed', to(getPrinted));
  router.post('/slips/:number/count', to(postCount));
  router.post('/slips/:number/back', to(postBack));
  return router;
}

/** What is typed to save a slip, beside the question it answers. */
const SAVING = ['customer', 'who', 'initials', 'sentId', 'seen'];

/** The question alone, as it was typed. */
function questionIn(fields: Fields): Fields {
  return Object.fromEntries(Object.entries(fields).filter(([name]) => !SAVING.includes(name)));
}

/** What was answered, but for how many lie where: that may change while the slip is open. */
function markOf(slip: CounterSlip): string {
  const text = JSON.stringify(slip, (name, value: unknown) =>
    name === 'stock' || name === 'shelf' ? undefined : value,
  );
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}

/** A slip only for a whole answer; otherwise the form, with what is missing. */
async function getNewSlip(context: PageContext, req: Request, res: Response): Promise<void> {
  await answer(context, req, res, fieldsOf(req.query), async (slip, { frame, typed }) => {
    const saving = { sentId: randomUUID(), seen: markOf(slip) };
    show(context, res, 200, { frame, slip, typed, saving, faults: [] });
  });
}

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;

async function postSlip(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  await answer(context, req, res, questionIn(fields), async (slip, asked) => {
    const { frame, typed, studId } = asked;
    const sentId = SENT_ID.test(fields.sentId ?? '') ? fields.sentId! : randomUUID();
    const seen = markOf(slip);
    const saving = { customer: fields.customer ?? '', who: fields.who ?? '', sentId, seen };
    if (fields.seen !== seen) {
      show(context, res, 409, { frame, slip, typed, saving, faults: [], changed: true });
      return;
    }
    try {
      const kept = await keepSlip(
        context.shop.db,
        { who: saving.who, now: context.now },
        {
          sentId,
          day: todayIn(context),
          customerReference: saving.customer,
          asked: { stackId: typed.stack ?? '', studId, typed, unit: frame.lengthUnit },
          answered: slip,
        },
        printsWith(frame),
      );
      rememberPreference(res, 'initials', saving.who.trim());
      res.redirect(303, `/slips/${slipName(kept.number)}`);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const status = error.code === 'sent-otherwise' ? 409 : 422;
      show(context, res, status, { frame, slip, typed, saving, faults: error.faults });
    }
  });
}

/** The one rule: no slip while anything typed is refused or in doubt, the answer is not whole, or of another stud. */
async function answer(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields,
  give: (
    slip: CounterSlip,
    asked: { readonly frame: Frame; readonly typed: Fields; readonly studId: string },
  ) => Promise<void>,
): Promise<void> {
  const asked = await studsAsked(context, req, fields);
  const gone = isOtherStud(fields, asked.page);
  const page = gone ? { ...asked.page, choices: [], shownId: null, faults: [STUD_GONE] } : asked.page;
  const slip = gone ? null : asked.slip;
  const address = `/stud?${new URLSearchParams(fields)}`;
  const frame = req.method === 'GET' ? page.frame : { ...page.frame, address };
  if (slip !== null) await give(slip, { frame, typed: fields, studId: page.shownId ?? '' });
  else if (page.chosen === null && page.faults.length === 0) res.redirect(303, '/stud');
  else res.status(422).send(renderPage(StudPage({ ...page, frame })));
}

const STUD_GONE: Fault = {
  path: 'stud',
  message: 'The stud asked for is no longer in this list. Press “Work it out”, then choose a stud.',
};

/** Between the answer and its slip the stud may have left the catalog, or its stock run out. */
function isOtherStud({ stud = '' }: Fields, { chosen, faults, shownId }: StudPageProps): boolean {
  return stud !== '' && chosen !== null && faults.length === 0 && shownId !== stud;
}

function show(
  context: PageContext,
  res: Response,
  status: number,
  props: Omit<Parameters<typeof SlipPage>[0], 'at'>,
): void {
  res.status(status).send(renderPage(SlipPage({ ...props, at: context.now().toISOString() })));
}

const PAGE_LENGTH = 30;

async function getSlips(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const frame = await frameOf(req, context);
  try {
    const question = slipQuestion(fields, PAGE_LENGTH);
    const found = await findSlips(context.shop.db, question);
    const sort = question.sort ?? NEWEST_SLIPS;
    res.send(renderPage(SlipsPage({ frame, fields, faults: [], sort, ...found })));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const { faults } = error;
    res
      .status(422)
      .send(renderPage(SlipsPage({ frame, fields, faults, slips: [], more: false, sort: NEWEST_SLIPS })));
  }
}

async function sendSlips(context: PageContext, req: Request, res: Response): Promise<void> {
  const question = slipQuestion(fieldsOf(req.query), MOST_SLIPS);
  const all: SlipLine[] = [];
  let { before } = question;
  for (;;) {
    const { slips, more } = await findSlips(context.shop.db, { ...question, before });
    all.push(...slips);
    if (!more) break;
    before = slips.at(-1)?.number;
  }
  sendCsv(res, 'slips', SLIPS, all);
}

const SLIPS: readonly Column<SlipLine>[] = [
  { name: 'slip', of: (slip) => slipName(slip.number) },
  { name: 'day', of: (slip) => slip.day },
  { name: 'at (UTC)', of: (slip) => slip.at },
  { name: 'answered by', of: (slip) => slip.who },
  { name: 'customer reference', of: (slip) => slip.customerReference },
  { name: 'flexplate stack', of: (slip) => slip.stackName },
  { name: 'stud', of: (slip) => slip.studName },
  { name: 'answer', of: (slip) => FIT_WORD[slip.fits] },
  { name: 'taken out of stock', of: (slip) => slip.counted },
];

/** The slip an address names. */
export async function slipAsked({ shop }: PageContext, typed: string): Promise<KeptSlip> {
  const number = slipNumber(typed);
  const slip = number === null ? null : await getSlip(shop.db, number);
  if (slip === null)
    throw new NoSuchPage(`There is no counter slip "${typed.slice(0, 20)}". Find it under Counter slips.`);
  return slip;
}

async function getKeptSlip(context: PageContext, req: Request, res: Response): Promise<void> {
  await showKept(context, req, res, await slipAsked(context, String(req.params.number)));
}

/** Byte for byte as it was printed when it was saved. */
async function getPrinted(context: PageContext, req: Request, res: Response): Promise<void> {
  const { number } = await slipAsked(context, String(req.params.number));
  res.send(await printedSlip(context.shop.db, number));
}

async function postCount(context: PageContext, req: Request, res: Response): Promise<void> {
  await change(context, req, res, ({ number }, { who = '', toZero }) =>
    countOut(context.shop.db, { who, now: context.now }, { number, toZero: toZero === '1' }),
  );
}

async function postBack(context: PageContext, req: Request, res: Response): Promise<void> {
  await change(context, req, res, ({ number }, { who = '', why = '' }) =>
    countBack(context.shop.db, { who, now: context.now }, { number, why }),
  );
}

async function change(
  context: PageContext,
  req: Request,
  res: Response,
  make: (slip: KeptSlip, fields: Fields) => Promise<unknown>,
): Promise<void> {
  const slip = await slipAsked(context, String(req.params.number));
  const fields = fieldsOf(req.body);
  try {
    await make(slip, fields);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const status = ALREADY.includes(error.code) ? 409 : 422;
    await showKept(context, req, res, slip, { status, fields, error });
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, `/slips/${slipName(slip.number)}#stock`);
}

/** Somebody else was first. */
const ALREADY = ['counted', 'not-out'];

async function showKept(
  context: PageContext,
  req: Request,
  res: Response,
  slip: KeptSlip,
  refused: { readonly status: number; readonly fields: Fields; readonly error: Refusal } | null = null,
): Promise<void> {
  const { db } = context.shop;
  const own = await frameOf(req, context);
  const parts = partsOf(slip);
  const stocked = [];
  for (const part of parts ?? [])
    stocked.push({ ...part, stock: (await getEntry(db, part.kind, part.id))?.body.stock ?? null });
  res.status(refused?.status ?? 200).send(
    renderPage(
      KeptSlipPage({
        frame: { ...own, address: `/slips/${slipName(slip.number)}` },
        slip,
        parts: parts && stocked,
        counts: await countsOf(db, slip.number),
        jobs: await jobsOfSlip(db, slip.number),
        otherwise: recheckSlip(slip),
        fields: refused?.fields ?? {},
        faults: refused?.error.faults ?? [],
        tooFew: refused?.error.code === TOO_FEW,
      }),
    ),
  );
}
