import { type Request, type Response, Router } from 'express';
import type { Person, Role } from '../../../shared/words/people.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  PeoplePage,
  PeopleWithoutAccounts,
  PersonPage,
  type ToldOnce,
} from '../../../views/pages/people/peoplePage.tsx';
import { renderPage } from '../../../views/render.ts';
import { startPassword } from '../../records/people/passwords.ts';
import {
  addPerson,
  getPerson,
  listPeople,
  peopleHistory,
  reinstatePerson,
  retirePerson,
  revisePerson,
} from '../../records/people/people.ts';
import { resetPassword } from '../../records/people/resetPassword.ts';
import { endSessions, sessionsOf } from '../../records/people/sessions.ts';
import { issueToken, listTokens, withdrawToken } from '../../records/people/tokens.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { signedInOf, whoOf } from '../request/whoSignedIn.ts';
import { ToldToKeeper } from './toldOnce.ts';

const HISTORY_LENGTH = 100;

const told = new WeakMap<PageContext, ToldToKeeper>();

/** The people of the shop and the tokens of its scripts: a keeper's page. */
export function peopleRouter(context: PageContext): Router {
  const router = Router();
  const to = handledIn(context);
  router.get('/people', to(getPeople));
  router.post('/people', to(postPerson));
  router.get('/people/:id', to(getOnePerson));
  router.post('/people/:id', to(postChanges));
  router.post('/people/:id/retire', to(postRetire));
  router.post('/people/:id/reinstate', to(postReinstate));
  router.post('/people/:id/sign-out', to(postSignOut));
  router.post('/people/:id/password', to(postPassword));
  router.post('/tokens', to(postToken));
  router.post('/tokens/:id/withdraw', to(postWithdrawToken));
  return router;
}

async function getPeople(context: PageContext, req: Request, res: Response): Promise<void> {
  if (!context.settings.accounts) {
    res.send(renderPage(PeopleWithoutAccounts({ frame: await frameOf(req, context) })));
    return;
  }
  await showPeople(context, req, res, {}, []);
}

async function postPerson(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  await attempt(
    context,
    async () => {
      const { typed, password } = await startPassword();
      const person = {
        name: fields.name ?? '',
        initials: fields.newInitials ?? '',
        role: fields.role as Role,
      };
      const added = await addPerson(db, ctxOf(context, req, fields), person, password);
      tell(context, req, res, '/people', { kind: 'password', of: added.name, secret: typed });
    },
    (faults) => showPeople(context, req, res, fields, faults),
  );
}

async function getOnePerson(context: PageContext, req: Request, res: Response): Promise<void> {
  await showPerson(context, req, res, await mustFind(context, req), {}, []);
}

async function postChanges(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  await change(context, req, res, (person, fields) =>
    revisePerson(db, ctxOf(context, req, fields), {
      id: person.id,
      fromRevision: Number(fields.from),
      name: fields.name ?? '',
      role: fields.role as Role,
    }),
  );
}

async function postRetire(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const asked = fieldsOf(req.body);
  if (asked.retire !== 'yes') {
    await showPerson(context, req, res, await mustFind(context, req), asked, [], true);
    return;
  }
  await change(context, req, res, (person, fields) =>
    retirePerson(db, ctxOf(context, req, fields), { id: person.id, fromRevision: Number(fields.from) }),
  );
}

async function postReinstate(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  await change(context, req, res, (person, fields) =>
    reinstatePerson(db, ctxOf(context, req, fields), { id: person.id, fromRevision: Number(fields.from) }),
  );
}

async function postSignOut(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  await change(context, req, res, (person) => endSessions(db, person.id));
}

async function postPassword(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const person = await mustFind(context, req);
  const fields = fieldsOf(req.body);
  await attempt(
    context,
    async () => {
      const reset = await resetPassword(db, ctxOf(context, req, fields), person.id);
      const { typed: secret, withdrawn } = reset;
      const path = `/people/${person.id}`;
      tell(context, req, res, path, { kind: 'password', of: person.name, secret, withdrawn });
    },
    (faults) => showPerson(context, req, res, person, fields, faults),
  );
}

