import type { EntryBodies, EntryKind } from '../../shared/words/catalogue.ts';
import { ENTRY_WORD } from '../../shared/words/terms.ts';
import type { Db } from './database/database.ts';
import { refuse } from './database/errors.ts';
import { hasControls, key, printable, refuseNul } from './database/writing.ts';

/** What an entry is called in a sentence. */
export function kindWord(kind: EntryKind): string {
  if (kind === 'criteria') return 'shop limits';
  return kind === 'checklist' ? 'inspection list' : ENTRY_WORD[kind].one;
}

export function nameIn(body: EntryBodies[EntryKind]): string {
  const named: { readonly name?: string; readonly shopName?: string } = body;
  return (named.name ?? named.shopName ?? '').trim();
}

/** The name in a body. Throws Refusal when it cannot be a name. */
export function checkedName(kind: EntryKind, body: EntryBodies[EntryKind]): string {
  const name = nameIn(body);
  if (name === '' || name.length > 120 || hasControls(name)) {
    throw refuse(
      'name-needed',
      kind === 'criteria' ? 'shopName' : 'name',
      `"${printable(name)}" can't be a name. Use 1 to 120 plain characters.`,
    );
  }
  refuseNul('name', name);
  return name;
}

/** Throws Refusal when another entry in use has the name. */
export async function refuseTakenName(
  db: Db,
  kind: EntryKind,
  name: string,
  ownId: string | null,
): Promise<void> {
  const other = await db
    .selectFrom('entry')
    .select(['id', 'name'])
    .where('kind', '=', kind)
    .where('name_key', '=', key(name))
    .where('retired', '=', 0)
    .executeTakeFirst();
  if (other === undefined || other.id === ownId) return;
  throw refuse(
    'name-taken',
    'name',
    `The catalog already has a ${kindWord(kind)} named "${other.name}". Use another name, or change that one.`,
  );
}

/** An id made of the name, with a number behind it where that one is taken. */
export async function freeId(db: Db, kind: EntryKind, name: string): Promise<string> {
  for (const id of idsFrom(kind, name)) if (!(await hasEntry(db, kind, id))) return id;
  throw new Error('There is always another number.');
}

/** The same where the ids that are taken are known. */
export function freeIdAmong(taken: ReadonlySet<string>, kind: EntryKind, name: string): string {
  for (const id of idsFrom(kind, name)) if (!taken.has(id)) return id;
  throw new Error('There is always another number.');
}

function* idsFrom(kind: EntryKind, name: string): Generator<string> {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  const base = plain === '' ? kind : plain;
  yield base;
  for (let n = 2; ; n++) yield `${base}-${n}`;
}

/** An id somebody chose, where it can be one and is free. */
export async function givenId(db: Db, kind: EntryKind, id: string): Promise<string> {
  refuseUnfitId(kind, id, new Set((await hasEntry(db, kind, id)) ? [id] : []));
  return id;
}

export function isFitId(id: string): boolean {
  return /^[a-z0-9][a-z0-9._-]{0,79}$/.test(id);
}

export function refuseUnfitId(kind: EntryKind, id: string, taken: ReadonlySet<string>): void {
  if (!isFitId(id)) {
    throw refuse(
      'bad-id',
      'id',
      `"${printable(id)}" can't be an id. Use up to 80 small letters, digits, periods and hyphens, such as alder-11.`,
    );
  }
  if (taken.has(id)) {
    throw refuse(
      'id-taken',
      'id',
      `The catalog already has a ${kindWord(kind)} with the id "${id}". Use another id.`,
    );
  }
}

async function hasEntry(db: Db, kind: EntryKind, id: string): Promise<boolean> {
  const row = await db
    .selectFrom('entry')
    .select('id')
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();
  return row !== undefined;
}
