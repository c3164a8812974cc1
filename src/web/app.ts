import { parse } from 'node:querystring';
import compression from 'compression';
import express, { type Express, type NextFunction, type Request, type Response, type Router } from 'express';
import { Refusal } from '../../shared/words/refusal.ts';
import { ErrorPage } from '../../views/pages/errorPage.tsx';
import type { Resend } from '../../views/pages/people/signInPage.tsx';
import { renderPage } from '../../views/render.ts';
import { listEntries } from '../records/catalogue.ts';
import { unavailable } from '../records/database/database.ts';
import { RecordsUnavailable } from '../records/database/errors.ts';
import { withShopZone } from '../shop/shopZone.ts';
import { soundStuds } from '../shop/studChoices.ts';
import { workWaiting } from '../shop/work/apart.ts';
import { NotWanted, WorkBusy } from '../shop/work/workPool.ts';
import { apiRouter } from './api/api.ts';
import { apiJobsRouter } from './api/jobsApi.ts';
import { recordsRouter } from './backups.ts';
import { beginRouter } from './begin.ts';
import { bendingRouter } from './bending/bending.ts';
import { whatIfRouter } from './bending/whatIf.ts';
import { catalogueRouter } from './catalogue/catalogueRoutes.ts';
import { criteriaRouter } from './catalogue/criteria.ts';
import { importRouter } from './catalogue/import/importRoutes.ts';
import { masterChecksRouter } from './catalogue/masterCheckRoutes.ts';
import { studiesRouter } from './catalogue/studyRoutes.ts';
import { coverRouter } from './cover/cover.ts';
import { frontRouter } from './front.ts';
import { howRouter } from './how/how.ts';
import { inspectionRouter } from './inspection/listRoutes.ts';
import { jobsRouter } from './job/jobRoutes.ts';
import { filesRouter } from './job/photoRoutes.ts';
import { sheetRouter } from './job/sheet.ts';
import { measuringRouter } from './measuring/measuring.ts';
import { accessControl } from './people/accessControl.ts';
import { peopleRouter } from './people/peopleRoutes.ts';
import { signInRouter } from './people/signIn.ts';
import { readForm, typedForm } from './people/signInAsked.ts';
import { addressesToType, ownNames } from './request/addresses.ts';
import { assetsRouter } from './request/assets.ts';
import { ownAddress } from './request/ownAddress.ts';
import { frameOf, type PageContext, sittingGoesOn, strangersFrame } from './request/pageContext.ts';
import { NoSuchPage, NotForThisRole, OtherSite, TooManyTries } from './request/pageErrors.ts';
import { readToEnd } from './request/readToEnd.ts';
import { headers, onlyOwnNames, onlyOwnPagesWrite } from './request/security.ts';
import { signsAsWhoSignedIn } from './request/whoSignedIn.ts';
import { settingUpRouter } from './settingUp.ts';
import { shelfRouter } from './shelf/shelfRoutes.ts';
import { slipsRouter } from './stud/slipRoutes.ts';
import { studRouter } from './stud/stud.ts';
import { costsRouter } from './trends/costRoutes.ts';
import { otherLimitRouter } from './trends/otherLimitRoutes.ts';
import { trendsRouter } from './trends/trendRoutes.ts';
import { wrongRouter } from './trends/wrongRoutes.ts';

/** Four hundred stations with every field filled. */
const QUERY_FIELDS = 6000;

/** In bytes; a module of a few lines is half as long compressed. */
const SHORTEST_COMPRESSED = 256;

/** The pages, each area with its own routes. */
const PAGES: readonly ((context: PageContext) => Router)[] = [
  signInRouter,
  peopleRouter,
  frontRouter,
  beginRouter,
  settingUpRouter,
  howRouter,
  coverRouter,
  bendingRouter,
  whatIfRouter,
  studRouter,
  slipsRouter,
  sheetRouter,
  filesRouter,
  measuringRouter,
  jobsRouter,
  shelfRouter,
  inspectionRouter,
  masterChecksRouter,
  importRouter,
  studiesRouter,
  catalogueRouter,
  criteriaRouter,
  costsRouter,
  wrongRouter,
  otherLimitRouter,
  trendsRouter,
  recordsRouter,
];

/** The whole program as one request handler. */
export function app(asked: PageContext): Express {
  const { settings, look } = withShopZone(asked.shop.db, asked.settings);
  const context = { ...asked, settings };
  const server = express();
  server.disable('x-powered-by');
  // The address of whoever asks, where a proxy of this machine stands between; from elsewhere it is not believed.
  server.set('trust proxy', 'loopback');
  server.set('query parser', (text: string) => parse(text, '&', '=', { maxKeys: QUERY_FIELDS }));
  server.use(readToEnd);
  server.use(headers);
  server.use(onlyOwnNames(ownNames(settings), (port) => addressesToType(settings, port)));
  server.use(onlyOwnPagesWrite(settings.publicUrl));
  server.use(compression({ threshold: SHORTEST_COMPRESSED }));
  server.use('/assets', assetsRouter());
  server.get('/health', (_req, res) => getHealth(context, res));
  server.use(async (_req, _res, next) => {
    // Where it cannot be read, neither can what is asked for, and that is told; the zone stays as it was.
    await look().catch(() => undefined);
    next();
  });
  server.use(accessControl(context));
  interfaceOf(server, context);
  server.use(readForm);
  server.use(signsAsWhoSignedIn);
  server.use(sittingGoesOn);
  server.use(neverKept);
  for (const router of PAGES) server.use(router(context));
  server.use(noSuchPage);
  server.use((error: unknown, req: Request, res: Response, next: NextFunction) => {
    if (res.headersSent) next(error);
    else if (error instanceof NotWanted) res.end();
    else void sayError(context, error, req, res);
  });
  return server;
}

