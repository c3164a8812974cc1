import { existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { type Step, Stopped, unseen, withBar } from '../../progress.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { shopOfCommand } from '../carry/commandFolder.ts';
import { FILE_NAME, isDamage, makeFolder } from '../database/database.ts';
import { BackupFailed } from '../database/errors.ts';
import { APPLICATION_ID, MIGRATIONS } from '../database/migrate.ts';
import { flush } from '../photos/files.ts';
import { backUpFiles } from './backupFiles.ts';
import {
  type Counts,
  checkCopy,
  countsOf,
  GROWING,
  hashesIn,
  messageOf,
  rehearse,
  unsound,
} from './copyCheck.ts';
import { BACKUPS } from './list.ts';
import { type BackupReason, type Manifest, writeManifest } from './manifest.ts';

export interface Backup {
  readonly folder: string;
  readonly bytes: number;
  readonly manifest: Manifest;
}

/** What is left of a backup that was stopped. */
export const NO_BACKUP = 'No backup was made. The shop and its earlier backups are as they were.';

const ALL_PAGES = 0x7fffffff;

/**
 * Copies the shop's records, as they are at one moment, and their photos into a new folder, checks the copy, and opens
 * it once as a restore would; a running program is not disturbed. Never writes over an earlier backup. Throws
 * BackupFailed.
 */
export async function backUp(options: {
  readonly dataDir: string;
  /** The PostgreSQL database that holds the records; null, or left out, when they are in the data folder. */
  readonly databaseUrl?: string | null;
  /** Folder to put it in; `backups` in the data folder when left out. */
  readonly folder?: string;
  readonly reason?: BackupReason;
  readonly now: () => Date;
  readonly step?: Step;
}): Promise<Backup> {
  const { dataDir, databaseUrl = null, reason = 'asked', step = unseen } = options;
  const source =
    databaseUrl === null ? fileSource(join(dataDir, FILE_NAME)) : postgresSource(databaseUrl, options.now);
  const folder = resolve(options.folder ?? join(dataDir, BACKUPS));
  let place: Place | null = null;
  try {
    makeFolder(folder);
    const at = options.now();
    place = takePlace(folder, at);
    const copy = join(place.unfinished, FILE_NAME);
    const counts = checkCopy(copy, await source.copyTo(copy, step));
    step('Opening the copy once', 0, 1);
    await rehearse(place.unfinished);
    const hashes = hashesIn(copy);
    const missing = await backUpFiles({ hashes, dataDir, backups: folder, into: place.unfinished, step });
    step('Writing down what is in it', 0, 1);
    await flush(copy);
    const manifest = await writeManifest(place.unfinished, {
      at: at.toISOString(),
      reason,
      counts: { ...counts, files: hashes.length - missing.length },
      missing: [...missing],
    });
    renameSync(place.unfinished, place.folder);
    await flush(folder);
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    return { folder: place.folder, bytes, manifest };
  } catch (error) {
    if (place) rmSync(place.unfinished, { recursive: true, force: true });
    if (error instanceof BackupFailed || error instanceof Stopped) throw error;
    if (isDamage(error)) throw unsound(messageOf(error), error);
    throw new BackupFailed(
      'not-written',
      `The backup could not be written to ${folder} (${messageOf(error)}). Choose a folder with free space that can be written to.`,
      error,
    );
  } finally {
    source.close();
  }
}

/** Makes a backup of records that this program is about to bring up to its own version; null when there is no need. */
export async function backUpBeforeUpgrade(from: {
  readonly dataDir: string;
  readonly databaseUrl: string | null;
  readonly now: () => Date;
}): Promise<Backup | null> {
  const { dataDir, databaseUrl } = from;
  const older =
    databaseUrl === null
      ? isOlder(join(dataDir, FILE_NAME))
      : await (await fromPostgres()).isOlderPostgres(databaseUrl);
  return older ? backUp({ ...from, reason: 'before-upgrade' }) : null;
}

/** Its driver is loaded where it is used: a shop in a file starts without it. */
const fromPostgres = () => import('./fromPostgres.ts');

/** Where the records are copied from. */
interface Source {
  /** Copies into a new file; returns how many rows the copy must hold at least. */
  copyTo(file: string, step: Step): Promise<Counts>;
  close(): void;
}

function fileSource(file: string): Source {
  const raw = openSource(file);
  return {
    copyTo: async (copy, step) => {
      step('Copying and checking the records', 0, 1);
      const least = countsOf(raw);
      // In one step: SQLite restarts a copy in parts whenever another program changes something.
      await raw.backup(copy, { progress: () => ALL_PAGES });
      return least;
    },
    close: () => raw.close(),
  };
}

function postgresSource(url: string, now: () => Date): Source {
  return {
    copyTo: async (copy, step) => {
      const { copyFromPostgres } = await fromPostgres();
      const copied = await copyFromPostgres(url, copy, now, step);
      return Object.fromEntries(Object.entries(copied).filter(([table]) => GROWING.includes(table)));
    },
    close: () => {},
  };
}

/** Whether a file holds records of an earlier version. One that cannot be read is left to whoever opens it. */
function isOlder(file: string): boolean {
  if (!existsSync(file)) return false;
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) !== APPLICATION_ID) return false;
    const version = raw.prepare('SELECT max(number) FROM schema_migration').pluck().get();
    return Number(version) < (MIGRATIONS.at(-1)?.number ?? 0);
  } catch {
    return false;
  } finally {
    raw?.close();
  }
}

