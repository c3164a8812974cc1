import { type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { ENTRY_WORD } from '../../../shared/words/terms.ts';
import type { RestsOn } from '../../../shared/words/trends.ts';
import { WrongJobsPage, WrongListPage } from '../../../views/pages/trends/wrongPages.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { allWrong, closeWrong, markWrong, restedOnNames, wrongNumbered } from '../../records/trends/wrong.ts';
import { restedOn } from '../../shop/trends/wrongJudged.ts';
import { frameOf, type PageContext, rememberPreference, todayIn } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
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
  readonly name: string;
}

const ENTRIES = ['gauge', 'family', 'stack', 'stud'] as const;
const CALCULATIONS = ['cover-calc', 'plate-calc', 'stud-calc'] as const;

/** Everything that a job can rest on. */
async function thingsIn(db: Db): Promise<readonly Thing[]> {
  const things: Thing[] = [];
  for (const what of ENTRIES) {
    const word = ENTRY_WORD[what].one;
    for (const { id, name } of await listEntries(db, what, { retired: true })) {
      things.push({ what, id, name: `${word.slice(0, 1).toUpperCase()}${word.slice(1)}: ${name}` });
    }
  }
  things.push({ what: 'criteria', id: 'shop', name: 'Shop limits' });
  for (const what of CALCULATIONS) {
    for (const id of await restedOnNames(db, what)) things.push({ what, id, name: `Calculation ${id}` });
  }
  return things;
}

const keyOf = ({ what, id }: Thing) => `${what} ${id}`;

async function postWrong(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const { thing = '', since = '', reason = '', who = '' } = fields;
  try {
    const found = (await thingsIn(db)).find((one) => keyOf(one) === thing);
    if (found === undefined) {
      throw new Refusal('no-thing', [
        { path: 'thing', message: 'What was wrong: choose one from the list.' },
      ]);
    }
    const number = await markWrong(db, { who, now: context.now }, { ...found, since, reason });
    rememberPreference(res, 'initials', who.trim());
    res.redirect(303, `/wrong/${number}`);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showAll(context, req, res, fields, withInitials(error.faults, who));
  }
}

async function showAll(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields = {},
  faults: readonly Fault[] = [],
): Promise<void> {
  const { db } = context.shop;
  const things = (await thingsIn(db)).map((one) => ({ value: keyOf(one), label: one.name }));
  const page = WrongListPage({
    frame: { ...(await frameOf(req, context)), address: '/wrong' },
    all: await allWrong(db),
    things: [{ value: '', label: 'choose' }, ...things],
    fields: { since: todayIn(context), ...fields },
    faults,
  });
  res.status(faults.length > 0 ? 422 : 200).send(renderPage(page));
}

async function postClosed(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const number = Number(req.params.number);
  const { job = '', word = '', who = '' } = fields;
  try {
    const closed = { number, jobId: Number(job), word };
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
  res.status(status).send(renderPage(WrongJobsPage({ frame, wrong, jobs, fields, faults })));
}
