import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { databaseUrlOf, dataDirOf, SettingsRefused } from '../settings.ts';
import { FILE_NAME, isDamage, makeFolder } from './database.ts';
import { BackupFailed } from './errors.ts';
import { APPLICATION_ID } from './migrate.ts';

export interface Backup {
  readonly file: string;
  readonly bytes: number;
  readonly jobs: number;
}

/** What is only ever added to: a copy holds at least as many rows as were there when it was begun. */
const GROWING = ['job', 'job_revision', 'reading', 'entry', 'entry_revision'] as const;
type Counts = Readonly<Record<(typeof GROWING)[number], number>>;

const ALL_PAGES = 0x7fffffff;

/**
 * Copies the shop's records, as they are at one moment, into a new file and checks it; a running program is not
 * disturbed. Never writes over an earlier backup. Throws BackupFailed.
 */
export async function backUp(options: {
  readonly dataDir: string;
  /** Where to; `backups` in the data folder unless told. */
  readonly folder?: string;
  readonly now: () => Date;
}): Promise<Backup> {
  const source = openSource(join(options.dataDir, FILE_NAME));
  const folder = options.folder ?? join(options.dataDir, 'backups');
  let place: Place | null = null;
  try {
    makeFolder(resolve(folder));
    place = takePlace(folder, options.now());
    const least = countsOf(source);
    // In one step: a copy in parts would begin again with every change another program makes meanwhile.
    await source.backup(place.unfinished, { progress: () => ALL_PAGES });
    const counts = check(place.unfinished, least);
    keep(place);
    return { file: place.file, bytes: statSync(place.file).size, jobs: counts.job };
  } catch (error) {
    if (place) for (const end of ['', '-journal']) rmSync(`${place.unfinished}${end}`, { force: true });
    if (error instanceof BackupFailed) throw error;
    if (isDamage(error)) throw unsound(messageOf(error), error);
    throw new BackupFailed(
      'not-written',
      `The backup could not be written in ${folder} (${messageOf(error)}). Give it a folder with room that can be written to.`,
      error,
    );
  } finally {
    source.close();
  }
}

function openSource(file: string): Database.Database {
  if (!existsSync(file)) {
    throw new BackupFailed(
      'no-shop',
      `There are no records to back up: ${file} does not exist. Check DATA_DIR.`,
    );
  }
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) === APPLICATION_ID) return raw;
  } catch (error) {
    raw?.close();
    throw new BackupFailed(
      'not-sound',
      `${file} cannot be read (${messageOf(error)}), so no backup was made. Keep your earlier backups.`,
      error,
    );
  }
  raw.close();
  throw new BackupFailed(
    'not-ours',
    `${file} holds no records of Coverwright, so no backup was made. Check DATA_DIR.`,
  );
}

interface Place {
  readonly file: string;
  /** Made by us alone; whoever holds it may make `file`. */
  readonly unfinished: string;
}

function takePlace(folder: string, at: Date): Place {
  const stamp = at.toISOString().slice(0, 19).replace(/[-:]/g, '').replace('T', '-');
  for (let n = 1; ; n++) {
    const file = join(folder, `coverwright-${stamp}${n === 1 ? '' : `-${n}`}.sqlite`);
    const unfinished = `${file}.unfinished`;
    if (!created(unfinished)) continue;
    if (!existsSync(file)) return { file, unfinished };
    rmSync(unfinished);
  }
}

/** Makes an empty file that only its owner reads; false when there is one. */
function created(file: string): boolean {
  try {
    closeSync(openSync(file, 'wx', 0o600));
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

function countsOf(raw: Database.Database): Counts {
  const count = (table: string) =>
    raw.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${table}`).get()?.n ?? 0;
  return Object.fromEntries(GROWING.map((table) => [table, count(table)])) as Counts;
}

/** Reads the whole copy: its pages, what refers to what, and whether anything is missing. */
function check(file: string, least: Counts): Counts {
  const raw = new Database(file, { fileMustExist: true });
  try {
    // One file, that can be carried away alone.
    raw.pragma('journal_mode = DELETE');
    const faults: string[] = [];
    const pages = raw.pragma('integrity_check(1)', { simple: true });
    if (pages !== 'ok') faults.push(String(pages).split('\n').at(-1) ?? '');
    const loose = raw.prepare('PRAGMA foreign_key_check').all().length;
    if (loose > 0) faults.push(`${loose} rows refer to nothing`);
    const counts = countsOf(raw);
    for (const table of GROWING) {
      if (counts[table] < least[table]) {
        faults.push(`${table} has ${counts[table]} rows of ${least[table]}`);
      }
    }
    if (faults.length > 0) throw unsound(faults.join('; '), undefined);
    return counts;
  } catch (error) {
    throw error instanceof BackupFailed ? error : unsound(messageOf(error), error);
  } finally {
    raw.close();
  }
}

function unsound(what: string, cause: unknown): BackupFailed {
  return new BackupFailed(
    'not-sound',
    `The copy failed its check (${what}) and was thrown away: the records themselves may be damaged. Keep your earlier backups.`,
    cause,
  );
}

function keep({ file, unfinished }: Place): void {
  flush(unfinished);
  renameSync(unfinished, file);
  flush(join(file, '..'));
}

function flush(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

async function main(): Promise<void> {
  try {
    const folder = process.argv[2];
    const dataDir = dataDirOf(process.env);
    if (databaseUrlOf(process.env) !== null) {
      throw new BackupFailed(
        'elsewhere',
        `No backup was made: DATABASE_URL is set, and PostgreSQL is backed up with its own tools, as in pg_dump --format=custom --file=shop.dump "$DATABASE_URL". Copy ${dataDir} beside it, where the photos are.`,
      );
    }
    const made = await backUp({
      dataDir,
      now: () => new Date(),
      ...(folder ? { folder: resolve(folder) } : {}),
    });
    const jobs = made.jobs === 1 ? '1 job' : `${made.jobs} jobs`;
    console.log(`Backed up and checked: ${jobs}, ${Math.ceil(made.bytes / 1024)} kB, in ${made.file}.`);
  } catch (error) {
    if (!(error instanceof BackupFailed) && !(error instanceof SettingsRefused)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

const started = process.argv[1];
if (
  started !== undefined &&
  existsSync(started) &&
  realpathSync(started) === fileURLToPath(import.meta.url)
) {
  await main();
}
