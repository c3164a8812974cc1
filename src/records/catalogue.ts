import type { Selectable } from 'kysely';
import type { Entry, EntryBodies, EntryKind, TypedInEntry } from '../../shared/words/catalogue.ts';
import type { Kept } from '../../shared/words/job.ts';
import { type Db, write } from './database/database.ts';
import { NotInRecords, refuse, StaleEdit } from './database/errors.ts';
import { sayTheSame, toJson } from './database/json.ts';
import type { Tables } from './database/tables.ts';
import { type Ctx, key, printable, samePerson, signed } from './database/writing.ts';
import { checkedName, freeId, givenId, kindWord, nameIn, refuseTakenName } from './entryNames.ts';

/** By name; without the retired ones unless they are asked for. */
export async function listEntries<K extends EntryKind>(
  db: Db,
  kind: K,
  options: { readonly retired?: boolean } = {},
): Promise<readonly Entry<K>[]> {
  let query = entries(db).where('entry.kind', '=', kind);
  if (options.retired !== true) query = query.where('entry.retired', '=', 0);
  const rows = await query.orderBy('entry.name_key').orderBy('entry.id').execute();
  return rows.map((row) => toEntry(kind, row));
}

/** One entry as it is now, or as it was at a revision; null when there is none. */
export async function getEntry<K extends EntryKind>(
  db: Db,
  kind: K,
  id: string,
  revision?: number,
): Promise<Entry<K> | null> {
  if (revision === undefined) {
    const row = await entries(db)
      .where('entry.kind', '=', kind)
      .where('entry.id', '=', id)
      .executeTakeFirst();
    return row ? toEntry(kind, row) : null;
  }
  const rows = await entryHistory(db, kind, id);
  return rows.find((entry) => entry.revision === revision) ?? null;
}

/** Every revision of an entry, oldest first; empty when there is none. */
export async function entryHistory<K extends EntryKind>(
  db: Db,
  kind: K,
  id: string,
): Promise<readonly Entry<K>[]> {
  const rows = await db
    .selectFrom('entry_revision')
    .selectAll()
    .where('kind', '=', kind)
    .where('id', '=', id)
    .orderBy('revision')
    .execute();
  return rows.map((row) => toEntry(kind, row));
}

/** What was typed for its quantities, revision by revision; only those for which something is kept. */
export async function typedIn(
  db: Db,
  kind: EntryKind,
  id: string,
): Promise<ReadonlyMap<number, TypedInEntry>> {
  const rows = await db
    .selectFrom('entry_revision')
    .select(['revision', 'typed'])
    .where('kind', '=', kind)
    .where('id', '=', id)
    .where('typed', 'is not', null)
    .execute();
  return new Map(rows.map(({ revision, typed }) => [revision, JSON.parse(typed ?? '{}')]));
}

/** Puts something new in the catalogue. Its id is made from its name unless one is given. */
export async function addEntry<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  entry: {
    readonly kind: K;
    readonly id?: string;
    readonly body: EntryBodies[K];
    readonly typed?: TypedInEntry | null;
  },
): Promise<Entry<K>> {
  const { who, why, at } = signed(ctx, undefined);
  const { kind } = entry;
  const name = checkedName(kind, entry.body);
  const body = toJson(entry.body);
  const typed = typedJson(entry.typed);
  return write(db, async (trx) => {
    await refuseTakenName(trx, kind, name, null);
    const id = entry.id === undefined ? await freeId(trx, kind, name) : await givenId(trx, kind, entry.id);
    const row = { kind, id, revision: 1, at, who, why, retired: 0, body, typed };
    await trx
      .insertInto('entry')
      .values({ kind, id, revision: 1, name, name_key: key(name), retired: 0 })
      .execute();
    await trx.insertInto('entry_revision').values(row).execute();
    return toEntry(kind, row);
  });
}

/** Changes an entry: a new revision, with the reason. Jobs keep the one they were made with. */
export async function reviseEntry<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  edit: {
    readonly kind: K;
    readonly id: string;
    readonly fromRevision: number;
    readonly body: EntryBodies[K];
    readonly typed?: TypedInEntry | null;
    readonly why?: string;
  },
): Promise<Entry<K>> {
  const typed = typedJson(edit.typed);
  return nextRevision(db, ctx, edit, (now) => ({ body: edit.body, typed, retired: now.retired }));
}

/** Takes an entry out of use. It stays readable, and jobs that use it keep it. */
export async function retireEntry<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  edit: { readonly kind: K; readonly id: string; readonly fromRevision: number; readonly why?: string },
): Promise<Entry<K>> {
  if (edit.kind === 'criteria') {
    throw refuse('criteria-stay', '', "The shop limits can't be retired. Change them instead.");
  }
  return nextRevision(db, ctx, edit, (now) => ({ body: now.body, typed: null, retired: true }));
}

