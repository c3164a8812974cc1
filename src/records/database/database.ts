import { accessSync, closeSync, constants, existsSync, mkdirSync, openSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type Transaction,
  type TransactionSettings,
} from 'kysely';
import { RecordsUnavailable, ShopWillNotOpen } from './errors.ts';
import { APPLICATION_ID, migrate, refuseOthers } from './migrate.ts';
import { isCollision } from './postgresErrors.ts';
import { PreparedOnce } from './preparedOnce.ts';
import type { Tables } from './tables.ts';

export const FILE_NAME = 'coverwright.sqlite';
const PATIENCE_MS = 5000;
const MOST_TRIES = 4;

export type Db = Kysely<Tables>;

export interface Shop {
  readonly db: Db;
  readonly dataDir: string;
  readonly engine: 'sqlite' | 'postgres';
  /** Where the records are, in words for people. */
  readonly where: string;
  close(): Promise<void>;
}

/** Opens the shop's records in `dataDir`, making them if there are none. Throws ShopWillNotOpen. */
export function openShop(options: {
  readonly dataDir: string;
  readonly now?: () => Date;
  /** How long a change waits while another program is changing something. */
  readonly patienceMs?: number;
}): Shop {
  const { dataDir, now = () => new Date(), patienceMs = PATIENCE_MS } = options;
  const file = join(dataDir, FILE_NAME);
  let raw: Database.Database | undefined;
  try {
    makeFolder(resolve(dataDir));
    accessSync(dataDir, constants.R_OK | constants.W_OK | constants.X_OK);
    if (isNew(file)) closeSync(openSync(file, 'a', 0o600));
    else examine(file);
    accessSync(file, constants.R_OK | constants.W_OK);
    raw = new Database(file, { timeout: patienceMs });
    return opened(raw, dataDir, now, patienceMs);
  } catch (error) {
    raw?.close();
    throw error instanceof ShopWillNotOpen ? error : willNotOpen(error, file);
  }
}

/** Records in memory, gone when closed: for tests. They begin as a copy of `file`, where that is given. */
export function openShopInMemory(options: { readonly now?: () => Date; readonly file?: Buffer } = {}): Shop {
  const raw = new Database(options.file ?? ':memory:');
  return opened(raw, ':memory:', options.now ?? (() => new Date()), PATIENCE_MS);
}

function opened(raw: Database.Database, dataDir: string, now: () => Date, patienceMs: number): Shop {
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = FULL');
  // Without it, INSERT OR REPLACE would delete a row without firing the triggers that forbid deleting.
  raw.pragma('recursive_triggers = ON');
  migrate(raw, now);
  // SQLite’s own waiting for a lock would block the whole process; whoever changes something waits in ShopDriver.
  raw.pragma('busy_timeout = 0');
  const db = new Kysely<Tables>({ dialect: new ShopDialect(raw, patienceMs) });
  return {
    db,
    dataDir,
    engine: 'sqlite',
    where: dataDir,
    close: async () => {
      await db.destroy();
      raw.close();
    },
  };
}

/** Makes a folder and those it lies in. Node's own recursive mkdir never returns where one cannot be made, as in /proc. */
export function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    // Another process may have been first.
    if (codeOf(error) !== 'EEXIST') throw error;
  }
}

/** True when there are no records yet. */
function isNew(file: string): boolean {
  if (existsSync(file) && statSync(file).size > 0) return false;
  // SQLite discards a log whose database file is missing or empty, and the log may hold a day's work.
  const log = `${file}-wal`;
  if (existsSync(log) && statSync(log).size > 0) {
    throw new ShopWillNotOpen(
      'parted',
      `${log} has data, but ${file}, which it belongs to, is missing or empty. Put that file back, or restore a backup into another folder. Nothing was changed.`,
    );
  }
  return true;
}

/** Looks at an existing file without writing to it. */
function examine(file: string): void {
  const raw = new Database(file, { readonly: true, fileMustExist: true, timeout: PATIENCE_MS });
  try {
    const tables = raw.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get();
    const applicationId = raw.pragma('application_id', { simple: true });
    if (tables !== undefined && tables.n > 0 && applicationId !== APPLICATION_ID) {
      throw new ShopWillNotOpen(
        'not-ours',
        `${file} belongs to another program. Set DATA_DIR to another folder. Nothing was changed.`,
      );
    }
    refuseOthers(raw);
    const checked = raw.pragma('quick_check(1)', { simple: true });
    if (checked !== 'ok') throw damaged(file, checked);
  } finally {
    raw.close();
  }
}

function damaged(file: string, cause: unknown): ShopWillNotOpen {
  return new ShopWillNotOpen(
    'damaged',
    `${file} is damaged or not a database. Leave it and the files beside it as they are, and restore the newest backup into another folder. Nothing was changed.`,
    cause,
  );
}

