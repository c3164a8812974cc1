import { type Request, type Response, Router } from 'express';
import { demoCovers } from '../../data/demo/covers.ts';
import { type JobLine, OPEN_STAGES, STAGES } from '../../shared/words/job.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { FrontPage, type FrontProps } from '../../views/pages/frontPage.tsx';
import { renderPage } from '../../views/render.ts';
import { copyDue } from '../records/backup/copyAway.ts';
import { listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import { countAt, findJobs } from '../records/jobs/findJobs.ts';
import { closeRingDoubt } from '../records/jobs/ringDoubts.ts';
import { ringDoubtsWorstFirst } from '../shop/bending/ringDoubtsRanked.ts';
import { inOtherUnit } from './request/otherUnit.ts';
import { ownAddress } from './request/ownAddress.ts';
import { frameOf, type PageContext, rememberPreference } from './request/pageContext.ts';
import { handledIn } from './request/route.ts';
import { fieldsOf, unitOf } from './request/typed.ts';
import { whoOf } from './request/whoSignedIn.ts';
import { isToSetUp } from './settingUp.ts';

const SHOWN = 8;

/** The front page, and what a person chooses for this tablet. */
export function frontRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/', to(getFront));
  router.post('/jobs/:number/ring-closed', to(postRingClosed));
  router.post('/preferences', postPreferences);
  return router;
}

async function getFront(context: PageContext, req: Request, res: Response): Promise<void> {
  res.send(await frontPage(context, req));
}

async function postRingClosed(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.body);
  const number = String(req.params.number);
  const ctx = { who: whoOf(req, fields.who), now: context.now };
  try {
    await closeRingDoubt(context.shop.db, ctx, { job: number, word: fields.word ?? '' });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    res.status(422).send(await frontPage(context, req, { number, fields, faults: error.faults }));
    return;
  }
  res.redirect(303, '/#rings');
}

function postPreferences(req: Request, res: Response): void {
  const fields = fieldsOf(req.body);
  const unit = unitOf(fields);
  if (unit) rememberPreference(res, 'unit', unit);
  const initials = (fields.initials ?? '').trim();
  if (/^[\p{L}\p{N}.-]{1,8}$/u.test(initials)) rememberPreference(res, 'initials', initials);
  const back = ownAddress(fields.back);
  res.redirect(303, unit ? inOtherUnit(back, unit) : back);
}

async function frontPage(
  context: PageContext,
  req: Request,
  refused: FrontProps['rings']['refused'] = null,
): Promise<string> {
  const { db } = context.shop;
  const { jobs } = await findJobs(db, { stage: OPEN_STAGES, limit: 200 });
  const frame = await frameOf(req, context);
  const families = await listEntries(db, 'family');
  const example = demoCovers.find(
    (cover) => cover.expected === 'face' && families.some((family) => family.id === cover.familyId),
  );
  return renderPage(
    FrontPage({
      frame,
      rings: { ...ringsShown(await ringDoubtsWorstFirst(db, frame.lengthUnit)), refused },
      open: nextFirst(jobs).slice(0, SHOWN),
      begin: frame.demo && (await findJobs(db, { demo: false, limit: 1 })).jobs.length > 0,
      toSetUp: !frame.demo && jobs.length === 0 && !(await hasJobs(db)) && (await isToSetUp(db)),
      openCount: await countAt(db, OPEN_STAGES),
      copyDue: await copyDue(db, context.now(), context.settings.timeZone),
      exampleHref: example ? `/cover/example/${example.id}` : null,
    }),
  );
}

async function hasJobs(db: Db): Promise<boolean> {
  return (await findJobs(db, { limit: 1 })).jobs.length > 0;
}

function ringsShown({ open, closed }: Awaited<ReturnType<typeof ringDoubtsWorstFirst>>) {
  return {
    open: open.map(({ job, bare }) => ({
      number: job.number,
      familyName: job.sections.received?.body.family.name ?? '',
      signedAt: job.sections.signature?.at ?? job.changedAt,
      signedBy: job.sections.signature?.who ?? '',
      withoutRing: bare,
    })),
    closed,
  };
}

/** What is nearest to done first, and among those the longest here. */
function nextFirst(jobs: readonly JobLine[]): JobLine[] {
  return [...jobs].sort(
    (a, b) =>
      STAGES.indexOf(b.stage) - STAGES.indexOf(a.stage) ||
      a.receivedOn.localeCompare(b.receivedOn) ||
      a.id - b.id,
  );
}
