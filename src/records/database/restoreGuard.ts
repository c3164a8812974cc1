import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { makeFolder } from './database.ts';
import { RestoreFailed, ShopWillNotOpen } from './errors.ts';

/** File in the data folder while a restore is moving records. */
export const UNDER_WAY = 'restore-under-way.json';
const LOCK = 'in-use.lock';

export interface Held {
  release(): void;
}

/**
 * Says, as long as the program runs, that the data folder is in use; several programs may say so at once, a restore only
 * alone. It is a file lock, so it ends with the program, however that ends. Throws ShopWillNotOpen.
 */
export function holdShop(dataDir: string): Held {
  const path = join(dataDir, UNDER_WAY);
  if (existsSync(path)) {
    const { aside, from } = JSON.parse(readFileSync(path, 'utf8')) as { aside: string; from: string };
    throw new ShopWillNotOpen(
      'parted',
      `A restore stopped halfway. Run it again: npm run restore -- ${from}. The shop as it was before is in ${aside}.`,
    );
  }
  let lock: Database.Database;
  try {
    makeFolder(dataDir);
    lock = new Database(join(dataDir, LOCK), { timeout: 0 });
  } catch {
    // A folder that cannot be written to: opening the records says so with a better sentence.
    return { release: () => {} };
  }
  try {
    lock.exec('BEGIN');
    lock.prepare('SELECT count(*) FROM sqlite_schema').get();
    return { release: () => lock.close() };
  } catch (error) {
    lock.close();
    throw new ShopWillNotOpen(
      'not-writable',
      `A restore into ${dataDir} is running. Start the program when it is done.`,
      error,
    );
  }
}

/** Keeps every program off the data folder until released. Throws RestoreFailed while one runs on it. */
export function holdAlone(dataDir: string): Held {
  const lock = new Database(join(dataDir, LOCK), { timeout: 0 });
  try {
    lock.exec('BEGIN EXCLUSIVE');
    return { release: () => lock.close() };
  } catch (error) {
    lock.close();
    throw inUse(dataDir, error);
  }
}

export function inUse(dataDir: string, cause: unknown): RestoreFailed {
  return new RestoreFailed(
    'in-use',
    `The program is running on ${dataDir}. Stop it, then restore. Nothing was changed.`,
    cause,
  );
}
