import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { FILE_NAME, makeFolder, openShop } from '../database/database.ts';
import { BackupFailed } from '../database/errors.ts';
import { findJobs } from '../jobs/findJobs.ts';
import { getJob } from '../jobs/readJob.ts';

/** Tables that only grow: a copy holds at least as many rows as there were when it was begun. */
export const GROWING = [
  'job',
  'job_revision',
  'job_sent',
  'reading',
  'photo',
  'entry',
  'entry_revision',
  'person',
];

export type Counts = Readonly<Record<string, number>>;

/** How many rows each of those tables has that the file knows. */
export function countsOf(raw: Database.Database): Counts {
  const known = raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all();
  return Object.fromEntries(
    GROWING.filter((table) => known.includes(table)).map((table) => [
      table,
      Number(raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get()),
    ]),
  );
}

/** The photos the records name. */
export function hashesIn(file: string): readonly string[] {
  const raw = new Database(file, { readonly: true });
  try {
    if (countsOf(raw).photo === undefined) return [];
    return raw.prepare<[], string>('SELECT DISTINCT hash FROM photo ORDER BY hash').pluck().all();
  } finally {
    raw.close();
  }
}

/** Opens a copy of the copy as a restored shop would be, and reads the newest job. */
export async function rehearse(folder: string): Promise<void> {
  const dataDir = join(folder, 'rehearsal');
  makeFolder(dataDir);
  try {
    copyFileSync(join(folder, FILE_NAME), join(dataDir, FILE_NAME));
    const shop = openShop({ dataDir });
    try {
      const { jobs } = await findJobs(shop.db, { limit: 1 });
      if (jobs[0]) await getJob(shop.db, jobs[0].id);
    } finally {
      await shop.close();
    }
  } catch (error) {
    throw unsound(messageOf(error), error);
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}

/** Reads the whole copy: its pages, what refers to what, and whether anything is missing. */
export function checkCopy(file: string, least: Counts): Counts {
  const raw = new Database(file, { fileMustExist: true });
  try {
    // No log beside it: the copy is one file.
    raw.pragma('journal_mode = DELETE');
    const faults: string[] = [];
    const pages = raw.pragma('integrity_check(1)', { simple: true });
    if (pages !== 'ok') faults.push(String(pages).split('\n').at(-1) ?? '');
    const loose = raw.prepare('PRAGMA foreign_key_check').all().length;
    if (loose > 0) faults.push(`${loose} broken references`);
    const counts = countsOf(raw);
    for (const [table, rows] of Object.entries(least)) {
      if ((counts[table] ?? 0) < rows) faults.push(`${table} has ${counts[table] ?? 0} rows of ${rows}`);
    }
    if (faults.length > 0) throw unsound(faults.join('; '), undefined);
    return counts;
  } catch (error) {
    throw error instanceof BackupFailed ? error : unsound(messageOf(error), error);
  } finally {
    raw.close();
  }
}

/** The refusal of a copy, or of records, that cannot be relied on. */
export function unsound(what: string, cause: unknown): BackupFailed {
  return new BackupFailed(
    'not-sound',
    `The copy failed its check (${what}) and was deleted. The shop's own data may be damaged. Keep your earlier backups.`,
    cause,
  );
}

export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
