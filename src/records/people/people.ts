import type { Selectable } from 'kysely';
import type { Person, PersonChange, PersonLine, Role } from '../../../shared/words/people.ts';
import { ROLES } from '../../../shared/words/people.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import type { Tables } from '../database/tables.ts';
import {
  type Ctx,
  hasControls,
  key,
  mayBeSamePerson,
  printable,
  type Signed,
  signed,
} from '../database/writing.ts';
import { keepPassword, type NewPassword } from './passwords.ts';
import { endSessions } from './sessions.ts';

const LONGEST_NAME = 60;
/** Stands for initials in changes made by the command line. */
export const CONSOLE = 'console';

export interface NewPerson {
  readonly name: string;
  readonly initials: string;
  readonly role: Role;
}

/** Everybody, sorted by name; retired people too. */
export async function listPeople(db: Db): Promise<readonly Person[]> {
  const rows = await db.selectFrom('person').selectAll().orderBy('name_key').execute();
  return rows.map(toPerson);
}

export async function hasPeople(db: Db): Promise<boolean> {
  return (await db.selectFrom('person').select('id').limit(1).executeTakeFirst()) !== undefined;
}

export async function getPerson(db: Db, id: number): Promise<Person | null> {
  const row = await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? toPerson(row) : null;
}

/** Letter case and outer blanks of the name do not matter. */
async function personNamed(db: Db, name: string): Promise<Person | null> {
  const row = await db.selectFrom('person').selectAll().where('name_key', '=', key(name)).executeTakeFirst();
  return row ? toPerson(row) : null;
}

/** Somebody by name or, where nobody has that name, by initials. */
export async function personCalled(db: Db, called: string): Promise<Person | null> {
  const named = await personNamed(db, called);
  if (named !== null) return named;
  const people = await listPeople(db);
  return people.find(({ initials }) => key(initials) === key(called)) ?? null;
}

/** Every change of anybody, newest first. */
export async function peopleHistory(db: Db, limit: number): Promise<readonly PersonLine[]> {
  const rows = await db
    .selectFrom('person_revision')
    .innerJoin('person', 'person.id', 'person_revision.person_id')
    .select(['person.name', 'person_id', 'person_revision.revision', 'at', 'who', 'why', 'what', 'body'])
    .orderBy('at', 'desc')
    .orderBy('person_id', 'desc')
    .orderBy('person_revision.revision', 'desc')
    .limit(limit)
    .execute();
  return rows.map(({ person_id, body, ...row }) => ({
    ...row,
    personId: person_id,
    role: (JSON.parse(body) as { role: Role }).role,
  }));
}

/** Adds the first keeper, who adds everybody else; refused once there is anybody. */
export async function addFirstKeeper(
  db: Db,
  now: () => Date,
  person: Omit<NewPerson, 'role'>,
  password: NewPassword,
): Promise<Person> {
  return write(db, async (trx) => {
    if (await hasPeople(trx)) {
      throw refuse(
        'not-first',
        '',
        'This shop already has a manager. Sign in, or ask the manager for an account.',
      );
    }
    const ctx = { who: person.initials, why: 'the first manager', now };
    return addPerson(trx, ctx, { ...person, role: 'keeper' }, password);
  });
}

export async function addPerson(db: Db, ctx: Ctx, person: NewPerson, password: NewPassword): Promise<Person> {
  const name = readName(person.name);
  const initials = readInitials(person.initials);
  refuseRole(person.role);
  const by = signed(ctx, undefined);
  return write(db, async (trx) => {
    await refuseTaken(trx, { name, initials });
    const values = { name, initials, role: person.role };
    const { id } = await trx
      .insertInto('person')
      .values({ ...values, revision: 1, name_key: key(name), initials_key: key(initials), retired: 0 })
      .returning('id')
      .executeTakeFirstOrThrow();
    const added: Person = { ...values, id, revision: 1, retired: false };
    await addRevision(trx, by, added, 'added');
    await keepPassword(trx, id, password, by.at);
    return added;
  });
}