function openSource(file: string): Database.Database {
  if (!existsSync(file)) {
    throw new BackupFailed('no-shop', `There is no shop to back up: ${file} does not exist. Check DATA_DIR.`);
  }
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) === APPLICATION_ID) return raw;
  } catch (error) {
    raw?.close();
    throw new BackupFailed(
      'not-sound',
      `${file} can't be read (${messageOf(error)}). No backup was made. Keep your earlier backups.`,
      error,
    );
  }
  raw.close();
  throw new BackupFailed(
    'not-ours',
    `${file} is not a Coverwright shop. No backup was made. Check DATA_DIR.`,
  );
}

interface Place {
  readonly folder: string;
  /** Created by this program only; having created it gives the right to the name `folder`. */
  readonly unfinished: string;
}

function takePlace(folder: string, at: Date): Place {
  const stamp = at.toISOString().slice(0, 19).replace(/[-:]/g, '').replace('T', '-');
  for (let n = 1; ; n++) {
    const place = join(folder, `coverwright-${stamp}${n === 1 ? '' : `-${n}`}`);
    const unfinished = `${place}.unfinished`;
    if (!created(unfinished)) continue;
    if (!existsSync(place)) return { folder: place, unfinished };
    rmSync(unfinished, { recursive: true });
  }
}

/** Makes a folder that only its owner reads; false when there is one. */
function created(folder: string): boolean {
  try {
    mkdirSync(folder, { mode: 0o700 });
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'EEXIST') return false;
    throw error;
  }
}

/** What was copied, in a few words. */
export function inWords({ manifest, bytes }: Pick<Backup, 'manifest' | 'bytes'>): string {
  const { counts, missing } = manifest;
  const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;
  const lost =
    missing.length === 0 ? '' : `, ${count(missing.length, 'photo')} missing or damaged on the disk`;
  return `${count(counts.job ?? 0, 'job')}, ${count(counts.reading ?? 0, 'reading')}, ${count(counts.files ?? 0, 'photo')}${lost}, ${Math.ceil(bytes / 1024)} kB`;
}

async function main(): Promise<void> {
  try {
    const folder = process.argv[2];
    const from = {
      ...shopOfCommand(process.env),
      now: () => new Date(),
      ...(folder ? { folder: resolve(folder) } : {}),
    };
    const made = await withBar(NO_BACKUP, (step) => backUp({ ...from, step }));
    console.log(`Backed up and checked: ${inWords(made)}, in ${made.folder}.`);
  } catch (error) {
    const said =
      error instanceof BackupFailed || error instanceof SettingsRefused || error instanceof Stopped;
    if (!said) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

if (startedAs('backup')) await main();
