import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { ROLE_WORD } from '../../../shared/words/people.ts';
import { type Db, write } from '../database/database.ts';
import { key } from '../database/writing.ts';
import { CONSOLE, keepPersonAsWas, listPeople, type PersonWas } from '../people/people.ts';
import { withdrawToken } from '../people/tokens.ts';

const WHY = 'restored: as before the restore';

/** The people of a shop that is not open, with their passwords; null where they cannot be read. */
export function peopleIn(file: string): readonly PersonWas[] | null {
  if (!existsSync(file)) return [];
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true, fileMustExist: true });
    const rows = raw
      .prepare<[], Row>(
        'SELECT name, initials, role, retired, hash, start, set_at FROM person LEFT JOIN person_password ON person_id = id ORDER BY name_key',
      )
      .all();
    return rows.map(toPersonWas);
  } catch {
    return null;
  } finally {
    raw?.close();
  }
}

interface Row {
  readonly name: string;
  readonly initials: string;
  readonly role: PersonWas['role'];
  readonly retired: number;
  readonly hash: string | null;
  readonly start: number | null;
  readonly set_at: string | null;
}

function toPersonWas({ name, initials, role, retired, hash, start, set_at }: Row): PersonWas {
  const password = hash === null || set_at === null ? null : { hash, start: start === 1, setAt: set_at };
  return { name, initials, role, retired: retired === 1, password };
}

/** Who may come in after a restore. */
export interface Access {
  readonly people: readonly PersonWas[];
  /** Sentences about those who stood otherwise in the backup. */
  readonly differ: readonly string[];
  /** Names of the tokens that were withdrawn. */
  readonly tokens: readonly string[];
  /** Whose accounts these are: the present shop's; the backup's, because there were none; or because none could be read. */
  readonly from: 'present' | 'backup' | 'backup-unread';
}

const WHOSE: Readonly<Record<Access['from'], string>> = {
  present: 'People, roles and passwords are as they were before the restore. These can sign in:',
  backup: 'There were no people before, so those of the backup can sign in, with their passwords from then:',
  'backup-unread':
    'The people of the shop before can’t be read. Those of the backup can sign in, with their passwords from then; retire who has left:',
};

/** What the command says of it. */
export function accessInWords({ people, differ, tokens, from }: Access): readonly string[] {
  const working = people.filter(({ retired }) => !retired);
  if (people.length === 0) return ['Nobody has an account there.'];
  const names = working.map(({ name, initials, role }) => `  ${name}, ${initials}, ${ROLE_WORD[role]}`);
  return [
    WHOSE[from],
    ...names,
    ...(from === 'present' ? [] : ['To give somebody a new password: npm run people -- reset NAME']),
    ...(differ.length === 0 ? [] : ['The backup had them otherwise:', ...differ.map((one) => `  ${one}`)]),
    'Everybody must sign in again.',
    ...(tokens.length === 0
      ? []
      : [`Tokens withdrawn: ${tokens.join(', ')}. Make new ones where scripts need them.`]),
  ];
}

/** A sentence for each person who stands otherwise in the backup than in the present shop: the present one counts. */
export function peopleDiffer(
  present: readonly PersonWas[] | null,
  backup: readonly PersonWas[] | null,
): readonly string[] {
  if (present === null) return [];
  const inBackup = new Map((backup ?? []).map((one) => [key(one.initials), one]));
  const stays = present.flatMap((now) => {
    const then = inBackup.get(key(now.initials));
    inBackup.delete(key(now.initials));
    const who = `${now.name}, ${now.initials}`;
    if (then === undefined) return [`${who}: not in the backup; stays ${inWords(now)}.`];
    const said =
      inWords(then) === inWords(now) ? [] : [`${inWords(then)} in the backup; stays ${inWords(now)}`];
    if (then.name !== now.name) said.push(`named ${then.name} in the backup; stays ${now.name}`);
    if (then.password?.hash !== now.password?.hash)
      said.push('has another password in the backup; the present one stays');
    return said.length === 0 ? [] : [`${who}: ${said.join('; ')}.`];
  });
  const gone = [...inBackup.values()]
    .filter(({ retired }) => !retired)
    .map(({ name, initials }) => `${name}, ${initials}: not in the present shop; is retired.`);
  return [...stays, ...gone];
}

function inWords({ role, retired }: PersonWas): string {
  return retired ? 'retired' : `a ${ROLE_WORD[role]}`;
}

/**
 * Closes the doors a backup would open again: nobody is signed in, every token is withdrawn, and people, roles and
 * passwords are those of the present shop. Without a present shop the backup’s people stand. Returns the tokens’ names.
 */
export async function closeDoors(
  db: Db,
  present: readonly PersonWas[] | null,
  now: () => Date,
): Promise<readonly string[]> {
  const ctx = { who: CONSOLE, why: WHY, now };
  return write(db, async (trx) => {
    await trx.deleteFrom('session').execute();
    const tokens = await trx
      .selectFrom('api_token')
      .select(['id', 'name'])
      .where('withdrawn_at', 'is', null)
      .orderBy('id')
      .execute();
    for (const { id } of tokens) await withdrawToken(trx, ctx, id);
    if (present !== null) await setPeople(trx, present, ctx);
    return tokens.map(({ name }) => name);
  });
}

async function setPeople(db: Db, present: readonly PersonWas[], ctx: Parameters<typeof keepPersonAsWas>[1]) {
  const stay = new Set(present.map(({ initials }) => key(initials)));
  const names = new Map(present.map(({ name, initials }) => [key(name), key(initials)]));
  for (const { name, initials, role, retired } of await listPeople(db)) {
    const owner = names.get(key(name));
    // A name that is another person’s now makes room for them first.
    const free = owner === undefined || owner === key(initials) ? name : `${name.slice(0, 45)} (${initials})`;
    const gone = !stay.has(key(initials));
    if (free !== name || (gone && !retired)) {
      await keepPersonAsWas(db, ctx, {
        name: free,
        initials,
        role,
        retired: retired || gone,
        password: null,
      });
    }
  }
  for (const person of present) await keepPersonAsWas(db, ctx, person);
}