/** Changes name and role. Initials stay: what was signed with them must keep meaning the same person. */
export async function revisePerson(
  db: Db,
  ctx: Ctx,
  edit: { readonly id: number; readonly fromRevision: number; readonly name: string; readonly role: Role },
): Promise<Person> {
  const name = readName(edit.name);
  refuseRole(edit.role);
  return change(db, ctx, edit, 'changed', async (trx, person) => {
    if (name === person.name && edit.role === person.role) return null;
    await refuseTaken(trx, { name, except: person.id });
    return { ...person, name, role: edit.role };
  });
}

/** The person can no longer sign in; what they signed stays. */
export async function retirePerson(
  db: Db,
  ctx: Ctx,
  edit: { readonly id: number; readonly fromRevision: number },
): Promise<Person> {
  return change(db, ctx, edit, 'retired', async (trx, person) => {
    if (person.retired) return null;
    await endSessions(trx, person.id);
    return { ...person, retired: true };
  });
}

export async function reinstatePerson(
  db: Db,
  ctx: Ctx,
  edit: { readonly id: number; readonly fromRevision: number },
): Promise<Person> {
  return change(db, ctx, edit, 'reinstated', async (_trx, person) =>
    person.retired ? { ...person, retired: false } : null,
  );
}

/** A new password ends every session of the person. */
export async function changePassword(
  db: Db,
  ctx: Ctx,
  edit: { readonly id: number; readonly password: NewPassword },
): Promise<Person> {
  const what = edit.password.start ? 'start-password' : 'own-password';
  return change(db, ctx, { id: edit.id }, what, async (trx, person, by) => {
    if (person.retired) {
      throw refuse(
        'retired',
        '',
        `${person.name} is retired and can't sign in. Reinstate the account first.`,
      );
    }
    await keepPassword(trx, person.id, edit.password, by.at);
    await endSessions(trx, person.id);
    return person;
  });
}

/** Somebody as they were in another copy of the shop. */
export interface PersonWas extends NewPerson {
  readonly retired: boolean;
  /** null leaves the password as it is. */
  readonly password: (NewPassword & { readonly setAt: string }) | null;
}

/** Adds or revises somebody, by their initials, to what they were in another copy; nothing where they are so already. */
export async function keepPersonAsWas(db: Db, ctx: Ctx, was: PersonWas): Promise<void> {
  const by = signed(ctx, undefined);
  const { name, initials, role, retired, password } = was;
  await write(db, async (trx) => {
    const people = await listPeople(trx);
    const here = people.find((person) => key(person.initials) === key(initials));
    const values = { name, name_key: key(name), role, retired: retired ? 1 : 0 };
    let id = here?.id;
    if (here === undefined) {
      const added = await trx
        .insertInto('person')
        .values({ ...values, initials, initials_key: key(initials), revision: 1 })
        .returning('id')
        .executeTakeFirstOrThrow();
      id = added.id;
      await addRevision(trx, by, { id, revision: 1, name, initials, role, retired }, 'added');
    } else if (here.name !== name || here.role !== role || here.retired !== retired) {
      const revision = here.revision + 1;
      const what = here.retired === retired ? 'changed' : retired ? 'retired' : 'reinstated';
      await addRevision(trx, by, { ...here, revision, name, role, retired }, what);
      await trx
        .updateTable('person')
        .set({ ...values, revision })
        .where('id', '=', here.id)
        .execute();
    }
    if (id !== undefined && password !== null) await keepPassword(trx, id, password, password.setAt);
  });
}

/** Puts something done about a person on record: a token issued or withdrawn. */
export async function noteAbout(
  db: Db,
  ctx: Ctx,
  id: number,
  what: 'token' | 'token-withdrawn',
): Promise<Person> {
  return change(db, ctx, { id }, what, async (_trx, person) => person);
}

