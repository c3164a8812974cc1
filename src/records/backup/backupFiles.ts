import { constants } from 'node:fs';
import { copyFile, link } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Step } from '../../progress.ts';
import { makeFolder } from '../database/database.ts';
import { fileOf, flush, hashOf } from '../photos/files.ts';
import { listBackups } from './list.ts';

/**
 * Brings photos into a backup. One that an earlier backup beside it holds whole is shared with that, so that a photo
 * takes its room once for the shop and once for all its backups. Gives back the hashes of those nobody holds whole.
 */
export async function backUpFiles(from: {
  readonly hashes: readonly string[];
  readonly dataDir: string;
  readonly backups: string;
  readonly into: string;
  readonly step: Step;
}): Promise<readonly string[]> {
  const earlier = (await listBackups(from.backups)).map((one) => one.folder);
  const missing: string[] = [];
  for (const [i, hash] of from.hashes.entries()) {
    from.step('Copying photos', i, from.hashes.length);
    const place = join(from.into, fileOf(hash));
    makeFolder(dirname(place));
    const shared = await firstWhole(earlier, hash);
    if (shared !== null && (await linked(shared, place))) continue;
    const source = shared ?? (await firstWhole([from.dataDir], hash));
    if (source === null) {
      missing.push(hash);
      continue;
    }
    await copyFile(source, place, constants.COPYFILE_EXCL);
    await flush(place);
  }
  return missing;
}

async function firstWhole(folders: readonly string[], hash: string): Promise<string | null> {
  for (const folder of folders) {
    const path = join(folder, fileOf(hash));
    if ((await hashOf(path).catch(() => '')) === hash) return path;
  }
  return null;
}

/** Not every file system has hard links; most USB sticks do not. */
async function linked(from: string, to: string): Promise<boolean> {
  try {
    await link(from, to);
    return true;
  } catch {
    return false;
  }
}
