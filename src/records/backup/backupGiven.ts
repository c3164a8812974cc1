import { existsSync, statSync } from 'node:fs';
import { open, readdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { openPromise } from 'yauzl';
import { type Step, Stopped } from '../../progress.ts';
import { makeFolder } from '../database/database.ts';
import { RestoreFailed } from '../database/errors.ts';
import { messageOf } from './copyCheck.ts';
import { freshFolder } from './incoming.ts';
import { BACKUPS } from './list.ts';
import { BACKUP_FILE, MANIFEST } from './manifest.ts';

/**
 * Hands on the folder of a backup, however it was given: its folder, the folder around it, the .zip that the page
 * *Backups* sent, or its name among the shop's own. A .zip is unpacked beside the shop for as long as `then` takes,
 * which is also told the place that was given. Throws RestoreFailed.
 */
export async function withBackup<T>(
  given: string,
  dataDir: string,
  unpacked: string,
  step: Step,
  then: (folder: string, given: string) => Promise<T>,
): Promise<T> {
  const places = [resolve(given), join(dataDir, BACKUPS, given), join(dataDir, given)];
  for (const place of places) {
    if (!existsSync(place)) continue;
    if (statSync(place).isFile()) return fromZip(place, dataDir, unpacked, step, then);
    const folder = await folderIn(place);
    if (folder !== null) return then(folder, folder);
  }
  if (!places.some((place) => existsSync(place))) {
    throw noBackup(`There is no file or folder ${resolve(given)}. Name a backup's folder or its .zip.`);
  }
  throw noBackup(
    `${resolve(given)} is not a finished backup: ${MANIFEST} is missing. Name a backup's folder or its .zip, such as ${join(dataDir, BACKUPS, 'coverwright-20260302-170405')}.`,
  );
}

function noBackup(why: string): RestoreFailed {
  return new RestoreFailed('no-backup', `${why} Nothing was changed.`);
}

/** The folder itself or the only backup in it; null when there is none. */
async function folderIn(place: string): Promise<string | null> {
  if (existsSync(join(place, MANIFEST))) return place;
  const inside = (await readdir(place, { withFileTypes: true }))
    .filter((one) => one.isDirectory() && existsSync(join(place, one.name, MANIFEST)))
    .map((one) => one.name)
    .sort();
  if (inside.length > 1) {
    throw noBackup(`There are ${inside.length} backups in ${place}: ${inside.join(', ')}. Name one of them.`);
  }
  return inside[0] === undefined ? null : join(place, inside[0]);
}

async function fromZip<T>(
  file: string,
  dataDir: string,
  unpacked: string,
  step: Step,
  then: (folder: string, given: string) => Promise<T>,
): Promise<T> {
  makeFolder(resolve(dataDir));
  const into = await freshFolder(join(dataDir, unpacked));
  try {
    try {
      await unpack(file, into, step);
    } catch (error) {
      if (error instanceof Stopped) throw error;
      throw new RestoreFailed(
        'broken',
        `${file} can't be unpacked (${messageOf(error)}). Download the backup again, or use another one. Nothing was changed.`,
        error,
      );
    }
    if (!existsSync(join(into, MANIFEST))) throw noBackup(`There is no finished backup in ${file}.`);
    return await then(into, file);
  } finally {
    await rm(into, { recursive: true, force: true });
  }
}

/** Writes the files of a backup out of an archive, without the folder around them; anything else in it is left. */
async function unpack(file: string, into: string, step: Step): Promise<void> {
  const zip = await openPromise(file);
  let done = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      step('Unpacking files', done++, zip.entryCount);
      const name = BACKUP_FILE.exec(entry.fileName)?.[0];
      if (name === undefined) continue;
      const place = join(into, name);
      makeFolder(dirname(place));
      const written = await open(place, 'wx', 0o600);
      await pipeline(await zip.openReadStreamPromise(entry), written.createWriteStream());
    }
  } finally {
    zip.close();
  }
}
