import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the project, from the source as from the built copy. */
export const ROOT = rootFrom(dirname(fileURLToPath(import.meta.url)));

function rootFrom(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder;
  const up = dirname(folder);
  if (up === folder)
    throw new Error('The program cannot find its own folder: package.json is missing. Install it again.');
  return rootFrom(up);
}
