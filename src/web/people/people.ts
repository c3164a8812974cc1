import { type Request, type Response, Router } from 'express';
import type { Person, Role } from '../../../shared/words/people.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  PeoplePage,
  PeopleWithoutDoors,
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
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type House } from '../request/house.ts';
import { whoOf } from '../request/standing.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';

const HISTORY_LENGTH = 100;

/** The people of the shop and the tokens of its scripts: a keeper's page. */
export function peopleRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.get('/people', async (req, res) => {
    if (!house.settings.accounts) {
      res.send(renderPage(PeopleWithoutDoors({ frame: await frameOf(req, house) })));
      return;
    }
    await showPeople(req, res, {}, []);
  });

  router.post('/people', async (req, res) => {
    const fields = fieldsOf(req.body);
    await attempt(
      async () => {
        const { typed, password } = await startPassword();
        const person = {
          name: fields.name ?? '',
          initials: fields.newInitials ?? '',
          role: fields.role as Role,
        };
        const added = await addPerson(db, ctxOf(req, fields), person, password);
        await showPeople(req, res, {}, [], { kind: 'password', of: added.name, secret: typed });
      },
      (faults) => showPeople(req, res, fields, faults),
    );
  });

  router.get('/people/:id', async (req, res) => {
    await showPerson(req, res, await mustFind(req), {}, []);
  });

  router.post('/people/:id', async (req, res) => {
    await change(req, res, (person, fields) =>
      revisePerson(db, ctxOf(req, fields), {
        id: person.id,
        fromRevision: Number(fields.from),
        name: fields.name ?? '',
        role: fields.role as Role,
      }),
    );
  });

  router.post('/people/:id/retire', async (req, res) => {
    await change(req, res, (person, fields) =>
      retirePerson(db, ctxOf(req, fields), { id: person.id, fromRevision: Number(fields.from) }),
    );
  });

  router.post('/people/:id/reinstate', async (req, res) => {
    await change(req, res, (person, fields) =>
      reinstatePerson(db, ctxOf(req, fields), { id: person.id, fromRevision: Number(fields.from) }),
    );
  });

  router.post('/people/:id/sign-out', async (req, res) => {
    await change(req, res, (person) => endSessions(db, person.id));
  });

  router.post('/people/:id/password', async (req, res) => {
    const person = await mustFind(req);
    const fields = fieldsOf(req.body);
    await attempt(
      async () => {
        const reset = await resetPassword(db, ctxOf(req, fields), person.id);
        const { typed: secret, withdrawn } = reset;
        const told = { kind: 'password', of: person.name, secret, withdrawn } as const;
        await showPerson(req, res, reset.person, {}, [], told);
      },
      (faults) => showPerson(req, res, person, fields, faults),
    );
  });

  router.post('/tokens', async (req, res) => {
    const fields = fieldsOf(req.body);
    await attempt(
      async () => {
        const token = {
          name: fields.tokenName ?? '',
          personId: /^\d{1,9}$/.test(fields.tokenPerson ?? '') ? Number(fields.tokenPerson) : 0,
          role: fields.tokenRole as Role,
        };
        const secret = await issueToken(db, ctxOf(req, fields), token);
        await showPeople(req, res, {}, [], { kind: 'token', of: token.name, secret });
      },
      (faults) => showPeople(req, res, fields, faults),
    );
  });

  router.post('/tokens/:id/withdraw', async (req, res) => {
    mustHaveAccounts();
    await withdrawToken(db, ctxOf(req, {}), idOf(req));
    res.redirect(303, '/people#tokens');
  });

  async function change(
    req: Request,
    res: Response,
    edit: (person: Person, fields: Fields) => Promise<unknown>,
  ): Promise<void> {
    const person = await mustFind(req);
    const fields = fieldsOf(req.body);
    await attempt(
      async () => {
        await edit(person, fields);
        res.redirect(303, `/people/${person.id}`);
      },
      (faults) => showPerson(req, res, person, fields, faults),
    );
  }

  async function attempt(
    make: () => Promise<void>,
    refuse: (faults: readonly Fault[]) => Promise<void>,
  ): Promise<void> {
    mustHaveAccounts();
    try {
      await make();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await refuse(error.faults);
    }
  }

  async function showPeople(
    req: Request,
    res: Response,
    fields: Fields,
    faults: readonly Fault[],
    toldOnce: ToldOnce | null = null,
  ): Promise<void> {
    const page = PeoplePage({
      frame: await frameOf(req, house),
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
    req: Request,
    res: Response,
    person: Person,
    fields: Fields,
    faults: readonly Fault[],
    toldOnce: ToldOnce | null = null,
  ): Promise<void> {
    const page = PersonPage({
      frame: await frameOf(req, house),
      person,
      sessions: await sessionsOf(db, person.id, house.now()),
      fields,
      faults,
      toldOnce,
    });
    answer(res, faults, toldOnce, renderPage(page));
  }

  async function mustFind(req: Request): Promise<Person> {
    mustHaveAccounts();
    const person = await getPerson(db, idOf(req));
    if (person === null) throw new NoSuchPage('There is no such person in this shop. Look under people.');
    return person;
  }

  function mustHaveAccounts(): void {
    if (house.settings.accounts) return;
    throw new NoSuchPage(
      'Nobody signs in here: the program answers only to this machine. Set HOST to let others in.',
    );
  }

  function ctxOf(req: Request, fields: Fields) {
    return { who: whoOf(req, fields.who), why: fields.why ?? '', now: house.now };
  }

  return router;
}

/** A page with a secret on it is kept nowhere on its way. */
function answer(res: Response, faults: readonly Fault[], toldOnce: ToldOnce | null, html: string): void {
  if (toldOnce !== null) res.set('Cache-Control', 'no-store');
  res.status(faults.length > 0 ? 422 : 200).send(html);
}

function idOf(req: Request): number {
  const typed = String(req.params.id);
  return /^\d{1,9}$/.test(typed) ? Number(typed) : 0;
}
