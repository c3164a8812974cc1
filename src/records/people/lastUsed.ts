import { type Db, write } from '../database/database.ts';

/** The last use of a session or a token is stored at most this often, not at every page. */
const NOTED_MS = 60 * 1000;

type Table = 'session' | 'api_token';

interface Uses {
  /** By table and hash. */
  readonly at: Map<string, string>;
  readonly unwritten: Map<string, { readonly table: Table; readonly tokenHash: string }>;
  writing: Promise<void> | null;
}

const usesOf = new WeakMap<Db, Uses>();

function uses(db: Db): Uses {
  const found = usesOf.get(db) ?? { at: new Map(), unwritten: new Map(), writing: null };
  usesOf.set(db, found);
  return found;
}

/**
 * When something was last used: as stored, or as this program remembers it where that is nearer to now. A clock may
 * have been set back, and another program may have stored a later use.
 */
export function lastUse<T extends string | null>(
  db: Db,
  table: Table,
  row: { readonly token_hash: string; readonly used_at: T },
  now: Date | null = null,
): string | T {
  const remembered = uses(db).at.get(`${table} ${row.token_hash}`);
  if (now === null || remembered === undefined || row.used_at === null) return remembered ?? row.used_at;
  const away = (at: string) => Math.abs(now.getTime() - Date.parse(at));
  return away(remembered) <= away(row.used_at) ? remembered : row.used_at;
}

/** Remembers a use at once, and stores it when it can be: who reads never waits for a write, and never fails with it. */
export function noteUse(
  db: Db,
  table: Table,
  row: { readonly token_hash: string; readonly used_at: string | null },
  now: Date,
): void {
  const before = lastUse(db, table, row, now);
  if (before !== null && Math.abs(now.getTime() - Date.parse(before)) <= NOTED_MS) return;
  const all = uses(db);
  const key = `${table} ${row.token_hash}`;
  all.at.set(key, now.toISOString());
  all.unwritten.set(key, { table, tokenHash: row.token_hash });
  all.writing ??= writeUses(db, all).finally(() => {
    all.writing = null;
  });
}

/** Until all that was noted is stored, or could not be. */
export async function usesStored(db: Db): Promise<void> {
  await uses(db).writing;
}

/** One write for all that was noted meanwhile; what cannot be written now is written with the next use. */
async function writeUses(db: Db, { at, unwritten }: Uses): Promise<void> {
  while (unwritten.size > 0) {
    const noted = [...unwritten];
    try {
      await write(db, async (trx) => {
        for (const [key, { table, tokenHash }] of noted) {
          const used_at = at.get(key)!;
          await trx.updateTable(table).set({ used_at }).where('token_hash', '=', tokenHash).execute();
        }
      });
    } catch {
      return;
    }
    for (const [key, one] of noted) if (unwritten.get(key) === one) unwritten.delete(key);
  }
}
