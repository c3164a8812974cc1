import type { Selectable } from 'kysely';
import type {
  Entry,
  EntryBodies,
  EntryKind,
  ShopCriteria,
  TypedInEntry,
} from '../../shared/words/catalogue.ts';
import type { Kept } from '../../shared/words/job.ts';
import { type Db, write } from './database/database.ts';
import { NotInRecords, refuse, StaleEdit } from './database/errors.ts';
import { sayTheSame, toJson } from './database/json.ts';
import type { Tables } from './database/tables.ts';
import { type Ctx, hasControls, key, printable, refuseNul, samePerson, signed } from './database/writing.ts';

const KIND_WORDS: Readonly<Record<EntryKind, string>> = {
  family: 'cover family',
  stud: 'stud',
  stack: 'stack',
  gauge: 'gauge',
  criteria: 'set of criteria',
};

/** Where the shop's criteria are kept: one entry, whose revisions say who set what when. */
export const CRITERIA_ID = 'shop';

const CRITERIA_BEFORE_ANY: ShopCriteria = {
  shopName: 'The shop',
  minimumWallMm: null,
  cleanUpAllowanceMm: 0.05,
  faceRunoutLimitMm: null,
  confidence: 0.95,
  typicalCutMm: null,
  protrusionThreads: 1,
  startThreads: 2,
  lengthUnit: 'mm',
  decimalSign: 'point',
  lathe: null,
  balance: null,
  bending: null,
  heat: null,
};

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

/** One entry as it stands, or as it was at a revision; null when there is none. */
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
    throw refuse('criteria-stay', '', "The shop's criteria cannot be retired; change them instead.");
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

export interface CurrentCriteria {
  /** 0 while none have been saved: the ones the program starts with. */
  readonly revision: number;
  readonly at: string | null;
  readonly who: string | null;
  readonly body: ShopCriteria;
}

export async function currentCriteria(db: Db): Promise<CurrentCriteria> {
  return filledIn(await getEntry(db, 'criteria', CRITERIA_ID));
}

/** The criteria of a revision, 0 for those the program starts with; null when there is none such. */
export async function criteriaOf(db: Db, revision: number): Promise<CurrentCriteria | null> {
  if (revision === 0) return filledIn(null);
  const saved = await getEntry(db, 'criteria', CRITERIA_ID, revision);
  return saved && filledIn(saved);
}

/** The criteria that were in force at a moment (UTC, ISO 8601), to read an earlier state of a job under. */
export async function criteriaAt(db: Db, at: string): Promise<CurrentCriteria> {
  const history = await entryHistory(db, 'criteria', CRITERIA_ID);
  return filledIn(history.findLast((entry) => entry.at <= at) ?? null);
}

/** Criteria saved before a limit was invented get the value the program starts with. */
function filledIn(saved: Entry<'criteria'> | null): CurrentCriteria {
  if (saved === null) return { revision: 0, at: null, who: null, body: CRITERIA_BEFORE_ANY };
  const { revision, at, who, body } = saved;
  return { revision, at, who, body: { ...CRITERIA_BEFORE_ANY, ...body } };
}

/** Sets the shop's criteria; `fromRevision` is the one shown when the person began, 0 for the first time. */
export async function saveCriteria(
  db: Db,
  ctx: Ctx,
  edit: {
    readonly fromRevision: number;
    readonly body: ShopCriteria;
    readonly typed?: TypedInEntry | null;
    readonly why?: string;
  },
): Promise<Entry<'criteria'>> {
  return write(db, async (trx) => {
    const saved = await getEntry(trx, 'criteria', CRITERIA_ID);
    if (saved === null && edit.fromRevision === 0) {
      const first = {
        kind: 'criteria',
        id: CRITERIA_ID,
        body: edit.body,
        typed: edit.typed ?? null,
      } as const;
      return addEntry(trx, { ...ctx, why: edit.why ?? ctx.why ?? '' }, first);
    }
    return reviseEntry(trx, ctx, { ...edit, kind: 'criteria', id: CRITERIA_ID });
  });
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
      throw refuse('why-needed', 'why', `Say why the ${KIND_WORDS[kind]} "${now.name}" changes.`);
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

/** What of the catalogue a change of a job was worked out from, at the revision somebody saw it. */
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
    const { who, at, why, body, name } = now;
    const what = kind === 'criteria' ? "the shop's criteria" : `the ${KIND_WORDS[kind]} "${name}"`;
    const theirs: Kept<EntryBodies[EntryKind]> = { revision: now.revision, at, who, why, body };
    throw new StaleEdit(
      `${who} changed ${what} after you looked (revision ${revision} then, ${now.revision} now), so this would rest on something you have not seen. Nothing was saved; look at the answer as it is now and send it again.`,
      { section: kind, theirs, currentRevision: now.revision, since: [] },
    );
  }
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

function nameIn(body: EntryBodies[EntryKind]): string {
  const named: { readonly name?: string; readonly shopName?: string } = body;
  return (named.name ?? named.shopName ?? '').trim();
}

function checkedName(kind: EntryKind, body: EntryBodies[EntryKind]): string {
  const name = nameIn(body);
  if (name === '' || name.length > 120 || hasControls(name)) {
    throw refuse(
      'name-needed',
      kind === 'criteria' ? 'shopName' : 'name',
      `"${printable(name)}" cannot be the name of a ${KIND_WORDS[kind]}; give 1 to 120 plain characters.`,
    );
  }
  refuseNul('name', name);
  return name;
}

async function refuseTakenName(db: Db, kind: EntryKind, name: string, ownId: string | null): Promise<void> {
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
    `The catalogue has a ${KIND_WORDS[kind]} named "${other.name}" already; give this one another name, or change that one.`,
  );
}

async function freeId(db: Db, kind: EntryKind, name: string): Promise<string> {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
  const base = plain === '' ? kind : plain;
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`;
    if (!(await hasEntry(db, kind, id))) return id;
  }
}

async function givenId(db: Db, kind: EntryKind, id: string): Promise<string> {
  if (!/^[a-z0-9][a-z0-9._-]{0,79}$/.test(id)) {
    throw refuse(
      'bad-id',
      'id',
      `"${printable(id)}" cannot be an id; use up to 80 small letters, digits, points and hyphens, as in alder-11.`,
    );
  }
  if (await hasEntry(db, kind, id)) {
    throw refuse(
      'id-taken',
      'id',
      `The catalogue has a ${KIND_WORDS[kind]} with the id "${id}" already; give another.`,
    );
  }
  return id;
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

function noEntry(kind: EntryKind, id: string): NotInRecords {
  return new NotInRecords('id', `The catalogue has no ${KIND_WORDS[kind]} "${printable(id)}".`);
}

function staleEntry<K extends EntryKind>(now: Entry<K>, from: number): Error {
  const { kind, revision, at, who, why, body } = now;
  if (!Number.isInteger(from) || from < 0 || from > revision) {
    return refuse(
      'bad-revision',
      'fromRevision',
      `The ${KIND_WORDS[kind]} "${now.name}" has no revision ${from}; open it again and make the change there.`,
    );
  }
  const theirs: Kept<EntryBodies[K]> = { revision, at, who, why, body };
  return new StaleEdit(
    `${who} changed the ${KIND_WORDS[kind]} "${now.name}" while you had it open (yours began at revision ${from}, it is now at ${revision}). Nothing of yours was saved; compare the two and save again.`,
    { section: kind, theirs, currentRevision: revision, since: [] },
  );
}
