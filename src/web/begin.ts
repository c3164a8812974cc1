import { type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import { BeginPage } from '../../views/pages/beginPage.tsx';
import { renderPage } from '../../views/render.ts';
import { backUp } from '../records/backup/backup.ts';
import { BackupFailed } from '../records/database/errors.ts';
import { type Beginning, beginForReal, beginning } from '../shop/beginForReal.ts';
import { frameOf, type PageContext, rememberPreference } from './request/pageContext.ts';
import { handledIn } from './request/route.ts';
import { type Fields, fieldsOf } from './request/typed.ts';
import { whoOf } from './request/whoSignedIn.ts';

/** From trying the program to running the shop with it: one press, a backup first. */
export function beginRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/begin', to(getBegin));
  router.post('/begin', to(postBegin));
  return router;
}

async function getBegin(context: PageContext, req: Request, res: Response): Promise<void> {
  await show(context, req, res, { plan: await beginning(context.shop.db) });
}

async function postBegin(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db, dataDir } = context.shop;
  const fields = fieldsOf(req.body);
  const who = whoOf(req, fields.who);
  const plan = await beginning(db);
  if (plan === null || who.trim() === '') {
    const faults = plan === null ? [] : [{ path: 'who', message: 'Your initials are empty. Enter them.' }];
    await show(context, req, res, { plan, fields, faults });
    return;
  }
  try {
    const backup = await backUp({
      dataDir,
      databaseUrl: context.settings.databaseUrl,
      reason: 'before-begin',
      now: context.now,
    });
    const done = await beginForReal(db, { who, now: context.now });
    rememberPreference(res, 'initials', who.trim());
    await show(context, req, res, { plan: null, done, backup: backup.folder });
  } catch (error) {
    if (!(error instanceof BackupFailed || error instanceof Refusal)) throw error;
    const faults = [{ path: 'who', message: error.message }];
    await show(context, req, res, { plan: await beginning(db), fields, faults });
  }
}

interface Shown {
  readonly plan: Beginning | null;
  readonly done?: Beginning;
  readonly backup?: string;
  readonly fields?: Fields;
  readonly faults?: readonly Fault[];
}

async function show(context: PageContext, req: Request, res: Response, page: Shown): Promise<void> {
  const { plan, done = null, backup = '', fields = {}, faults = [] } = page;
  const frame = await frameOf(req, context);
  res.status(faults.length > 0 ? 422 : 200);
  res.send(renderPage(BeginPage({ frame, plan, done, backup, fields, faults })));
}
