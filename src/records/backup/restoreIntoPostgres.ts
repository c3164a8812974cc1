import { randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { type Step, Stopped, unseen } from '../../progress.ts';
import { moveShop } from '../carry/move.ts';
import { FILE_NAME, makeFolder } from '../database/database.ts';
import { MoveFailed, RecordsUnavailable, RestoreFailed, ShopWillNotOpen } from '../database/errors.ts';
import { holdAlone } from '../database/restoreGuard.ts';
import { keep, receive } from '../photos/files.ts';
import { withBackup } from './backupGiven.ts';
import { messageOf } from './copyCheck.ts';
import { copyIn, examine, freshFolder, openOnce } from './incoming.ts';
import type { Manifest } from './manifest.ts';
import { type Access, closeDoors, peopleIn } from './restoredAccess.ts';

/**
 * Puts a backup into an empty PostgreSQL database, and its photos beside those of the data folder. Nothing is moved
 * aside or written over: a database that holds a shop is refused. Throws RestoreFailed.
 */
export async function restoreIntoPostgres(options: RestoreAsked): Promise<RestoredThere> {
  const { folder, dataDir, step = unseen } = options;
  return withBackup(folder, dataDir, `restoring-zip-${randomUUID()}`, step, (backup) =>
    restoreFolder(backup, options),
  );
}

interface RestoreAsked {
  readonly dataDir: string;
  readonly databaseUrl: string;
  readonly folder: string;
  readonly now: () => Date;
  readonly step?: Step;
}

interface RestoredThere {
  readonly manifest: Manifest;
  readonly bytes: number;
  readonly access: Access;
}

async function restoreFolder(backup: string, options: RestoreAsked): Promise<RestoredThere> {
  const { dataDir, databaseUrl, now, step = unseen } = options;
  const manifest = await examine(backup, step);
  makeFolder(resolve(dataDir));
  const held = holdAlone(dataDir);
  const incoming = await freshFolder(join(dataDir, `restoring-${randomUUID()}`));
  try {
    await copyIn(backup, manifest, incoming, step);
    const tokens = await openOnce(incoming, manifest, (db) => closeDoors(db, null, now));
    const people = peopleIn(join(incoming, FILE_NAME)) ?? [];
    const access = { people, differ: [], tokens, from: 'backup' } as const;
    // Files are named by their content, so those already there do no harm if the rest fails.
    const photos = manifest.files.filter((file) => file.path !== FILE_NAME);
    for (const [i, { path }] of photos.entries()) {
      step('Keeping photos', i, photos.length);
      const photo = createReadStream(join(incoming, path));
      await keep(dataDir, await receive(dataDir, photo, Number.POSITIVE_INFINITY));
    }
    await moveShop({ dataDir: incoming, url: databaseUrl, now, step });
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    return { manifest, bytes, access };
  } catch (error) {
    if (error instanceof MoveFailed && error.code === 'not-empty') {
      throw new RestoreFailed(
        'not-empty',
        'The database in DATABASE_URL already has a shop, and restore never overwrites one. Make an empty database (createdb -E UTF8 -T template0), set DATABASE_URL to it, and restore again. Nothing was changed.',
        error,
      );
    }
    const said =
      error instanceof RestoreFailed ||
      error instanceof Stopped ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable ||
      error instanceof MoveFailed;
    if (said) throw error;
    throw new RestoreFailed(
      'not-written',
      `The backup could not be put into the database (${messageOf(error)}). Nothing was lost, and the database is still empty.`,
      error,
    );
  } finally {
    await rm(incoming, { recursive: true, force: true });
    held.release();
  }
}
