import { parse } from 'cookie';
import { type NextFunction, type Request, type RequestHandler, type Response, Router } from 'express';
import { mayAs, ROLE_WORD, type Role } from '../../../shared/words/people.ts';
import { hasPeople } from '../../records/people/people.ts';
import { findSession } from '../../records/people/sessions.ts';
import { findToken } from '../../records/people/tokens.ts';
import { ApiError, errorBody } from '../request/apiErrors.ts';
import { atTheMachine } from '../request/atTheMachine.ts';
import type { PageContext } from '../request/pageContext.ts';
import { NoSuchPage, NotForThisRole } from '../request/pageErrors.ts';
import { rememberSignedIn, signedInOf } from '../request/whoSignedIn.ts';
import { LEAST_ROLE, type Least } from './roles.ts';
import { SESSION } from './sessionCookie.ts';
import { askToSignIn } from './signInAsked.ts';

const KINDS: readonly Least[] = ['anyone', 'reader', 'recorder', 'keeper'];
/** Never without an account, or a stranger behind a proxy could make one. */
const PEOPLE = /^\/(people|tokens|account)(\/|$)/i;
const PASSWORD_ROUTES = ['/account', '/account/password'];

/**
 * Who may come in where people sign in. One place: it finds who sent the request, and lets them by when the table of
 * roles says so. Without a table entry nobody comes by.
 */
export function accessControl(context: PageContext): Router {
  const router = Router();
  if (!context.settings.accounts) return router;
  const anybodyYet = peopleKnown(context);
  router.use(async (req: Request, _res: Response, next: NextFunction): Promise<void> => {
    await findWhoSignedIn(context, req);
    next();
  });
  router.use(tableOf(LEAST_ROLE));
  const decide = async (req: Request, res: Response, next: NextFunction): Promise<void> => {
    const least = needed.get(req) ?? null;
    const alone =
      signedInOf(req) === null &&
      atTheMachine(context.settings, req) &&
      !PEOPLE.test(req.path) &&
      !(await anybodyYet());
    if (least === 'anyone' || alone) {
      next();
      return;
    }
    const api = isApi(req);
    if (!(await anybodyYet())) {
      if (api) throw noAccounts();
      res.redirect(303, '/first');
      return;
    }
    const signedIn = signedInOf(req);
    if (signedIn === null) {
      if (api) throw signInNeeded();
      await askToSignIn(context, req, res);
      return;
    }
    if (least === null) throw nothingThere(req);
    if (!mayAs(signedIn.person.role, least)) throw api ? roleNeeded(least) : new NotForThisRole(least);
    if (signedIn.mustChoosePassword && !PASSWORD_ROUTES.includes(req.path)) {
      if (api) throw signInNeeded();
      const asked = req.method === 'GET' ? `?back=${encodeURIComponent(req.originalUrl)}` : '';
      res.redirect(303, `/account${asked}`);
      return;
    }
    next();
  };
  const inJson = (error: unknown, req: Request, res: Response, next: NextFunction): void => {
    if (!isApi(req) || res.headersSent) {
      next(error);
      return;
    }
    const { status, body } = errorBody(error);
    if (status === 401) res.set('WWW-Authenticate', 'Bearer');
    res.set('Cache-Control', 'no-store').status(status).json(body);
  };
  router.use(decide);
  router.use(inJson);
  return router;
}

/** What the table asks of a request, once its router has been gone through. */
const needed = new WeakMap<Request, Least>();

/** The table as a router, so that paths are read here exactly as where they are served. */
function tableOf(roles: Readonly<Record<string, Least>>): Router {
  const router = Router();
  for (const [route, least] of Object.entries(roles)) {
    const [method, path] = route.split(' ') as ['GET' | 'POST' | 'PUT', string];
    const raise: RequestHandler = (req, _res, next) => {
      const before = needed.get(req) ?? 'anyone';
      needed.set(req, KINDS.indexOf(least) > KINDS.indexOf(before) ? least : before);
      next();
    };
    router[method.toLowerCase() as 'get' | 'post' | 'put'](path, raise);
  }
  return router;
}

async function findWhoSignedIn(context: PageContext, req: Request): Promise<void> {
  const { db } = context.shop;
  const said = req.headers.authorization;
  // A script says who it is with every call; a cookie beside that does not count.
  if (said !== undefined) {
    const token = /^Bearer ([\w-]{20,100})$/i.exec(said)?.[1];
    const person = token && isApi(req) ? await findToken(db, token, context.now()) : null;
    if (person) rememberSignedIn(req, { person, mustChoosePassword: false, session: null });
    return;
  }
  const session = parse(req.headers.cookie ?? '')[SESSION];
  const found = session ? await findSession(db, session, context.now()) : null;
  if (found && session) rememberSignedIn(req, { ...found, session });
}

/** Asked at every request until there is somebody, and never again. */
function peopleKnown(context: PageContext): () => Promise<boolean> {
  let known = false;
  return async () => {
    known ||= await hasPeople(context.shop.db);
    return known;
  };
}

function isApi(req: Request): boolean {
  return /^\/api(\/|$)/i.test(req.path);
}

function noAccounts(): ApiError {
  return new ApiError(
    401,
    'no-accounts',
    'Nobody has an account yet. Open /first in a browser and make the first manager.',
  );
}

function signInNeeded(): ApiError {
  return new ApiError(
    401,
    'sign-in-needed',
    'This call has no valid token. Ask a manager for one and send it as Authorization: Bearer.',
  );
}

function roleNeeded(least: Role): ApiError {
  return new ApiError(
    403,
    'role-needed',
    `This call needs the role ${ROLE_WORD[least]}. Ask a manager for a token that has it.`,
  );
}

function nothingThere(req: Request): Error {
  const path = req.path.slice(0, 100);
  return isApi(req)
    ? new ApiError(
        404,
        'no-such-path',
        `There is no ${req.method} ${path}. All calls are listed in /api/openapi.json.`,
      )
    : new NoSuchPage(
        'There is no such page. Go to the front page to check a cover, find a stud or open a job.',
      );
}
