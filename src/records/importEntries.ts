import { createHash } from 'node:crypto';
import { setImmediate as breath } from 'node:timers/promises';
import type { Updateable } from 'kysely';
import type { EntryBodies, EntryKind, TypedInEntry } from '../../shared/words/catalogue.ts';
import { type Db, write } from './database/database.ts';
import { refuse, StaleEdit } from './database/errors.ts';
import { toJson } from './database/json.ts';
import type { Tables } from './database/tables.ts';
import { type Ctx, key, signed } from './database/writing.ts';
import { checkedName, freeIdAmong, kindWord, refuseUnfitId } from './entryNames.ts';

/** One entry of a list that comes in: a new one, or the next revision of one that is there. */
export interface EntryGiven<K extends EntryKind> {
  /** null where a new entry gets one made of its name. */
  readonly id: string | null;
  /** 0 for a new one. */
  readonly fromRevision: number;
  readonly body: EntryBodies[K];
  readonly typed: TypedInEntry | null;
  readonly retired: boolean;
}

/** A mark of all entries of a kind as they are now: another as soon as one of them has another revision. */
export async function entriesMark(db: Db, kind: EntryKind): Promise<string> {
  const rows = await db
    .selectFrom('entry')
    .select(['id', 'revision'])
    .where('kind', '=', kind)
    .orderBy('id')
    .execute();
  const all = rows.map(({ id, revision }) => `${id}:${revision}`).join('\n');
  return createHash('sha256').update(all).digest('hex').slice(0, 32);
}

/** So many rows go into one statement. */
const AT_ONCE = 100;

/**
 * Keeps a whole list of entries in one write, or nothing of it. Throws StaleEdit when an entry of the kind was changed
 * since `mark` was taken, and Refusal where two entries in use would have one name.
 */
export async function importEntries<K extends EntryKind>(
  db: Db,
  ctx: Ctx,
  list: {
    readonly kind: K;
    readonly mark: string;
    readonly entries: readonly EntryGiven<K>[];
    /** Told before each part; it may throw, and then nothing is kept. */
    readonly step?: (done: number, of: number) => void;
  },
): Promise<void> {
  const { who, why, at } = signed(ctx, undefined);
  const { kind, mark, entries, step = () => undefined } = list;
  if (why === '' && entries.some(({ fromRevision }) => fromRevision > 0))
    throw refuse('why-needed', 'why', `Enter why ${kindWord(kind)} entries change.`);
  const given = entries.map((one) => ({ ...one, name: checkedName(kind, one.body), json: toJson(one.body) }));
  await write(db, async (trx) => {
    if ((await entriesMark(trx, kind)) !== mark) throw changedMeanwhile(kind);
    const there = await trx
      .selectFrom('entry')
      .select(['id', 'name_key', 'retired'])
      .where('kind', '=', kind)
      .execute();
    const ids = new Set(there.map(({ id }) => id));
    const rows = given.map(({ id, name, fromRevision, body: _, json, typed, retired }) => {
      if (id !== null && fromRevision === 0) refuseUnfitId(kind, id, ids);
      const own = id ?? freeIdAmong(ids, kind, name);
      ids.add(own);
      return {
        entry: {
          kind,
          id: own,
          revision: fromRevision + 1,
          name,
          name_key: key(name),
          retired: retired ? 1 : 0,
        },
        revision: {
          ...{ kind, id: own, revision: fromRevision + 1, at, who, why, retired: retired ? 1 : 0 },
          ...{ body: json, typed: typed === null || Object.keys(typed).length === 0 ? null : toJson(typed) },
        },
      };
    });
    refuseSameNames(
      kind,
      there,
      rows.map(({ entry }) => entry),
    );
    const changed = rows.filter(({ entry }) => entry.revision > 1).map(({ entry }) => entry);
    // Out of use while names change hands, so that no two have one name on the way.
    for (const { id } of changed) await setEntry(trx, kind, id, { retired: 1 });
    for (let from = 0; from < rows.length; from += AT_ONCE) {
      step(from, rows.length);
      await breath();
      const some = rows.slice(from, from + AT_ONCE);
      const added = some.flatMap(({ entry }) => (entry.revision === 1 ? [entry] : []));
      if (added.length > 0) await trx.insertInto('entry').values(added).execute();
      await trx
        .insertInto('entry_revision')
        .values(some.map(({ revision }) => revision))
        .execute();
    }
    for (const { id, kind: _, ...now } of changed) await setEntry(trx, kind, id, now);
  });
}

function setEntry(trx: Db, kind: EntryKind, id: string, now: Updateable<Tables['entry']>) {
  return trx.updateTable('entry').set(now).where('kind', '=', kind).where('id', '=', id).execute();
}

interface Named {
  readonly id: string;
  readonly name_key: string;
  readonly retired: number;
}

function refuseSameNames(
  kind: EntryKind,
  there: readonly Named[],
  coming: readonly (Named & { readonly name: string })[],
): void {
  const after = new Map(there.map((one) => [one.id, one]));
  for (const one of coming) after.set(one.id, one);
  const seen = new Map<string, string>();
  for (const { id, name_key, retired } of after.values()) {
    if (retired === 1) continue;
    const other = seen.get(name_key);
    seen.set(name_key, id);
    if (other === undefined) continue;
    const name = coming.find((one) => one.id === id || one.id === other)?.name ?? '';
    throw refuse(
      'name-taken',
      'name',
      `Two of the ${kindWord(kind)} entries would be named "${name}". Change one name.`,
    );
  }
}

function changedMeanwhile(kind: EntryKind): StaleEdit {
  return new StaleEdit(
    `Somebody changed a ${kindWord(kind)} while you looked at this. Nothing was saved. The list below is against the catalog as it is now.`,
    { section: kind, theirs: null, currentRevision: 0, since: [] },
  );
}