/** Puts a retired entry back in use. */
export async function reinstateEntry<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  edit: { readonly kind: K; readonly id: string; readonly fromRevision: number; readonly why?: string },
): Promise<Entry<K>> {
  return nextRevision(db, ctx, edit, (now) => ({ body: now.body, typed: null, retired: false }));
}

async function nextRevision<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  edit: { readonly kind: K; readonly id: string; readonly fromRevision: number; readonly why?: string },
  change: (now: Entry<K>) => { body: EntryBodies[K]; typed: string | null; retired: boolean },
): Promise<Entry<K>> {
  const { who, why, at } = signed(ctx, edit.why);
  const { kind, id } = edit;
  return write(db, async (trx) => {
    const now = await getEntry(trx, kind, id);
    if (now === null) throw noEntry(kind, id);
    const next = change(now);
    const body = toJson(next.body);
    const unchanged = next.retired === now.retired && sayTheSame(body, JSON.stringify(now.body));
    if (unchanged && samePerson(who, now.who)) return now;
    if (edit.fromRevision !== now.revision) throw staleEntry(now, edit.fromRevision);
    if (why === '') {
      throw refuse('why-needed', 'why', `Enter why the ${kindWord(kind)} "${now.name}" changes.`);
    }
    const name = checkedName(kind, next.body);
    if (!next.retired) await refuseTakenName(trx, kind, name, id);
    const revision = now.revision + 1;
    const { typed } = next;
    const row = { kind, id, revision, at, who, why, retired: next.retired ? 1 : 0, body, typed };
    await trx.insertInto('entry_revision').values(row).execute();
    await trx
      .updateTable('entry')
      .set({ revision, name, name_key: key(name), retired: row.retired })
      .where('kind', '=', kind)
      .where('id', '=', id)
      .execute();
    return toEntry(kind, row);
  });
}

/** An entry that a change of a job was worked out from, at the revision the person saw. */
export interface Seen {
  readonly kind: EntryKind;
  readonly id: string;
  readonly revision: number;
}

/** Throws StaleEdit when one of them is no longer as it was seen. Inside a write only. */
export async function refuseSeenOtherwise(db: Db, seen: readonly Seen[]): Promise<void> {
  for (const { kind, id, revision } of seen) {
    const now = await getEntry(db, kind, id);
    if (now === null || now.revision === revision) continue;
    const then = await getEntry(db, kind, id, revision);
    if (then?.retired === now.retired && sayTheSame(unstocked(then.body), unstocked(now.body))) continue;
    const { who, at, why, body, name } = now;
    const what = kind === 'criteria' ? 'the shop limits' : `the ${kindWord(kind)} "${name}"`;
    const theirs: Kept<EntryBodies[EntryKind]> = { revision: now.revision, at, who, why, body };
    throw new StaleEdit(
      `${who} changed ${what} after you opened this page. Nothing was saved. Check the answer as it is now, then send it again.`,
      { section: kind, theirs, currentRevision: now.revision, since: [] },
    );
  }
}

/** How many lie where is nothing an answer was worked out from. */
function unstocked(body: object): string {
  return JSON.stringify({ ...body, stock: null, shelf: '' });
}

function entries(db: Db) {
  return db
    .selectFrom('entry')
    .innerJoin('entry_revision', (join) =>
      join
        .onRef('entry_revision.kind', '=', 'entry.kind')
        .onRef('entry_revision.id', '=', 'entry.id')
        .onRef('entry_revision.revision', '=', 'entry.revision'),
    )
    .selectAll('entry_revision');
}

function toEntry<K extends EntryKind>(kind: K, row: Selectable<Tables['entry_revision']>): Entry<K> {
  const body: EntryBodies[K] = JSON.parse(row.body);
  return {
    kind,
    id: row.id,
    revision: row.revision,
    at: row.at,
    who: row.who,
    why: row.why,
    name: nameIn(body),
    retired: row.retired === 1,
    body,
  };
}

function typedJson(typed: TypedInEntry | null | undefined): string | null {
  return typed == null || Object.keys(typed).length === 0 ? null : toJson(typed);
}

function noEntry(kind: EntryKind, id: string): NotInRecords {
  return new NotInRecords('id', `The catalog has no ${kindWord(kind)} "${printable(id)}".`);
}

function staleEntry<K extends EntryKind>(now: Entry<K>, from: number): Error {
  const { kind, revision, at, who, why, body } = now;
  if (!Number.isInteger(from) || from < 0 || from > revision) {
    return refuse(
      'bad-revision',
      'fromRevision',
      `The ${kindWord(kind)} "${now.name}" has no revision ${from}. Open it again and make the change there.`,
    );
  }
  const theirs: Kept<EntryBodies[K]> = { revision, at, who, why, body };
  return new StaleEdit(
    `${who} changed the ${kindWord(kind)} "${now.name}" while you had it open (you started from revision ${from}; it is now ${revision}). Nothing was saved. Compare both and save again.`,
    { section: kind, theirs, currentRevision: revision, since: [] },
  );
}