/** Adds a revision with what `next` returns, or none when it returns null. The last keeper cannot be lost. */
async function change(
  db: Db,
  ctx: Ctx,
  edit: { readonly id: number; readonly fromRevision?: number },
  what: PersonChange,
  next: (trx: Db, person: Person, by: Signed) => Promise<Person | null>,
): Promise<Person> {
  const by = signed(ctx, undefined);
  return write(db, async (trx) => {
    const person = await getPerson(trx, edit.id);
    if (person === null) throw new NotInRecords('person', `There is no person ${edit.id} here.`);
    if (edit.fromRevision !== undefined && edit.fromRevision !== person.revision) {
      throw refuse(
        'stale-person',
        '',
        `Somebody changed the account of ${person.name} while you had it open. Nothing was saved. Check it as it is now, then change it.`,
      );
    }
    const made = await next(trx, person, by);
    if (made === null) return person;
    const revised = { ...made, revision: person.revision + 1 };
    await addRevision(trx, by, revised, what);
    await trx
      .updateTable('person')
      .set({
        revision: revised.revision,
        name: revised.name,
        name_key: key(revised.name),
        role: revised.role,
        retired: revised.retired ? 1 : 0,
      })
      .where('id', '=', person.id)
      .execute();
    await refuseNoKeeper(trx);
    return revised;
  });
}

async function addRevision(db: Db, by: Signed, person: Person, what: PersonChange): Promise<void> {
  const { id, revision, name, initials, role, retired } = person;
  await db
    .insertInto('person_revision')
    .values({ person_id: id, revision, ...by, what, body: toJson({ name, initials, role, retired }) })
    .execute();
}

async function refuseNoKeeper(db: Db): Promise<void> {
  const keeper = await db
    .selectFrom('person')
    .select('id')
    .where('role', '=', 'keeper')
    .where('retired', '=', 0)
    .limit(1)
    .executeTakeFirst();
  if (keeper !== undefined) return;
  throw refuse('last-keeper', 'role', 'This is the only manager left. Make somebody else a manager first.');
}

async function refuseTaken(
  db: Db,
  of: { readonly name: string; readonly initials?: string; readonly except?: number },
): Promise<void> {
  const others = (await listPeople(db)).filter((person) => person.id !== of.except);
  const sameName = others.find((person) => key(person.name) === key(of.name));
  if (sameName) {
    throw refuse(
      'name-taken',
      'name',
      `${sameName.name} already has an account${sameName.retired ? ', retired' : ''}. Enter a name that tells the two apart.`,
    );
  }
  const { initials } = of;
  const same = initials && others.find((person) => mayBeSamePerson(person.initials, initials));
  if (same) {
    throw refuse(
      'initials-taken',
      'initials',
      `The initials ${same.initials} belong to ${same.name}${same.retired ? ', retired' : ''}. Choose others.`,
    );
  }
}

function readName(typed: string): string {
  const name = typed.normalize('NFC').trim().replace(/\s+/gu, ' ');
  if (name === '') throw refuse('name-needed', 'name', 'The name is empty. Enter the name to sign in with.');
  if (name.length > LONGEST_NAME || hasControls(name)) {
    throw refuse(
      'bad-name',
      'name',
      `"${printable(name)}" can't be a name. Use 1 to ${LONGEST_NAME} plain characters.`,
    );
  }
  return name;
}

function readInitials(typed: string): string {
  const initials = typed.normalize('NFC').trim();
  if (!/^[\p{L}\p{N}.-]{1,8}$/u.test(initials) || key(initials) === CONSOLE) {
    throw refuse(
      'bad-initials',
      'initials',
      `"${printable(initials)}" can't be initials. Use 1 to 8 letters, digits, periods or hyphens, such as AA, but not "${CONSOLE}".`,
    );
  }
  return initials;
}

function refuseRole(role: Role): void {
  if (ROLES.includes(role)) return;
  throw refuse('bad-role', 'role', 'Choose a role: reader, recorder or manager.');
}

function toPerson(row: Selectable<Tables['person']>): Person {
  const { id, revision, name, initials, role, retired } = row;
  return { id, revision, name, initials, role, retired: retired === 1 };
}
