import { existsSync, realpathSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const HERE = dirname(fileURLToPath(import.meta.url));

/** Whether this program runs from its source, as in tests and `npm run dev`, or from the built copy. */
export const FROM_SOURCE = import.meta.url.endsWith('.ts');
const ENDING = FROM_SOURCE ? '.ts' : '.js';

/** The folder of the project, from the source as from the built copy. */
export const ROOT = above(HERE, 'package.json');

/** Where its scripts lie: of the built copy, which is put together from pieces, in its own folder. */
export const TREE = above(HERE, join('src', `main${ENDING}`));

/** A script that is run by itself, such as `src/shop/work/worker`. */
export function scriptAt(path: string): URL {
  return pathToFileURL(join(TREE, `${path}${ENDING}`));
}

/** Whether this process was started as that command; a file that another only imports runs nothing. No two share a name. */
export function startedAs(command: string): boolean {
  const started = process.argv[1];
  if (started === undefined || !existsSync(started)) return false;
  const file = realpathSync(started);
  return basename(file, extname(file)) === command;
}

/** The nearest folder around this file that holds another. */
function above(folder: string, file: string): string {
  if (existsSync(join(folder, file))) return folder;
  const up = dirname(folder);
  if (up === folder)
    throw new Error(`The program cannot find its own folder: ${file} is missing. Install it again.`);
  return above(up, file);
}
