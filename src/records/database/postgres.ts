import { Kysely } from 'kysely';
import pg from 'pg';
import type { Shop } from './database.ts';
import { ShopWillNotOpen } from './errors.ts';
import { appliedIn, migratePostgres } from './migratePostgres.ts';
import { ShopPostgresDialect } from './postgresDriver.ts';
import { postgresCode } from './postgresErrors.ts';
import type { Tables } from './tables.ts';

const PATIENCE_MS = 5000;
/** No question of the program takes as long; a server that is frozen or cut off says nothing at all. */
const DEADLINE_MS = 10_000;
/** Connections for reading; writers take turns anyway. Ten programs on one server leave room for others. */
const MOST_LINES = 8;

/** Opens the shop's records in the database `url` names, making them if it is empty. Throws ShopWillNotOpen. */
export async function openPostgres(options: {
  readonly url: string;
  /** Folder for photos and other files beside the records. */
  readonly dataDir: string;
  readonly now?: () => Date;
  /** How long a change waits while another program is changing something. */
  readonly patienceMs?: number;
  /** How long one statement may take before its connection is given up. */
  readonly deadlineMs?: number;
}): Promise<Shop> {
  const {
    url,
    dataDir,
    now = () => new Date(),
    patienceMs = PATIENCE_MS,
    deadlineMs = DEADLINE_MS,
  } = options;
  const where = placeOf(url);
  const pool = new pg.Pool({
    connectionString: url,
    max: MOST_LINES,
    connectionTimeoutMillis: patienceMs,
    keepAlive: true,
    types: { getTypeParser },
    application_name: 'coverwright',
  });
  // An idle connection that breaks is replaced when the next one is needed.
  pool.on('error', () => undefined);
  // One that breaks during a change makes that change's query fail, so nothing is done here.
  pool.on('connect', (client) => client.on('error', () => undefined));
  try {
    const client = await pool.connect();
    try {
      await examine(client, where);
      await migratePostgres(client, now, patienceMs);
    } finally {
      client.release();
    }
  } catch (error) {
    await pool.end();
    throw error instanceof ShopWillNotOpen ? error : willNotOpen(error, where);
  }
  const db = new Kysely<Tables>({ dialect: new ShopPostgresDialect(pool, { patienceMs, deadlineMs }) });
  let closed: Promise<void> | undefined;
  return {
    db,
    dataDir,
    engine: 'postgres',
    where,
    close: () => {
      // Kysely does not close a pool that was never used.
      closed ??= db.destroy().then(() => (pool.ended ? undefined : pool.end()));
      return closed;
    },
  };
}

/** Numbers as numbers: counts, sums and whole numbers come as text from the driver's own parsers. */
export function getTypeParser(oid: number, format?: 'text' | 'binary') {
  const { INT8, NUMERIC } = pg.types.builtins;
  return oid === INT8 || oid === NUMERIC ? Number : pg.types.getTypeParser(oid, format ?? 'text');
}

/** Where it is, for people: without the account and its password. */
export function placeOf(url: string): string {
  const { host, port, database } = new pg.Client({ connectionString: url });
  return `PostgreSQL at ${host}, port ${port}, database ${database}`;
}

/** Looks at a database without writing to it. */
async function examine(client: pg.ClientBase, where: string): Promise<void> {
  const { rows } = await client.query<{ schema: string | null; encoding: string; closed: string }>(
    "select current_schema() as schema, current_setting('server_encoding') as encoding, current_setting('transaction_read_only') as closed",
  );
  const { schema = null, encoding = '', closed = '' } = rows[0] ?? {};
  if (schema === null || encoding !== 'UTF8') {
    throw new ShopWillNotOpen(
      'unfit',
      `The records cannot be kept in ${where}: ${schema === null ? 'no schema of its search_path exists' : `its encoding is ${encoding}, not UTF8`}. Give the shop a database of its own, made with "createdb -E UTF8 -T template0". Nothing was changed.`,
    );
  }
  if (closed === 'on') {
    throw new ShopWillNotOpen(
      'not-writable',
      `${where} is read only. Set DATABASE_URL to the server that takes changes. Nothing was changed.`,
    );
  }
  if ((await appliedIn(client)).length === 0 && (await holdsTables(client))) {
    throw new ShopWillNotOpen(
      'not-ours',
      `${where} has tables of another program. Give the shop its own database, and set DATABASE_URL to it. Nothing was changed.`,
    );
  }
}

/** Whether there are tables where the shop's would go, apart from those of extensions. */
async function holdsTables(client: pg.ClientBase): Promise<boolean> {
  const { rows } = await client.query(
    `select 1 from pg_class where relkind in ('r', 'p', 'f') and relnamespace = current_schema()::regnamespace
      and not exists (select 1 from pg_depend where objid = pg_class.oid and deptype = 'e') limit 1`,
  );
  return rows.length > 0;
}

function willNotOpen(error: unknown, where: string): unknown {
  const code = postgresCode(error);
  if (code === '') return error;
  const why = error instanceof Error && error.message !== '' ? error.message : code;
  if (/^(E|08|57P|53)/.test(code)) {
    return new ShopWillNotOpen(
      'unreachable',
      `${where} can't be reached (${why}). Check that the server is running and that DATABASE_URL is right. Nothing was changed.`,
      error,
    );
  }
  return new ShopWillNotOpen(
    'not-writable',
    `Nothing can be saved in ${where} (${why}). Check the account, password and database in DATABASE_URL, and that the account may make tables there.`,
    error,
  );
}
