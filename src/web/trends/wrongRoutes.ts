import { type Request, type Response, Router } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import { dayIn, printDay } from '../../../shared/words/day.ts';
import { RIGHT_GAUGE } from '../../../shared/words/fields/wrong.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { ENTRY_WORD } from '../../../shared/words/terms.ts';
import type { RestsOn } from '../../../shared/words/trends/trends.ts';
import { WrongJobsPage, WrongListPage } from '../../../views/pages/trends/wrongPages.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { renderPage } from '../../../views/render.ts';
import { entryHistory, listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { CRITERIA_ID } from '../../records/shopCriteria.ts';
import { allWrong, closeWrong, markWrong, restedOnNames, wrongNumbered } from '../../records/trends/wrong.ts';
import { RIGHT_GAUGE_EXPECTED } from '../../shop/doubts/coverExpected.ts';
import { slipsRestedOn } from '../../shop/trends/slipsAgain.ts';
import { restedOn } from '../../shop/trends/wrongJudged.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { readBody } from '../request/bodyForm.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';

/** What was found to be wrong, and the jobs that rested on it. */
export function wrongRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get(
    '/wrong',
    to((...asked) => showAll(...asked)),
  );
  router.post('/wrong', to(postWrong));
  router.get(
    '/wrong/:number',
    to((...asked) => showJobs(...asked)),
  );
  router.post('/wrong/:number/closed', to(postClosed));
  return router;
}

interface Thing {
  readonly what: RestsOn;
  readonly id: string;
  readonly revision: number | null;
  readonly name: string;
}

const ENTRIES = ['gauge', 'family', 'stack', 'stud'] as const;
const CALCULATIONS = ['cover-calc', 'plate-calc', 'stud-calc'] as const;

/** Everything that a job can rest on. */
async function thingsIn(db: Db, timeZone: string): Promise<readonly Thing[]> {
  const things: Thing[] = [];
  for (const what of ENTRIES) {
    const word = ENTRY_WORD[what].one;
    for (const { id, name } of await listEntries(db, what, { retired: true })) {
      things.push({
        what,
        id,
        revision: null,
        name: `${word.slice(0, 1).toUpperCase()}${word.slice(1)}: ${name}`,
      });
    }
  }
  things.push({ what: 'criteria', id: CRITERIA_ID, revision: null, name: 'Shop limits (every revision)' });
  for (const { revision, at, who } of (await entryHistory(db, 'criteria', CRITERIA_ID)).toReversed()) {
    const name = `Shop limits, revision ${revision} (${who}, ${printDay(dayIn(timeZone, at))})`;
    things.push({ what: 'criteria', id: CRITERIA_ID, revision, name });
  }
  for (const what of CALCULATIONS) {
    for (const id of await restedOnNames(db, what))
      things.push({ what, id, revision: null, name: `Calculation ${id}` });
  }
  return things;
}

const keyOf = ({ what, id, revision }: Thing) => `${what} ${id}${revision === null ? '' : ` ${revision}`}`;

async function postWrong(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const { thing = '', since = '', reason = '', who = '' } = fields;
  const form = new TypedForm(fields, await frameOf(req, context));
  const right = readBody(form, RIGHT_GAUGE);
  askAboutFigures(form, RIGHT_GAUGE, RIGHT_GAUGE_EXPECTED);
  const found = (await thingsIn(db, context.settings.timeZone)).find((one) => keyOf(one) === thing);
  if (found === undefined) form.fault('thing', 'What was wrong: choose one from the list.');
  else if (found.what !== 'gauge' && (right.biasMm !== null || right.calibrationUMm !== null))
    form.fault(
      'thing',
      `What is right of a gauge is entered, but ${found.name} is none. Choose the gauge, or leave that blank.`,
    );
  if (form.faults.length > 0 || found === undefined) {
    await showAll(context, req, res, { fields, faults: withInitials(form.faults, who), doubts: form.doubts });
    return;
  }
  try {
    const number = await markWrong(db, { who, now: context.now }, { ...found, ...right, since, reason });
    rememberPreference(res, 'initials', who.trim());
    res.redirect(303, `/wrong/${number}`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showAll(context, req, res, { fields, faults: withInitials(error.faults, who) });
  }
}

async function showAll(
  context: PageContext,
  req: Request,
  res: Response,
  {
    fields = {},
    faults = [],
    doubts = [],
  }: {
    readonly fields?: Fields;
    readonly faults?: readonly Fault[];
    readonly doubts?: readonly DoubtedLength[];
  } = {},
): Promise<void> {
  const { db } = context.shop;
  const things = (await thingsIn(db, context.settings.timeZone)).map((one) => ({
    value: keyOf(one),
    label: one.name,
  }));
  const own = await frameOf(req, context);
  const page = WrongListPage({
    frame: { ...own, ...writingIn(fields, own), address: '/wrong' },
    all: await allWrong(db),
    things: [{ value: '', label: 'choose' }, ...things],
    fields: { since: todayIn(context), ...fields },
    faults,
    doubts,
  });
  res.status(faults.length > 0 ? 422 : 200).send(renderPage(page));
}

async function postClosed(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const number = Number(req.params.number);
  const { job = '', slip, word = '', who = '' } = fields;
  try {
    const which = slip === undefined ? { jobId: Number(job) } : { slipNumber: Number(slip) };
    const closed = { number, ...which, word };
    await closeWrong(context.shop.db, { who, now: context.now }, closed, context.settings.timeZone);
    rememberPreference(res, 'initials', who.trim());
    res.redirect(303, `/wrong/${number}`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showJobs(
      context,
      req,
      res,
      fields,
      withInitials(error.faults, who),
      error.code === 'closed-already' ? 409 : 422,
    );
  }
}

async function showJobs(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields = {},
  faults: readonly Fault[] = [],
  status = 200,
): Promise<void> {
  const { db } = context.shop;
  const wrong = await wrongNumbered(db, Number(req.params.number));
  const frame = { ...(await frameOf(req, context)), address: `/wrong/${wrong.number}` };
  const jobs = await restedOn(db, wrong, frame);
  const slips = await slipsRestedOn(db, wrong, frame.timeZone);
  res.status(status).send(renderPage(WrongJobsPage({ frame, wrong, jobs, slips, fields, faults })));
}
