import { constants, copyFile, mkdir, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import type { Step } from '../../progress.ts';
import { type Db, FILE_NAME, isDamage, makeFolder, openShop } from '../database/database.ts';
import { RestoreFailed, ShopWillNotOpen } from '../database/errors.ts';
import { APPLICATION_ID, refuseOthers } from '../database/migrate.ts';
import { flush } from '../photos/files.ts';
import { messageOf } from './copyCheck.ts';
import { brokenFile, type Manifest, readManifest } from './manifest.ts';

/** Checks that the files are those of the manifest, that they are this program's, and not of a newer version. */
export async function examine(folder: string, step: Step): Promise<Manifest> {
  const manifest = await readManifest(folder);
  if (manifest === null) {
    throw new RestoreFailed(
      'not-ours',
      `${join(folder, 'manifest.json')} is not from a backup of this program. Nothing was changed.`,
    );
  }
  const broken = await brokenFile(folder, manifest, step);
  if (broken !== null || !manifest.files.some((file) => file.path === FILE_NAME)) {
    throw isBroken(folder, `${broken ?? FILE_NAME} is missing or has changed since`);
  }
  let raw: Database.Database | undefined;
  try {
    raw = new Database(join(folder, FILE_NAME), { readonly: true, fileMustExist: true });
    if (raw.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
      throw new RestoreFailed('not-ours', `${folder} belongs to another program. Nothing was changed.`);
    }
    refuseOthers(raw);
    const pages = raw.pragma('integrity_check(1)', { simple: true });
    if (pages !== 'ok') throw isBroken(folder, String(pages));
    if (raw.prepare('PRAGMA foreign_key_check').all().length > 0) {
      throw isBroken(folder, 'broken references');
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
    `The backup in ${folder} is damaged (${what}). Use another one. Nothing was changed.`,
  );
}

/** An empty folder that only its owner reads. */
export async function freshFolder(path: string): Promise<string> {
  await rm(path, { recursive: true, force: true });
  await mkdir(path, { mode: 0o700 });
  return path;
}

/** Copies every file of a backup, and looks that each arrived as it was. */
export async function copyIn(
  backup: string,
  manifest: Manifest,
  incoming: string,
  step: Step,
): Promise<void> {
  for (const [i, { path }] of manifest.files.entries()) {
    step('Copying files', i, manifest.files.length);
    const place = join(incoming, path);
    makeFolder(dirname(place));
    await copyFile(join(backup, path), place, constants.COPYFILE_EXCL);
    await flush(place);
  }
  const broken = await brokenFile(incoming, manifest, (_what, done, of) =>
    step('Comparing the copy', done, of),
  );
  if (broken !== null) throw isBroken(backup, `${broken} changed during the copy`);
}

/** Opens the copy as the program will, which brings an older one up to date, counts, and does what is to be done. */
export async function openOnce<T>(
  incoming: string,
  manifest: Manifest,
  then: (db: Db) => Promise<T>,
): Promise<T> {
  const shop = openShop({ dataDir: incoming });
  try {
    const jobs = await shop.db
      .selectFrom('job')
      .select((eb) => eb.fn.countAll().as('n'))
      .executeTakeFirstOrThrow();
    if (Number(jobs.n) !== manifest.counts.job) {
      throw isBroken(incoming, `it has ${jobs.n} jobs, not ${manifest.counts.job} as listed`);
    }
    return await then(shop.db);
  } finally {
    await shop.close();
  }
}
