import { randomUUID } from 'node:crypto';
import { constants, createReadStream, existsSync, realpathSync } from 'node:fs';
import { copyFile, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { databaseUrlOf, dataDirOf, SettingsRefused } from '../../settings.ts';
import { moveShop } from '../carry/move.ts';
import { FILE_NAME, isDamage, makeFolder, openShop } from '../database/database.ts';
import { MoveFailed, RecordsUnavailable, RestoreFailed, ShopWillNotOpen } from '../database/errors.ts';
import { APPLICATION_ID, refuseOthers } from '../database/migrate.ts';
import { holdAlone, inUse, UNDER_WAY } from '../database/restoreGuard.ts';
import { FILES, flush, keep, receive } from '../photos/files.ts';
import { inWords } from './backup.ts';
import { BACKUPS } from './list.ts';
import { brokenFile, type Manifest, readManifest, writeManifest } from './manifest.ts';

export interface Restored {
  readonly manifest: Manifest;
  readonly bytes: number;
  /** Where the records lie that were there before; null when there were none. */
  readonly aside: string | null;
  /** Whether those can be restored by the same command. */
  readonly undoable: boolean;
}

/**
 * Puts a backup in the place of the present records, which are moved aside and never deleted. Everything is copied,
 * checked and opened before anything is moved. Throws RestoreFailed.
 */
export async function restore(options: {
  readonly dataDir: string;
  /** The backup's folder, or its name among the shop's own. */
  readonly folder: string;
  readonly now: () => Date;
}): Promise<Restored> {
  const { dataDir } = options;
  const backup = folderOf(options.folder, dataDir);
  const manifest = await examine(backup);
  makeFolder(resolve(dataDir));
  const held = holdAlone(dataDir);
  const stamp = options.now().toISOString().slice(0, 19).replace(/[-:]/g, '').replace('T', '-');
  const incoming = await freshFolder(join(dataDir, `restoring-${stamp}`));
  try {
    await copyIn(backup, manifest, incoming);
    await openOnce(incoming, manifest);
    const sound = settle(dataDir);
    const aside = await swap(dataDir, incoming, stamp, backup);
    const said = { at: options.now().toISOString(), reason: 'replaced' as const, missing: [] };
    const undoable =
      aside !== null &&
      sound !== null &&
      (await writeManifest(aside, { ...said, counts: sound }).then(
        () => true,
        () => false,
      ));
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    return { manifest, bytes, aside, undoable };
  } catch (error) {
    if (error instanceof RestoreFailed) throw error;
    throw new RestoreFailed(
      'not-written',
      `The backup could not be put into ${dataDir} (${messageOf(error)}). Nothing was lost: the present records are there, or in a folder there whose name begins with replaced-.`,
      error,
    );
  } finally {
    await rm(incoming, { recursive: true, force: true });
    held.release();
  }
}

/**
 * Puts a backup into an empty PostgreSQL database, and its photos beside those of the data folder. Nothing is moved
 * aside or written over: a database that holds a shop is refused. Throws RestoreFailed.
 */
export async function restoreIntoPostgres(options: {
  readonly dataDir: string;
  readonly databaseUrl: string;
  readonly folder: string;
  readonly now: () => Date;
}): Promise<Omit<Restored, 'aside' | 'undoable'>> {
  const { dataDir, databaseUrl, now } = options;
  const backup = folderOf(options.folder, dataDir);
  const manifest = await examine(backup);
  makeFolder(resolve(dataDir));
  const held = holdAlone(dataDir);
  const incoming = await freshFolder(join(dataDir, `restoring-${randomUUID()}`));
  try {
    await copyIn(backup, manifest, incoming);
    await openOnce(incoming, manifest);
    // They are named by what is in them, so that more of them do no harm should the rest be given up.
    for (const { path } of manifest.files.filter((file) => file.path !== FILE_NAME)) {
      const photo = createReadStream(join(incoming, path));
      await keep(dataDir, await receive(dataDir, photo, Number.POSITIVE_INFINITY));
    }
    await moveShop({ dataDir: incoming, url: databaseUrl, now });
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    return { manifest, bytes };
  } catch (error) {
    if (error instanceof MoveFailed && error.code === 'not-empty') {
      throw new RestoreFailed(
        'not-empty',
        'The database that DATABASE_URL names holds a shop already, and a restore never writes over one. Make an empty one (createdb -E UTF8 -T template0), name that in DATABASE_URL, restore into it and start the program with it. Nothing was changed.',
        error,
      );
    }
    const said =
      error instanceof RestoreFailed ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable ||
      error instanceof MoveFailed;
    if (said) throw error;
    throw new RestoreFailed(
      'not-written',
      `The backup could not be put into the database (${messageOf(error)}). Nothing was lost, and nothing of it was kept there.`,
      error,
    );
  } finally {
    await rm(incoming, { recursive: true, force: true });
    held.release();
  }
}

function folderOf(given: string, dataDir: string): string {
  for (const folder of [resolve(given), join(dataDir, BACKUPS, given), join(dataDir, given)]) {
    if (existsSync(join(folder, 'manifest.json'))) return folder;
  }
  throw new RestoreFailed(
    'no-backup',
    `There is no finished backup in ${resolve(given)}: manifest.json is missing. Give the folder of a backup, as in ${join(dataDir, BACKUPS, 'coverwright-20260302-170405')}. Nothing was changed.`,
  );
}

/** Everything in it is what its manifest says, it is ours, and it is not newer than this program. */
async function examine(folder: string): Promise<Manifest> {
  const manifest = await readManifest(folder);
  if (manifest === null) {
    throw new RestoreFailed(
      'not-ours',
      `${join(folder, 'manifest.json')} is not the manifest of a backup this program knows. Nothing was changed.`,
    );
  }
  const broken = await brokenFile(folder, manifest);
  if (broken !== null || !manifest.files.some((file) => file.path === FILE_NAME)) {
    throw isBroken(folder, `${broken ?? FILE_NAME} is missing or is not what was backed up`);
  }
  let raw: Database.Database | undefined;
  try {
    raw = new Database(join(folder, FILE_NAME), { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
      throw new RestoreFailed(
        'not-ours',
        `${folder} holds the records of another program. Nothing was changed.`,
      );
    }
    refuseOthers(raw);
    const pages = raw.pragma('integrity_check(1)', { simple: true });
    if (pages !== 'ok') throw isBroken(folder, String(pages));
    if (raw.prepare('PRAGMA foreign_key_check').all().length > 0) {
      throw isBroken(folder, 'some rows refer to nothing');
    }
  } catch (error) {
    if (error instanceof ShopWillNotOpen) {
      throw new RestoreFailed(error.code === 'newer' ? 'newer' : 'not-ours', error.message, error);
    }
    throw isDamage(error) ? isBroken(folder, messageOf(error)) : error;
  } finally {
    raw?.close();
  }
  return manifest;
}

function isBroken(folder: string, what: string): RestoreFailed {
  return new RestoreFailed(
    'broken',
    `The backup in ${folder} is broken (${what}). Take another one. Nothing was changed.`,
  );
}

async function freshFolder(path: string): Promise<string> {
  await rm(path, { recursive: true, force: true });
  await mkdir(path, { mode: 0o700 });
  return path;
}

async function copyIn(backup: string, manifest: Manifest, incoming: string): Promise<void> {
  for (const { path } of manifest.files) {
    const place = join(incoming, path);
    makeFolder(dirname(place));
    await copyFile(join(backup, path), place, constants.COPYFILE_EXCL);
    await flush(place);
  }
  const broken = await brokenFile(incoming, manifest);
  if (broken !== null) throw isBroken(backup, `${broken} changed while it was copied`);
}

/** Opens the copy as the program will, which brings an older one up to date, and counts. */
async function openOnce(incoming: string, manifest: Manifest): Promise<void> {
  const shop = openShop({ dataDir: incoming });
  try {
    const jobs = await shop.db
      .selectFrom('job')
      .select((eb) => eb.fn.countAll().as('n'))
      .executeTakeFirstOrThrow();
    if (Number(jobs.n) !== manifest.counts.job) {
      throw isBroken(incoming, `it holds ${jobs.n} jobs and says ${manifest.counts.job}`);
    }
  } finally {
    await shop.close();
  }
}

/**
 * Makes one file of the present records and their log, and gives their counts; null when there are none or they are
 * damaged: those are moved as they are. Throws RestoreFailed while anybody has them open.
 */
function settle(dataDir: string): Record<string, number> | null {
  const file = join(dataDir, FILE_NAME);
  if (!existsSync(file)) return null;
  let raw: Database.Database | undefined;
  try {
    raw = new Database(file, { timeout: 0 });
    // Works only for whoever is alone with the file.
    raw.pragma('journal_mode = DELETE');
    const count = (table: string) => Number(raw?.prepare(`SELECT count(*) FROM ${table}`).pluck().get());
    return { job: count('job'), reading: count('reading') };
  } catch (error) {
    const code = error instanceof Database.SqliteError ? error.code : '';
    if (code.startsWith('SQLITE_BUSY')) throw inUse(dataDir, error);
    return null;
  } finally {
    raw?.close();
  }
}

const RECORDS = [FILE_NAME, `${FILE_NAME}-wal`, `${FILE_NAME}-shm`, FILES];

/** The one moment in which anything moves. What it has begun is written down first. */
async function swap(dataDir: string, incoming: string, stamp: string, from: string): Promise<string | null> {
  const present = RECORDS.filter((name) => existsSync(join(dataDir, name)));
  const aside = join(dataDir, `replaced-${stamp}`);
  const note = join(dataDir, UNDER_WAY);
  await writeFile(note, JSON.stringify({ aside, from }), { mode: 0o600 });
  await flush(note);
  await flush(dataDir);
  if (present.length > 0) await mkdir(aside, { mode: 0o700 });
  for (const name of present) await rename(join(dataDir, name), join(aside, name));
  if (present.length > 0) await flush(aside);
  for (const name of [FILES, FILE_NAME]) {
    if (existsSync(join(incoming, name))) await rename(join(incoming, name), join(dataDir, name));
  }
  await flush(dataDir);
  await rm(note);
  await flush(dataDir);
  return present.length > 0 ? aside : null;
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

async function main(): Promise<void> {
  try {
    const folder = process.argv[2];
    if (folder === undefined) {
      throw new RestoreFailed('no-backup', 'Say which backup: npm run restore -- FOLDER.');
    }
    const dataDir = dataDirOf(process.env);
    const databaseUrl = databaseUrlOf(process.env);
    const now = () => new Date();
    if (databaseUrl !== null) {
      const done = await restoreIntoPostgres({ dataDir, databaseUrl, folder, now });
      console.log(
        `Restored into the database that DATABASE_URL names: ${inWords(done)}, as they were at ${done.manifest.at}, read back and found the same.`,
      );
      return;
    }
    const done = await restore({ dataDir, folder, now });
    console.log(`Restored into ${dataDir}: ${inWords(done)}, as they were at ${done.manifest.at}.`);
    if (done.aside === null) console.log('There were no records there before.');
    else if (done.undoable) {
      console.log(`The records that were there are in ${done.aside}.`);
      console.log(`To undo this: npm run restore -- ${done.aside}`);
    } else {
      console.log(
        `The records that were there are in ${done.aside}; kept as they are, and cannot be restored by this command.`,
      );
    }
  } catch (error) {
    const said =
      error instanceof RestoreFailed ||
      error instanceof SettingsRefused ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable ||
      error instanceof MoveFailed;
    if (!said) throw error;
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