/** The JSON interface: calls on jobs and slips, then those that keep nothing. */
function interfaceOf(server: Express, { shop, settings, now }: PageContext): void {
  const needs = {
    db: shop.db,
    now,
    publicUrl: settings.publicUrl,
    // The shop may choose another while the program runs.
    get timeZone() {
      return settings.timeZone;
    },
  };
  server.use('/api', apiJobsRouter(needs));
  server.use(
    '/api',
    apiRouter({
      catalogueKit: async () => ({
        nuts: await listEntries(shop.db, 'nut'),
        washers: await listEntries(shop.db, 'washer'),
      }),
      catalogueStuds: async () =>
        soundStuds(await listEntries(shop.db, 'stud')).map(({ id, body }) => ({ id, stud: body.stud })),
    }),
  );
}

async function getHealth({ shop }: PageContext, res: Response): Promise<void> {
  await shop.db.selectFrom('schema_migration').select('number').limit(1).execute();
  res.set('Cache-Control', 'no-store').type('text').send(`well\n${queueInWords()}\n`);
}

function neverKept(_req: Request, res: Response, next: NextFunction): void {
  res.set('Cache-Control', 'private, no-cache');
  res.vary('HX-Request');
  next();
}

function noSuchPage(): never {
  throw new NoSuchPage(
    'There is no such page. Go to the front page to check a cover, find a stud or open a job.',
  );
}

/** `work: 1 running, 3 waiting for people, 0 for scripts`: for whoever watches the program. */
function queueInWords(): string {
  const { running, people, scripts } = workWaiting();
  return `work: ${running} running, ${people} waiting for people, ${scripts} for scripts`;
}

/** Every failure is a page with one sentence: what happened, and what to do. */
async function sayError(context: PageContext, thrown: unknown, req: Request, res: Response): Promise<void> {
  const error = unavailable(thrown);
  const { status, title, sentence } = inWords(error, req.method);
  if (status >= 500 && !(error instanceof WorkBusy)) console.error(error);
  if (error instanceof WorkBusy) res.set('Retry-After', String(error.retryAfterS));
  const resend = status >= 500 && !isUnsure(error) ? await unsent(req, res) : null;
  // The frame of a page is read from the records too; where they are away a bare one does.
  const frame = await frameOf(req, context).catch(() => strangersFrame(req));
  res.status(status).send(renderPage(ErrorPage({ frame, title, sentence, resend })));
}

const isUnsure = (error: unknown) => error instanceof RecordsUnavailable && error.code === 'unsure';

/** The form that was not saved, so that its page can send it again; never one with a password. */
async function unsent(req: Request, res: Response): Promise<Resend | null> {
  if (req.method !== 'POST') return null;
  const fields = await typedForm(req, res);
  return fields === null || 'password' in fields ? null : { action: ownAddress(req.originalUrl), fields };
}

function inWords(error: unknown, method: string): { status: number; title: string; sentence: string } {
  if (error instanceof NoSuchPage) return { status: 404, title: 'Page not found', sentence: error.message };
  if (error instanceof NotForThisRole)
    return { status: 403, title: 'Not allowed for your role', sentence: error.message };
  if (error instanceof OtherSite) return { status: 403, title: 'Not saved', sentence: error.message };
  if (error instanceof TooManyTries) return { status: 429, title: 'Too many tries', sentence: error.message };
  if (error instanceof WorkBusy)
    return {
      status: 503,
      title: 'Busy',
      sentence: 'Too many covers are being worked out just now. Load the page again in a few seconds.',
    };
  if (error instanceof RecordsUnavailable)
    return {
      status: 503,
      title: notKept(error, method),
      sentence: error.message,
    };
  if (error instanceof Refusal) {
    return {
      status: error.code === 'not-found' ? 404 : 422,
      title: error.code === 'not-found' ? 'Not found' : 'Not saved',
      sentence: error.message,
    };
  }
  const status = statusOf(error);
  if (status === 413) {
    return {
      status,
      title: 'Too much to send',
      sentence: 'That is more than any form here takes. Send less at a time.',
    };
  }
  if (status >= 400 && status < 500) {
    return {
      status,
      title: 'Not readable',
      sentence: 'The page sent something that can’t be read. Go back, reload the page and send it again.',
    };
  }
  return {
    status: 500,
    title: 'Something went wrong',
    sentence:
      'The program made a mistake, and nothing was saved. Go back and try again. If it happens again, restart the program.',
  };
}

function notKept({ code }: RecordsUnavailable, method: string): string {
  if (code === 'unsure') return 'May not be saved';
  return method === 'POST' ? 'Not saved' : 'Records not available';
}

function statusOf(error: unknown): number {
  if (typeof error !== 'object' || error === null || !('status' in error)) return 500;
  return typeof error.status === 'number' ? error.status : 500;
}
