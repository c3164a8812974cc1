import { type NextFunction, type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { AccountPage } from '../../../views/pages/people/accountPage.tsx';
import { FirstKeeperPage, ResendPage, SignInPage } from '../../../views/pages/people/signInPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { ownPassword } from '../../records/people/passwords.ts';
import { addFirstKeeper, changePassword, hasPeople } from '../../records/people/people.ts';
import { beginSession, endSession, endSessions, sessionsOf } from '../../records/people/sessions.ts';
import { personWith } from '../../records/people/signingIn.ts';
import { ownAddress } from '../request/ownAddress.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage, TooManyTries } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { rememberSignedIn, type SignedIn, signedInOf } from '../request/whoSignedIn.ts';
import { resetCommand } from './resetCommand.ts';
import { giveSession, httpsTrap, takeSession } from './sessionCookie.ts';
import { limitTries } from './tries.ts';

const WRONG = 'Name or password is wrong. Enter both again, or ask a manager for a new password.';
const RESEND = /^again\.(.*)$/s;

/** Signing in and out, the first keeper, and what somebody may do about their own account. */
export function signInRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  const tries = limitTries();
  router.get('/sign-in', to(getSignIn));
  router.post(
    '/sign-in',
    tries.address,
    tries.account,
    to((given, req, res) => postSignIn(given, req, res, tries.signedIn)),
  );
  router.post('/sign-out', to(postSignOut));
  router.get('/first', to(getFirst));
  router.post('/first', tries.address, to(postFirst));
  router.get('/account', to(getAccount));
  router.post('/account/password', tries.address, to(postOwnPassword));
  router.post('/account/sign-out', to(postSignOutEverywhere));
  router.use((error: unknown, req: Request, res: Response, next: NextFunction) => {
    if (!(error instanceof TooManyTries)) next(error);
    else void showTooMany(context, req, res, error).catch(next);
  });
  return router;
}

/** The form again, with what was typed and when it is taken again: a form on its way through the sign-in goes along. */
async function showTooMany(
  context: PageContext,
  req: Request,
  res: Response,
  { message }: TooManyTries,
): Promise<void> {
  const fields = fieldsOf(req.body);
  const faults = (path: string) => [{ path, message }];
  if (req.path === '/first') {
    await mustBeFirst(context);
    await showFirst(context, req, res, fields, faults('code'), 429);
  } else if (req.path === '/account/password') {
    await showAccount(context, req, res, mustStand(req), fields, faults('old'), 429);
  } else {
    mustHaveAccounts(context);
    await showSignIn(context, req, res, fields, faults('name'), 429);
  }
}

async function getSignIn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  mustHaveAccounts(context);
  if (!(await hasPeople(db))) {
    res.redirect(303, '/first');
    return;
  }
  const back = ownAddress(fieldsOf(req.query).back);
  if (signedInOf(req) !== null) {
    res.redirect(303, back);
    return;
  }
  await showSignIn(context, req, res, { back }, []);
}

async function postSignIn(
  context: PageContext,
  req: Request,
  res: Response,
  signedIn: (req: Request) => void,
): Promise<void> {
  const { db } = context.shop;
  mustHaveAccounts(context);
  const fields = fieldsOf(req.body);
  const trap = httpsTrap(context.settings, req);
  if (trap !== null) {
    await showSignIn(context, req, res, fields, [{ path: 'name', message: trap }]);
    return;
  }
  const typed = { name: fields.name ?? '', password: fields.password ?? '' };
  const person = await personWith(db, typed, context.now());
  if (person === null) {
    await showSignIn(context, req, res, fields, [{ path: 'name', message: WRONG }]);
    return;
  }
  signedIn(req);
  await begin(context, req, res, person.id);
  const resend = resendOf(fields);
  if (resend === null) {
    res.redirect(303, ownAddress(fields.back));
    return;
  }
  rememberSignedIn(req, { person, mustChoosePassword: false, session: null });
  res.send(renderPage(ResendPage({ frame: await frameOf(req, context), resend })));
}

async function postSignOut(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const session = signedInOf(req)?.session ?? null;
  if (session !== null) await endSession(db, session);
  takeSession(req, res, context.settings);
  res.redirect(303, context.settings.accounts ? '/sign-in' : '/');
}

async function getFirst(context: PageContext, req: Request, res: Response): Promise<void> {
  await mustBeFirst(context);
  await showFirst(context, req, res, {}, []);
}

async function postFirst(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  await mustBeFirst(context);
  const fields = fieldsOf(req.body);
  const code = context.firstCode;
  try {
    if (!code?.is(fields.code ?? '')) {
      throw new Refusal('wrong-code', [
        {
          path: 'code',
          message:
            'That is not the code printed when the program started. Check it again; each start prints a new one.',
        },
      ]);
    }
    const password = await newPassword(fields);
    const person = { name: fields.name ?? '', initials: fields.newInitials ?? '' };
    const { id } = await addFirstKeeper(db, context.now, person, password);
    code.use();
    await begin(context, req, res, id);
    res.redirect(303, '/');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showFirst(context, req, res, fields, error.faults);
  }
}

