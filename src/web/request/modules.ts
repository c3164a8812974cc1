import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { NextFunction, Request, Response } from 'express';
import { FROM_SOURCE, TREE } from '../../root.ts';

/** The only folders whose modules a browser gets: what is written for it, and what it reads as the server does. */
const FOLDERS = [
  'views/browser',
  'views/browser/bench',
  'shared/measuring',
  'shared/quantity',
  'shared/words',
];

const PAGE_KEEPER = '/views/browser/bench/pageKeeper.js';

/**
 * Sends modules as the browser imports them, under the paths they have in the project. Only files that were in the
 * folders above when the program started have an address here.
 */
export function browserModules() {
  const files = filesByAddress();
  return async (req: Request, res: Response, next: NextFunction): Promise<void> => {
    const file = files.get(req.path);
    if (file === undefined || (req.method !== 'GET' && req.method !== 'HEAD')) {
      next();
      return;
    }
    // Asked about each time, so that a page never mixes modules of two versions of the program.
    res.type('text/javascript').set('Cache-Control', 'no-cache');
    // The one script that a browser may put between a job's pages and the network.
    if (req.path === PAGE_KEEPER) res.set('Service-Worker-Allowed', '/jobs/');
    res.send(FROM_SOURCE ? await transpiled(file) : readFileSync(file, 'utf8'));
  };
}

function filesByAddress(): ReadonlyMap<string, string> {
  const ending = FROM_SOURCE ? '.ts' : '.js';
  const files = new Map<string, string>();
  for (const folder of FOLDERS) {
    for (const name of readdirSync(join(TREE, folder))) {
      if (name.endsWith(ending))
        files.set(`/${folder}/${name.slice(0, -ending.length)}.js`, join(TREE, folder, name));
    }
  }
  return files;
}

const made = new Map<string, { readonly changed: number; readonly text: string }>();

/** The module as `npm run build` makes it; made anew when its source has changed. */
async function transpiled(file: string): Promise<string> {
  const changed = statSync(file).mtimeMs;
  const before = made.get(file);
  if (before?.changed === changed) return before.text;
  const { transform } = await import('esbuild');
  const { code } = await transform(readFileSync(file, 'utf8'), {
    loader: 'ts',
    format: 'esm',
    target: 'es2023',
    minifyWhitespace: true,
    minifySyntax: true,
  });
  const text = code.replace(/(\b(?:from|import\(?))"(\.[^"]+)\.ts"/g, '$1"$2.js"');
  made.set(file, { changed, text });
  return text;
}