async function postToken(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  await attempt(
    context,
    async () => {
      const token = {
        name: fields.tokenName ?? '',
        personId: /^\d{1,9}$/.test(fields.tokenPerson ?? '') ? Number(fields.tokenPerson) : 0,
        role: fields.tokenRole as Role,
      };
      const secret = await issueToken(db, ctxOf(context, req, fields), token);
      tell(context, req, res, '/people', { kind: 'token', of: token.name, secret });
    },
    (faults) => showPeople(context, req, res, fields, faults),
  );
}

async function postWithdrawToken(context: PageContext, req: Request, res: Response): Promise<void> {
  const { db } = context.shop;
  mustHaveAccounts(context);
  await withdrawToken(db, ctxOf(context, req, {}), idOf(req));
  res.redirect(303, '/people#tokens');
}

async function change(
  context: PageContext,
  req: Request,
  res: Response,
  edit: (person: Person, fields: Fields) => Promise<unknown>,
): Promise<void> {
  const person = await mustFind(context, req);
  const fields = fieldsOf(req.body);
  await attempt(
    context,
    async () => {
      await edit(person, fields);
      res.redirect(303, `/people/${person.id}`);
    },
    (faults) => showPerson(context, req, res, person, fields, faults),
  );
}

async function attempt(
  context: PageContext,
  make: () => Promise<void>,
  refuse: (faults: readonly Fault[]) => Promise<void>,
): Promise<void> {
  mustHaveAccounts(context);
  try {
    await make();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    await refuse(error.faults);
  }
}

async function showPeople(
  context: PageContext,
  req: Request,
  res: Response,
  fields: Fields,
  faults: readonly Fault[],
): Promise<void> {
  const { db } = context.shop;
  const toldOnce = toldOn(context, req, '/people');
  const page = PeoplePage({
    frame: await frameOf(req, context),
    people: await listPeople(db),
    tokens: await listTokens(db),
    history: await peopleHistory(db, HISTORY_LENGTH),
    fields,
    faults,
    toldOnce,
  });
  answer(res, faults, toldOnce, renderPage(page));
}

async function showPerson(
  context: PageContext,
  req: Request,
  res: Response,
  person: Person,
  fields: Fields,
  faults: readonly Fault[],
  retiring = false,
): Promise<void> {
  const { db } = context.shop;
  const toldOnce = toldOn(context, req, `/people/${person.id}`);
  const page = PersonPage({
    frame: await frameOf(req, context),
    person,
    sessions: await sessionsOf(db, person.id, context.now()),
    fields,
    faults,
    toldOnce,
    retiring,
  });
  answer(res, faults, toldOnce, renderPage(page), retiring);
}

async function mustFind(context: PageContext, req: Request): Promise<Person> {
  const { db } = context.shop;
  mustHaveAccounts(context);
  const person = await getPerson(db, idOf(req));
  if (person === null) throw new NoSuchPage('There is no such person here. See the list under People.');
  return person;
}

function mustHaveAccounts(context: PageContext): void {
  if (context.settings.accounts) return;
  throw new NoSuchPage(
    'Nobody signs in here, because only this computer can reach the program. Set HOST to let others in.',
  );
}

function ctxOf(context: PageContext, req: Request, fields: Fields) {
  return { who: whoOf(req, fields.who), why: fields.why ?? '', now: context.now };
}

/** A page with a secret on it is kept nowhere on its way. */
function answer(
  res: Response,
  faults: readonly Fault[],
  toldOnce: ToldOnce | null,
  html: string,
  asks = false,
): void {
  if (toldOnce !== null) res.set('Cache-Control', 'no-store');
  res.status(faults.length > 0 || asks ? 422 : 200).send(html);
}

/** Leads to the page that shows a secret, as often as it is loaded in the next minutes. */
function tell(context: PageContext, req: Request, res: Response, path: string, secret: ToldOnce): void {
  const session = signedInOf(req)?.session ?? '';
  const kept = told.get(context) ?? new ToldToKeeper();
  told.set(context, kept);
  kept.keep(session, path, secret, context.now());
  res.redirect(303, `${path}#told-once`);
}

function toldOn(context: PageContext, req: Request, path: string): ToldOnce | null {
  return told.get(context)?.on(signedInOf(req)?.session ?? null, path, context.now()) ?? null;
}

function idOf(req: Request): number {
  const typed = String(req.params.id);
  return /^\d{1,9}$/.test(typed) ? Number(typed) : 0;
}