async function getAccount(context: PageContext, req: Request, res: Response): Promise<void> {
  await showAccount(context, req, res, mustStand(req), fieldsOf(req.query), []);
}

async function postOwnPassword(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const standing = mustStand(req);
  const fields = fieldsOf(req.body);
  const { id, name, initials } = standing.person;
  try {
    const now = await personWith(db, { name, password: fields.old ?? '' }, context.now());
    if (now === null) {
      throw new Refusal('wrong-password', [
        { path: 'old', message: 'That is not your current password. Enter it again.' },
      ]);
    }
    await changePassword(
      db,
      { who: initials, now: context.now },
      { id, password: await newPassword(fields) },
    );
    await begin(context, req, res, id);
    res.redirect(303, standing.mustChoosePassword ? ownAddress(fields.back) : '/account');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await showAccount(context, req, res, standing, fields, error.faults);
  }
}

async function postSignOutEverywhere(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  await endSessions(db, mustStand(req).person.id);
  takeSession(req, res, context.settings);
  res.redirect(303, '/sign-in');
}

/** A session nobody knew of before, whatever the browser brought with it; the one it replaces ends. */
async function begin(context: PageContext, req: Request, res: Response, personId: number): Promise<void> {
  const { db } = context.shop;
  const before = signedInOf(req)?.session ?? null;
  if (before !== null) await endSession(db, before);
  const device = req.headers['user-agent'] ?? '';
  giveSession(req, res, context.settings, await beginSession(db, { personId, device, now: context.now() }));
}

async function showSignIn(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields,
  faults: readonly Fault[],
  refusedAs = 422,
) {
  const page = SignInPage({
    frame: await frameOf(req, context),
    fields,
    faults,
    back: ownAddress(fields.back),
    resend: resendOf(fields),
    resetCommand: resetCommand(context.settings, req),
  });
  res.status(faults.length > 0 ? refusedAs : 200).send(renderPage(page));
}

async function showFirst(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields,
  faults: readonly Fault[],
  refusedAs = 422,
) {
  const page = FirstKeeperPage({ frame: await frameOf(req, context), fields, faults });
  res.set('Cache-Control', 'no-store');
  res.status(faults.length > 0 ? refusedAs : 200).send(renderPage(page));
}

async function showAccount(
  context: PageContext,
  req: Request,
  res: Response,
  standing: SignedIn,
  fields: Fields,
  faults: readonly Fault[],
  refusedAs = 422,
) {
  const { db } = context.shop;
  const { person, mustChoosePassword } = standing;
  const page = AccountPage({
    frame: await frameOf(req, context),
    person,
    mustChoosePassword,
    sessions: await sessionsOf(db, person.id, context.now()),
    back: ownAddress(fields.back),
    fields: faults.length > 0 ? fields : {},
    faults,
  });
  res.set('Cache-Control', 'no-store');
  res.status(faults.length > 0 ? refusedAs : 200).send(renderPage(page));
}

/** Typed twice, so that a slip does not shut somebody out. */
async function newPassword(fields: Fields) {
  const password = await ownPassword(fields.password ?? '');
  if (fields.password === fields.again) return password;
  throw new Refusal('password-differs', [
    { path: 'again', message: 'The two passwords differ. Enter the same one twice.' },
  ]);
}

/** A form that was sent after its session had ended, carried through the sign-in. */
function resendOf(fields: Fields): { action: string; fields: Fields } | null {
  if (fields.action === undefined) return null;
  const typed: Record<string, string> = Object.create(null);
  for (const [name, value] of Object.entries(fields)) {
    const own = RESEND.exec(name)?.[1];
    if (own !== undefined) typed[own] = value;
  }
  return { action: ownAddress(fields.action), fields: typed };
}

function mustHaveAccounts(context: PageContext): void {
  if (context.settings.accounts) return;
  throw new NoSuchPage(
    'Nobody signs in here, because only this computer can reach the program. Set HOST to let others in.',
  );
}

async function mustBeFirst(context: PageContext): Promise<void> {
  mustHaveAccounts(context);
  if (await hasPeople(context.shop.db)) {
    throw new NoSuchPage('This shop already has a manager. Sign in, or ask the manager for an account.');
  }
}

function mustStand(req: Request): SignedIn {
  const standing = signedInOf(req);
  if (standing === null) {
    throw new NoSuchPage(
      'Nobody signs in here, because only this computer can reach the program. Set HOST to let others in.',
    );
  }
  return standing;
}
