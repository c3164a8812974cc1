import { existsSync } from 'node:fs';
import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { printInstant } from '../../../shared/words/day.ts';
import { type Step, Stopped, unseen, withBar } from '../../progress.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { fileSettings } from '../../settingsFile.ts';
import { shopOfCommand } from '../carry/commandFolder.ts';
import { FILE_NAME, makeFolder } from '../database/database.ts';
import { MoveFailed, RecordsUnavailable, RestoreFailed, ShopWillNotOpen } from '../database/errors.ts';
import { holdAlone, inUse, UNDER_WAY } from '../database/restoreGuard.ts';
import { FILES, flush } from '../photos/files.ts';
import { inWords } from './backup.ts';
import { withBackup } from './backupGiven.ts';
import { messageOf } from './copyCheck.ts';
import { copyIn, examine, freshFolder, openOnce } from './incoming.ts';
import { type Manifest, writeManifest } from './manifest.ts';
import { type Access, accessInWords, closeDoors, peopleDiffer, peopleIn } from './restoredAccess.ts';
import { restoreIntoPostgres } from './restoreIntoPostgres.ts';

export interface Restored {
  readonly manifest: Manifest;
  readonly bytes: number;
  /** Folder with the records that were replaced; null when there were none. */
  readonly aside: string | null;
  /** Whether that folder can itself be restored by the same command. */
  readonly undoable: boolean;
  readonly access: Access;
}

/**
 * Puts a backup in the place of the present records, which are moved aside and never deleted. Everything is copied,
 * checked and opened before anything is moved. Throws RestoreFailed.
 */
export async function restore(options: RestoreAsked): Promise<Restored> {
  const stamp = options.now().toISOString().slice(0, 19).replace(/[-:]/g, '').replace('T', '-');
  const { folder, dataDir, step = unseen } = options;
  return withBackup(folder, dataDir, `restoring-zip-${stamp}`, step, (backup, given) =>
    restoreFolder({ backup, given, stamp }, options),
  );
}

interface RestoreAsked {
  readonly dataDir: string;
  /** The backup's folder, the folder around it, its .zip, or its name among the shop's own. */
  readonly folder: string;
  readonly now: () => Date;
  /** Asked where people stand otherwise in the backup than now; without a yes nothing is restored. */
  readonly confirm?: (differ: readonly string[]) => boolean | Promise<boolean>;
  /** Asked until everything is copied and checked; once the shop is being replaced it is not asked any more. */
  readonly step?: Step;
}

async function restoreFolder(
  { backup, given, stamp }: { readonly backup: string; readonly given: string; readonly stamp: string },
  options: RestoreAsked,
): Promise<Restored> {
  const { dataDir, step = unseen } = options;
  const manifest = await examine(backup, step);
  makeFolder(resolve(dataDir));
  const held = holdAlone(dataDir);
  const incoming = await freshFolder(join(dataDir, `restoring-${stamp}`));
  try {
    await copyIn(backup, manifest, incoming, step);
    step('Opening the copy once', 0, 1);
    const backupPeople = await openOnce(incoming, manifest, async () => peopleIn(join(incoming, FILE_NAME)));
    const sound = settle(dataDir);
    const before = peopleIn(join(dataDir, FILE_NAME));
    const present = before !== null && before.length > 0 ? before : null;
    const differ = peopleDiffer(present, backupPeople);
    if (differ.length > 0 && !(await options.confirm?.(differ))) throw notConfirmed(differ);
    const tokens = await openOnce(incoming, manifest, (db) => closeDoors(db, present, options.now));
    const access: Access = {
      people: peopleIn(join(incoming, FILE_NAME)) ?? [],
      differ,
      tokens,
      from: present !== null ? 'present' : before === null ? 'backup-unread' : 'backup',
    };
    const aside = await swap(dataDir, incoming, stamp, given);
    const said = { at: options.now().toISOString(), reason: 'replaced' as const, missing: [] };
    const undoable =
      aside !== null &&
      sound !== null &&
      (await writeManifest(aside, { ...said, counts: sound }).then(
        () => true,
        () => false,
      ));
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    return { manifest, bytes, aside, undoable, access };
  } catch (error) {
    if (error instanceof RestoreFailed || error instanceof Stopped) throw error;
    throw new RestoreFailed(
      'not-written',
      `The backup could not be put into ${dataDir} (${messageOf(error)}). Nothing was lost: the present shop is still there, or in a folder there named replaced-….`,
      error,
    );
  } finally {
    await rm(incoming, { recursive: true, force: true });
    held.release();
  }
}

function notConfirmed(differ: readonly string[]): RestoreFailed {
  return new RestoreFailed(
    'not-confirmed',
    `The backup has other people than the shop has now:\n  ${differ.join('\n  ')}\nTo restore so: npm run restore -- FOLDER --yes. Nothing was changed.`,
  );
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
    // Fails while any other program has the file open.
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

/** Moves the old records out and the new ones in. A note is written first, so that a half-done move is noticed. */
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

/** What comes after a restore into a new folder: no backup holds the settings. */
export function nextInWords(dataDir: string): string {
  return Object.keys(fileSettings(dataDir)).length > 0
    ? 'Now start the program.'
    : `No settings are saved in ${dataDir}, and a backup holds none. Run npm run setup, then start the program.`;
}

const NOTHING_CHANGED = 'Nothing was restored. The shop that was there is as it was.';
const NOT_INTO_DATABASE = 'Nothing was restored. The database is still empty.';

async function main(): Promise<void> {
  try {
    const words = process.argv.slice(2);
    const folder = words.find((word) => word !== '--yes');
    if (folder === undefined) {
      throw new RestoreFailed(
        'no-backup',
        'Name the backup to restore, its folder or its .zip: npm run restore -- THE.zip',
      );
    }
    const { dataDir, databaseUrl, timeZone } = shopOfCommand(process.env, { makes: true });
    const asOf = ({ manifest }: { readonly manifest: Manifest }) =>
      `as of ${printInstant(timeZone, manifest.at)}`;
    const now = () => new Date();
    if (databaseUrl !== null) {
      const done = await withBar(NOT_INTO_DATABASE, (step) =>
        restoreIntoPostgres({ dataDir, databaseUrl, folder, now, step }),
      );
      console.log(
        `Restored into the database in DATABASE_URL: ${inWords(done)}, ${asOf(done)}. Read back and compared: all the same.`,
      );
      for (const line of accessInWords(done.access)) console.log(line);
      return;
    }
    const confirm = () => words.includes('--yes');
    const done = await withBar(NOTHING_CHANGED, (step) => restore({ dataDir, folder, now, confirm, step }));
    console.log(`Restored into ${dataDir}: ${inWords(done)}, ${asOf(done)}.`);
    if (done.aside === null) console.log('There was no shop there before.');
    else if (done.undoable) {
      console.log(`The shop that was there is now in ${done.aside}.`);
      console.log(`To undo this: npm run restore -- ${done.aside}`);
    } else {
      console.log(`What was there is now in ${done.aside}, unchanged. This command can't restore it.`);
    }
    for (const line of accessInWords(done.access)) console.log(line);
    if (done.aside === null) console.log(nextInWords(dataDir));
  } catch (error) {
    const said =
      error instanceof RestoreFailed ||
      error instanceof Stopped ||
      error instanceof SettingsRefused ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable ||
      error instanceof MoveFailed;
    if (!said) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}

if (startedAs('restore')) await main();
