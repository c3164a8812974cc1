import Database from 'better-sqlite3';
import pg from 'pg';
import type { Step } from '../../progress.ts';
import { BackupFailed, ShopWillNotOpen } from '../database/errors.ts';
import { type Applied, MIGRATIONS, migrate, refuseUnknown } from '../database/migrate.ts';
import { appliedIn } from '../database/migratePostgres.ts';
import { getTypeParser, placeOf } from '../database/postgres.ts';
import { BEGIN_READING } from '../database/postgresDriver.ts';
import { postgresCode } from '../database/postgresErrors.ts';
import { hashOfRow, hashOfRows } from '../database/rowsHash.ts';

const AT_A_TIME = 1000;
const PATIENCE_MS = 5000;

/** How many rows each table was given. */
type Copied = Readonly<Record<string, number>>;

/**
 * Copies a shop out of PostgreSQL into a new file, as it is at one moment: nobody waits for it, whoever writes, and
 * each table is read back and compared. The file is of the version the database is of. Throws BackupFailed.
 */
export async function copyFromPostgres(
  url: string,
  file: string,
  now: () => Date,
  step: Step,
): Promise<Copied> {
  return reading(url, async (client, where) => {
    await client.query(BEGIN_READING);
    const applied = await shopIn(client, where);
    const raw = new Database(file);
    try {
      migrate(raw, now, MIGRATIONS.slice(0, applied.length));
      raw.pragma('synchronous = OFF');
      // References are checked once the whole copy is there.
      raw.pragma('foreign_keys = OFF');
      const tables = await tablesIn(client);
      refuseForgotten(raw, tables);
      raw.exec('BEGIN; DELETE FROM schema_migration');
      const copied: Record<string, number> = {};
      const of = await rowsIn(client, tables);
      let done = 0;
      const row = () => step('Copying rows', done++, of);
      for (const table of tables) copied[table] = await copyTable(client, raw, table, row);
      raw.exec('COMMIT');
      return copied;
    } finally {
      raw.close();
    }
  });
}

/** Whether a database holds records of an earlier version. One that cannot be read is left to whoever opens it. */
export async function isOlderPostgres(url: string): Promise<boolean> {
  try {
    return await reading(url, async (client) => {
      const applied = await appliedIn(client);
      return applied.length > 0 && applied.length < MIGRATIONS.length;
    });
  } catch (error) {
    if (error instanceof BackupFailed) return false;
    throw error;
  }
}

async function reading<T>(url: string, fn: (client: pg.Client, where: string) => Promise<T>): Promise<T> {
  const where = placeOf(url);
  const client = new pg.Client({
    connectionString: url,
    connectionTimeoutMillis: PATIENCE_MS,
    keepAlive: true,
    types: { getTypeParser },
    application_name: 'coverwright backup',
  });
  // A broken connection makes the running query fail; nothing to do here.
  client.on('error', () => undefined);
  try {
    await client.connect();
    return await fn(client, where);
  } catch (error) {
    if (postgresCode(error) === '') throw error;
    const why = error instanceof Error && error.message !== '' ? error.message : postgresCode(error);
    throw new BackupFailed(
      'not-read',
      `${where} can't be read (${why}), so no backup was made. Check that the server is running and DATABASE_URL is right. Keep your earlier backups.`,
      error,
    );
  } finally {
    await client.end().catch(() => undefined);
  }
}

/** The migrations applied to the shop there. */
async function shopIn(client: pg.Client, where: string): Promise<readonly Applied[]> {
  const applied = await appliedIn(client);
  if (applied.length === 0) {
    throw new BackupFailed('no-shop', `There is no shop to back up in ${where}. Check DATABASE_URL.`);
  }
  try {
    refuseUnknown(applied, MIGRATIONS);
  } catch (error) {
    if (!(error instanceof ShopWillNotOpen)) throw error;
    throw new BackupFailed('not-ours', `No backup was made. ${error.message}`, error);
  }
  return applied;
}

async function tablesIn(client: pg.Client): Promise<readonly string[]> {
  const { rows } = await client.query<{ name: string }>(
    'select tablename as name from pg_tables where schemaname = current_schema() order by 1',
  );
  return rows.map(({ name }) => name);
}

/** A table that only one of the two has would be left out. */
function refuseForgotten(raw: Database.Database, tables: readonly string[]): void {
  const here = raw
    .prepare<[], string>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .pluck()
    .all();
  const odd = [...here, ...tables].filter((name) => !(here.includes(name) && tables.includes(name)));
  if (odd.length === 0) return;
  throw new BackupFailed(
    'not-ours',
    `No backup was made: the database has unknown or missing tables (${odd.join(', ')}). Give the shop a database of its own.`,
  );
}

/** Its primary key, in order: a revision follows the one before it. */
async function keyOf(client: pg.Client, table: string): Promise<readonly string[]> {
  const { rows } = await client.query<{ name: string }>(
    `select a.attname as name from pg_index i
      join pg_attribute a on a.attrelid = i.indrelid and a.attnum = any (i.indkey)
      where i.indisprimary and i.indrelid = to_regclass($1)
      order by array_position(i.indkey::int2[], a.attnum)`,
    [pg.escapeIdentifier(table)],
  );
  return rows.map(({ name }) => pg.escapeIdentifier(name));
}

async function rowsIn(client: pg.Client, tables: readonly string[]): Promise<number> {
  let sum = 0;
  for (const table of tables) {
    const { rows } = await client.query<{ n: string }>(
      `select count(*) as n from ${pg.escapeIdentifier(table)}`,
    );
    sum += Number(rows[0]?.n);
  }
  return sum;
}

async function copyTable(
  client: pg.Client,
  raw: Database.Database,
  table: string,
  copied: () => void,
): Promise<number> {
  const name = pg.escapeIdentifier(table);
  const order = await keyOf(client, table);
  await client.query(
    `declare copying no scroll cursor for select * from ${name}${order.length > 0 ? ` order by ${order.join(', ')}` : ''}`,
  );
  const left: string[] = [];
  let insert: Database.Statement | undefined;
  for (;;) {
    const { rows } = await client.query<Record<string, unknown>>(`fetch ${AT_A_TIME} from copying`);
    if (rows.length === 0) break;
    const columns = Object.keys(rows[0]!);
    insert ??= raw.prepare(
      `INSERT INTO ${name} (${columns.map((one) => pg.escapeIdentifier(one)).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
    );
    for (const row of rows) {
      copied();
      insert.run(columns.map((one) => row[one]));
      left.push(hashOfRow(row));
    }
  }
  await client.query('close copying');
  const arrived: string[] = [];
  for (const row of raw.prepare<[], Record<string, unknown>>(`SELECT * FROM ${name}`).iterate()) {
    arrived.push(hashOfRow(row));
  }
  if (arrived.length !== left.length || hashOfRows(arrived) !== hashOfRows(left)) {
    throw new BackupFailed(
      'not-sound',
      `The copy of table ${table} differs from the original (${left.length} rows there, ${arrived.length} in the copy) and was deleted. Keep your earlier backups, and report this.`,
    );
  }
  return left.length;
}
