import { existsSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { type Step, Stopped, unseen, withBar } from '../../progress.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { type Db, FILE_NAME, write } from '../database/database.ts';
import { MoveFailed, RecordsUnavailable, ShopWillNotOpen } from '../database/errors.ts';
import { APPLICATION_ID, MIGRATIONS, refuseOthers } from '../database/migrate.ts';
import { openPostgres } from '../database/postgres.ts';
import { hashOfRow, hashOfRows } from '../database/rowsHash.ts';
import { shopOfCommand } from './commandFolder.ts';

export interface MovedTable {
  readonly table: string;
  readonly rows: number;
  /** Hash of all its rows, the same on both sides. */
  readonly sha256: string;
}

type Row = Readonly<Record<string, unknown>>;

/** PostgreSQL takes 65 535 values at a time; fewer, and not too many characters, keep each statement short. */
const MOST_VALUES = 20_000;
const MOST_CHARACTERS = 4_000_000;
const READ_BACK_AT_A_TIME = 1000;
/** Of one statement: a server that also builds indexes may take its time, one that is frozen still ends the move. */
const DEADLINE_MS = 10 * 60_000;
/** Between two statements: a million rows are summed up there. */
const LONGEST_PAUSE_MS = 10 * 60_000;

/**
 * Copies the shop in the data folder into an empty PostgreSQL database, in one transaction, and reads it back there
 * before it is kept. The shop it comes from is only read. Throws MoveFailed; then nothing was kept.
 */
export async function moveShop(options: {
  readonly dataDir: string;
  readonly url: string;
  readonly now: () => Date;
  readonly step?: Step;
}): Promise<readonly MovedTable[]> {
  const { dataDir, url, now, step = unseen } = options;
  const source = openSource(join(dataDir, FILE_NAME));
  try {
    const target = await openPostgres({ url, dataDir, now, deadlineMs: DEADLINE_MS });
    try {
      return await write(target.db, async (trx) => {
        await sql`set local idle_in_transaction_session_timeout = ${sql.lit(LONGEST_PAUSE_MS)}`.execute(trx);
        const begun = source.pragma('data_version', { simple: true });
        const tables = await inOrder(trx);
        refuseForgotten(source, tables);
        const moved: MovedTable[] = [];
        // One consistent state, so that no row refers to one that is missing.
        source.exec('BEGIN');
        const of = tables.reduce((sum, table) => sum + rowsIn(source, table), 0);
        let done = 0;
        const arrived = (rows: number) => {
          done += rows;
          step('Copying and comparing rows', done, of);
        };
        for (const table of tables) moved.push(await moveTable(source, trx, table, arrived));
        source.exec('COMMIT');
        if (source.pragma('data_version', { simple: true }) !== begun) {
          throw new MoveFailed(
            'busy',
            `The shop in ${dataDir} changed during the move. Nothing was moved. Stop the program and move again.`,
          );
        }
        return moved;
      });
    } finally {
      await target.close();
    }
  } finally {
    source.close();
  }
}

function openSource(file: string): Database.Database {
  if (!existsSync(file)) {
    throw new MoveFailed('no-shop', `There is no shop to move: ${file} does not exist. Check DATA_DIR.`);
  }
  const raw = new Database(file, { readonly: true, fileMustExist: true });
  try {
    if (raw.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
      throw new MoveFailed('not-ours', `${file} is not a Coverwright shop. Check DATA_DIR.`);
    }
    refuseOthers(raw);
    const steps = raw.prepare<[], number>('SELECT count(*) FROM schema_migration').pluck().get();
    if (steps !== MIGRATIONS.length) {
      throw new MoveFailed(
        'older',
        `${file} is from an earlier version. Start the program once without DATABASE_URL to bring it up to date, then move.`,
      );
    }
    return raw;
  } catch (error) {
    raw.close();
    throw error;
  }
}

/** A table that only one of the two has would be left behind. */
function refuseForgotten(source: Database.Database, tables: readonly string[]): void {
  const there = source
    .prepare<[], string>(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'schema_migration'",
    )
    .pluck()
    .all();
  const odd = [...there, ...tables].filter((name) => !(there.includes(name) && tables.includes(name)));
  if (odd.length > 0) {
    throw new MoveFailed(
      'differs',
      `Only one of the two databases has ${odd.join(', ')}. Nothing was moved.`,
    );
  }
}

/** The shop's tables, each after those its rows refer to. References that are only checked at the end do not count. */
async function inOrder(db: Db): Promise<readonly string[]> {
  const tables = await sql<{ name: string }>`
    select tablename as name from pg_tables where schemaname = current_schema() and tablename <> 'schema_migration'
    order by tablename`.execute(db);
  const references = await sql<{ name: string; refers_to: string }>`
    select t.relname as name, r.relname as refers_to from pg_constraint c
    join pg_class t on t.oid = c.conrelid join pg_class r on r.oid = c.confrelid
    where c.contype = 'f' and not c.condeferrable and c.connamespace = current_schema()::regnamespace`.execute(
    db,
  );
  const order: string[] = [];
  const visit = (name: string) => {
    if (order.includes(name)) return;
    for (const one of references.rows) {
      if (one.name === name && one.refers_to !== name) visit(one.refers_to);
    }
    order.push(name);
  };
  for (const { name } of tables.rows) visit(name);
  return order;
}

function rowsIn(source: Database.Database, table: string): number {
  return Number(source.prepare(`SELECT count(*) FROM ${table}`).pluck().get());
}

async function moveTable(
  source: Database.Database,
  db: Db,
  table: string,
  arrived: (rows: number) => void,
): Promise<MovedTable> {
  if ((await sql`select 1 from ${sql.table(table)} limit 1`.execute(db)).rows.length > 0) {
    throw new MoveFailed(
      'not-empty',
      `The database in DATABASE_URL already has a shop (rows in ${table}). Nothing was moved. Use an empty database.`,
    );
  }
  const before = { table, ...(await sendRows(source, db, table, arrived)) };
  const after = { table, ...(await readBack(db, table)) };
  if (before.rows !== after.rows || before.sha256 !== after.sha256) {
    throw new MoveFailed(
      'differs',
      `Table ${table} did not arrive as it left (${before.rows} rows, ${before.sha256}; ${after.rows} rows, ${after.sha256}). Nothing was moved. Go on using the shop as it is, and report this.`,
    );
  }
  return after;
}

type Sum = Omit<MovedTable, 'table'>;

/** Sends a table's rows in the order they were written, since a revision follows the one before it; never all at once. */
async function sendRows(
  source: Database.Database,
  db: Db,
  table: string,
  arrived: (rows: number) => void,
): Promise<Sum> {
  const hashes: string[] = [];
  let waiting: Row[] = [];
  let characters = 0;
  const send = async () => {
    const [first] = waiting;
    if (first === undefined) return;
    const columns = Object.keys(first);
    const values = waiting.map((row) => sql`(${sql.join(columns.map((name) => row[name]))})`);
    await sql`insert into ${sql.table(table)} (${sql.join(columns.map((name) => sql.ref(name)))})
      values ${sql.join(values)}`.execute(db);
    arrived(waiting.length);
    waiting = [];
    characters = 0;
  };
  for (const row of source.prepare<[], Row>(`SELECT * FROM ${table} ORDER BY rowid`).iterate()) {
    hashes.push(hashOfRow(row));
    waiting.push(row);
    const cells = Object.values(row);
    characters += cells.reduce<number>((sum, one) => sum + (typeof one === 'string' ? one.length : 0), 0);
    if (waiting.length * cells.length >= MOST_VALUES || characters >= MOST_CHARACTERS) await send();
  }
  await send();
  return { rows: hashes.length, sha256: hashOfRows(hashes) };
}

/** What a table holds over there, read a thousand rows at a time. */
async function readBack(db: Db, table: string): Promise<Sum> {
  const hashes: string[] = [];
  await sql`declare arrived no scroll cursor for select * from ${sql.table(table)}`.execute(db);
  for (;;) {
    const { rows } = await sql<Row>`fetch ${sql.lit(READ_BACK_AT_A_TIME)} from arrived`.execute(db);
    if (rows.length === 0) break;
    hashes.push(...rows.map(hashOfRow));
  }
  await sql`close arrived`.execute(db);
  return { rows: hashes.length, sha256: hashOfRows(hashes) };
}

const NOTHING_MOVED = 'Nothing was moved: the database is still empty, and the shop is as it was.';

async function main(): Promise<void> {
  try {
    const { dataDir, databaseUrl: url } = shopOfCommand(process.env);
    if (url === null) {
      throw new MoveFailed('nowhere', 'Set DATABASE_URL to an empty PostgreSQL database to move to.');
    }
    const now = () => new Date();
    const moved = await withBar(NOTHING_MOVED, (step) => moveShop({ dataDir, url, now, step }));
    const width = Math.max(...moved.map(({ table }) => table.length));
    for (const { table, rows, sha256 } of moved) {
      console.log(`${table.padEnd(width)} ${String(rows).padStart(8)} rows  sha256 ${sha256.slice(0, 16)}`);
    }
    console.log('Moved: every table is the same on both sides.');
    console.log(
      `From now on, start the program with DATABASE_URL. Photos stay in ${dataDir}, which is still needed. ${join(dataDir, FILE_NAME)} is unchanged and no longer used.`,
    );
  } catch (error) {
    const said =
      error instanceof MoveFailed ||
      error instanceof Stopped ||
      error instanceof SettingsRefused ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable;
    if (!said) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

if (startedAs('move')) await main();