function willNotOpen(error: unknown, file: string): unknown {
  const code = codeOf(error);
  if (isDamage(error)) return damaged(file, error);
  if (code === '') return error;
  if (code.startsWith('SQLITE_BUSY')) {
    return new ShopWillNotOpen(
      'busy',
      `${file} is locked by another program. Stop that program or wait for it, then start again. Nothing was changed.`,
      error,
    );
  }
  const why = error instanceof Error ? error.message : code;
  return new ShopWillNotOpen(
    'not-writable',
    `Nothing can be saved in ${file} (${why}). Allow this account to write there and free some disk space, or set DATA_DIR to another folder.`,
    error,
  );
}

/** Whether SQLite says that a file is damaged or is no database. */
export function isDamage(error: unknown): boolean {
  return /^SQLITE_(CORRUPT|NOTADB)/.test(codeOf(error));
}

/** The code of an error of SQLite (`SQLITE_FULL`) or of the file system (`EACCES`); '' for any other. */
function codeOf(error: unknown): string {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return '';
  return error instanceof Database.SqliteError || 'syscall' in error ? error.code : '';
}

/** A transaction that writes takes the lock at once: one that read first and then wrote could lose to another. */
class ShopDriver extends SqliteDriver {
  readonly #raw: Database.Database;
  readonly #patienceMs: number;

  constructor(raw: Database.Database, patienceMs: number) {
    super({ database: new PreparedOnce(raw) });
    this.#raw = raw;
    this.#patienceMs = patienceMs;
  }

  override async beginTransaction(
    connection: DatabaseConnection,
    { accessMode }: TransactionSettings = {},
  ): Promise<void> {
    if (accessMode === 'read only') {
      await connection.executeQuery(CompiledQuery.raw('begin'));
      return;
    }
    for (let waited = 0, wait = 1; ; waited += wait, wait = Math.min(2 * wait, 100)) {
      try {
        await connection.executeQuery(CompiledQuery.raw('begin immediate'));
        return;
      } catch (error) {
        if (!codeOf(error).startsWith('SQLITE_BUSY') || waited >= this.#patienceMs) throw error;
      }
      // The only connection is lent to readers meanwhile, so that pages open while a change waits.
      await this.releaseConnection();
      await pause(wait);
      await this.acquireConnection();
    }
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    // A full disk makes SQLite roll back by itself; a second rollback would hide the reason.
    if (this.#raw.inTransaction) await super.rollbackTransaction(connection);
  }
}

class ShopDialect extends SqliteDialect {
  readonly #raw: Database.Database;
  readonly #patienceMs: number;

  constructor(raw: Database.Database, patienceMs: number) {
    super({ database: raw });
    this.#raw = raw;
    this.#patienceMs = patienceMs;
  }

  override createDriver(): SqliteDriver {
    return new ShopDriver(this.#raw, this.#patienceMs);
  }
}

/**
 * Runs `fn` in one transaction: all of it is kept, or nothing. Inside another `write` it joins that one, so its
 * errors must be let through. Use the `trx` it is given, never the outer `db`, which waits for this to end. `fn` may
 * be run again from its beginning, so it changes nothing but the records.
 */
export async function write<T>(db: Db, fn: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  if (isTransaction(db)) return fn(db);
  for (let tries = 1; ; tries++) {
    try {
      return await db.transaction().execute(fn);
    } catch (error) {
      if (!isCollision(error) || tries >= MOST_TRIES) throw unavailable(error);
    }
    await pause(20 * tries * Math.random());
  }
}

/** Runs `fn`, which only reads, on the records as they are at one moment. Use the `trx` it is given. */
export async function readAtOnce<T>(db: Db, fn: (trx: Transaction<Tables>) => Promise<T>): Promise<T> {
  try {
    return await db.transaction().setAccessMode('read only').execute(fn);
  } catch (error) {
    throw unavailable(error);
  }
}

function isTransaction(db: Db): db is Transaction<Tables> {
  return db.isTransaction;
}

/** An error of the records' file, or of the disk it and the photos lie on, in the shop's words; any other as it is. */
export function unavailable(error: unknown): unknown {
  const code = codeOf(error);
  if (code.startsWith('SQLITE_BUSY')) {
    return new RecordsUnavailable(
      'busy',
      'The shop is busy saving something else. This was not saved; try again.',
      error,
    );
  }
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)$/.test(code)) {
    return new RecordsUnavailable(
      'full',
      'The disk is full. This was not saved; free some space and try again.',
      error,
    );
  }
  if (/^(SQLITE_(IOERR|READONLY|CANTOPEN|CORRUPT|NOTADB)|(EACCES|EPERM|EROFS|EIO)$)/.test(code)) {
    return new RecordsUnavailable(
      'disk',
      `This could not be saved (${code}). Stop the program and check the disk.`,
      error,
    );
  }
  return error;
}
