import { existsSync } from 'node:fs';
import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Manifest, readManifest } from './manifest.ts';

export const BACKUPS = 'backups';
const NAMED = /^coverwright-\d{8}-\d{6}(-\d+)?$/;
const UNFINISHED_MS = 24 * 3600 * 1000;

export interface KeptBackup {
  readonly name: string;
  readonly folder: string;
  readonly manifest: Manifest;
  readonly bytes: number;
}

/** The finished backups of a folder, newest first. */
export async function listBackups(folder: string): Promise<readonly KeptBackup[]> {
  if (!existsSync(folder)) return [];
  const found: KeptBackup[] = [];
  for (const name of await readdir(folder)) {
    if (!NAMED.test(name)) continue;
    const manifest = await readManifest(join(folder, name));
    if (manifest === null) continue;
    const bytes = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
    found.push({ name, folder: join(folder, name), manifest, bytes });
  }
  return found.sort((a, b) => b.manifest.at.localeCompare(a.manifest.at) || b.name.localeCompare(a.name));
}

/**
 * Removes scheduled backups beyond the newest `kept` of them, and leftovers of unfinished ones older than a day. Those a person
 * asked for, and those made before an upgrade or a restore, stay until a person removes them.
 */
export async function removeOld(folder: string, kept: number, now: () => Date): Promise<readonly string[]> {
  const scheduled = (await listBackups(folder)).filter((one) => one.manifest.reason === 'scheduled');
  const old = scheduled.slice(Math.max(1, kept));
  for (const one of old) await rm(one.folder, { recursive: true });
  for (const name of existsSync(folder) ? await readdir(folder) : []) {
    const path = join(folder, name);
    if (!name.endsWith('.unfinished') || !NAMED.test(name.slice(0, -'.unfinished'.length))) continue;
    if (now().getTime() - (await stat(path)).mtimeMs > UNFINISHED_MS) await rm(path, { recursive: true });
  }
  return old.map((one) => one.name);
}
