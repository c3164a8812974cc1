import { createHash, randomUUID } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { makeFolder } from '../database/database.ts';

/** Folder below the data folder for every file, named by its content, and for files still arriving. */
export const FILES = 'files';
export const INCOMING = 'incoming';

/** A file that has arrived completely and is not part of any record yet. */
export interface Arrived {
  readonly path: string;
  readonly hash: string;
  readonly bytes: number;
}

/** The file is larger than allowed; what had arrived was deleted. */
export class TooLarge extends Error {
  constructor(limit: number) {
    super(`The file has more than ${Math.floor(limit / 1_048_576)} MB.`);
    this.name = 'TooLarge';
  }
}

/** Where a file of this content lies, relative to the data folder or to a backup. */
export function fileOf(hash: string): string {
  if (!/^[0-9a-f]{64}$/.test(hash)) throw new Error('A file is named by its SHA-256 and by nothing else.');
  return join(FILES, hash.slice(0, 2), hash);
}

/** Stores an arriving file under a temporary name, to be checked. If anything goes wrong it is deleted. */
export async function receive(dataDir: string, source: Readable, limit: number): Promise<Arrived> {
  const folder = join(dataDir, FILES, INCOMING);
  makeFolder(folder);
  const path = join(folder, randomUUID());
  const handle = await open(path, 'wx', 0o600);
  const hash = createHash('sha256');
  let bytes = 0;
  let failed: unknown = null;
  try {
    for await (const chunk of source as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      // The rest is read and dropped: a browser shows the answer only after it has sent everything.
      if (bytes > limit || failed !== null) continue;
      hash.update(chunk);
      await handle.writeFile(chunk).catch((error: unknown) => {
        failed = error;
      });
    }
    if (failed !== null) throw failed;
    if (bytes > limit) throw new TooLarge(limit);
    await handle.sync();
    await handle.close();
    return { path, hash: hash.digest('hex'), bytes };
  } catch (error) {
    await handle.close().catch(() => {});
    await rm(path, { force: true });
    throw error;
  }
}

/** Moves an arrived file to its final name; an undamaged one that is there already stays. */
export async function keep(dataDir: string, arrived: Arrived): Promise<void> {
  const place = join(dataDir, fileOf(arrived.hash));
  if (existsSync(place) && (await hashOf(place)) === arrived.hash) {
    await discard(arrived);
    return;
  }
  makeFolder(dirname(place));
  await rename(arrived.path, place);
  await flush(dirname(place));
  await flush(join(dataDir, FILES));
}

export async function discard(arrived: Arrived): Promise<void> {
  await rm(arrived.path, { force: true });
}

/** SHA-256 of what a file holds now. */
export async function hashOf(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path)) hash.update(chunk as Buffer);
  return hash.digest('hex');
}

/** Waits until a file, or the names in a folder, are on the disk. */
export async function flush(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
