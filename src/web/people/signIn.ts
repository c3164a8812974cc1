import { type Request, type Response, Router } from 'express';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { AccountPage } from '../../../views/pages/people/accountPage.tsx';
import { FirstKeeperPage, ResendPage, SignInPage } from '../../../views/pages/people/signInPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { ownPassword } from '../../records/people/passwords.ts';
import { addFirstKeeper, changePassword, hasPeople } from '../../records/people/people.ts';
import { beginSession, endSession, endSessions, sessionsOf } from '../../records/people/sessions.ts';
import { personWith } from '../../records/people/signingIn.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type House } from '../request/house.ts';
import { ownAddress } from '../request/ownAddress.ts';
import { type Standing, standingOf, stands } from '../request/standing.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { giveSession, takeSession } from './sessionCookie.ts';
import { limitTries } from './tries.ts';

const WRONG = 'There is no account with this name and this password. Type both again, or ask a keeper.';
const RESEND = /^again\.(.*)$/s;

/** Signing in and out, the first keeper, and what somebody may do about their own account. */
export function signInRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;
  const tries = limitTries();

  router.get('/sign-in', async (req, res) => {
    mustHaveAccounts(house);
    if (!(await hasPeople(db))) {
      res.redirect(303, '/first');
      return;
    }
    const back = ownAddress(fieldsOf(req.query).back);
    if (standingOf(req) !== null) {
      res.redirect(303, back);
      return;
    }
    await showSignIn(req, res, { back }, []);
  });

  router.post('/sign-in', tries.address, tries.account, async (req, res) => {
    mustHaveAccounts(house);
    const fields = fieldsOf(req.body);
    const typed = { name: fields.name ?? '', password: fields.password ?? '' };
    const person = await personWith(db, typed, house.now());
    if (person === null) {
      await showSignIn(req, res, fields, [{ path: 'name', message: WRONG }]);
      return;
    }
    await begin(req, res, person.id);
    const resend = resendOf(fields);
    if (resend === null) {
      res.redirect(303, ownAddress(fields.back));
      return;
    }
    stands(req, { person, mustChoosePassword: false, session: null });
    res.send(renderPage(ResendPage({ frame: await frameOf(req, house), resend })));
  });

  router.post('/sign-out', async (req, res) => {
    const session = standingOf(req)?.session ?? null;
    if (session !== null) await endSession(db, session);
    takeSession(res, house.settings);
    res.redirect(303, house.settings.accounts ? '/sign-in' : '/');
  });

  router.get('/first', async (req, res) => {
    await mustBeFirst(house);
    await showFirst(req, res, {}, []);
  });

  router.post('/first', tries.address, async (req, res) => {
    await mustBeFirst(house);
    const fields = fieldsOf(req.body);
    const code = house.firstCode;
    try {
      if (!code?.is(fields.code ?? '')) {
        throw new Refusal('wrong-code', [
          {
            path: 'code',
            message:
              'This is not the code that the program printed when it was started. Look at it again; a new start prints a new one.',
          },
        ]);
      }
      const password = await newPassword(fields);
      const person = { name: fields.name ?? '', initials: fields.newInitials ?? '' };
      const { id } = await addFirstKeeper(db, house.now, person, password);
      code.use();
      await begin(req, res, id);
      res.redirect(303, '/');
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await showFirst(req, res, fields, error.faults);
    }
  });

  router.get('/account', async (req, res) => {
    await showAccount(req, res, mustStand(req), []);
  });

  router.post('/account/password', tries.address, async (req, res) => {
    const standing = mustStand(req);
    const fields = fieldsOf(req.body);
    const { id, name, initials } = standing.person;
    try {
      const now = await personWith(db, { name, password: fields.old ?? '' }, house.now());
      if (now === null) {
        throw new Refusal('wrong-password', [
          { path: 'old', message: 'This is not the password you signed in with. Type that one again.' },
        ]);
      }
      await changePassword(
        db,
        { who: initials, now: house.now },
        { id, password: await newPassword(fields) },
      );
      await begin(req, res, id);
      res.redirect(303, standing.mustChoosePassword ? '/' : '/account');
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await showAccount(req, res, standing, error.faults);
    }
  });

  router.post('/account/sign-out', async (req, res) => {
    await endSessions(db, mustStand(req).person.id);
    takeSession(res, house.settings);
    res.redirect(303, '/sign-in');
  });

  /** A session nobody knew of before, whatever the browser brought with it; the one it replaces ends. */
  async function begin(req: Request, res: Response, personId: number): Promise<void> {
    const before = standingOf(req)?.session ?? null;
    if (before !== null) await endSession(db, before);
    const device = req.headers['user-agent'] ?? '';
    giveSession(res, house.settings, await beginSession(db, { personId, device, now: house.now() }));
  }

  async function showSignIn(req: Request, res: Response, fields: Fields, faults: readonly Fault[]) {
    const page = SignInPage({
      frame: await frameOf(req, house),
      fields,
      faults,
      back: ownAddress(fields.back),
      resend: resendOf(fields),
    });
    res.status(faults.length > 0 ? 422 : 200).send(renderPage(page));
  }

  async function showFirst(req: Request, res: Response, fields: Fields, faults: readonly Fault[]) {
    const page = FirstKeeperPage({ frame: await frameOf(req, house), fields, faults });
    res.status(faults.length > 0 ? 422 : 200).send(renderPage(page));
  }

  async function showAccount(req: Request, res: Response, standing: Standing, faults: readonly Fault[]) {
    const { person, mustChoosePassword } = standing;
    const page = AccountPage({
      frame: await frameOf(req, house),
      person,
      mustChoosePassword,
      sessions: await sessionsOf(db, person.id, house.now()),
      faults,
    });
    res.status(faults.length > 0 ? 422 : 200).send(renderPage(page));
  }

  return router;
}

/** Typed twice, so that a slip does not shut somebody out. */
async function newPassword(fields: Fields) {
  const password = await ownPassword(fields.password ?? '');
  if (fields.password === fields.again) return password;
  throw new Refusal('password-differs', [
    { path: 'again', message: 'The two passwords differ. Type the same one twice.' },
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

function mustHaveAccounts(house: House): void {
  if (house.settings.accounts) return;
  throw new NoSuchPage(
    'Nobody signs in here: the program answers only to this machine. Set HOST to let others in.',
  );
}

async function mustBeFirst(house: House): Promise<void> {
  mustHaveAccounts(house);
  if (await hasPeople(house.shop.db)) {
    throw new NoSuchPage('There is a keeper already. Sign in, or ask the keeper to add an account for you.');
  }
}

function mustStand(req: Request): Standing {
  const standing = standingOf(req);
  if (standing === null) {
    throw new NoSuchPage(
      'Nobody signs in here: the program answers only to this machine. Set HOST to let others in.',
    );
  }
  return standing;
}
