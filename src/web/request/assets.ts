import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import express, { Router } from 'express';
import { ROOT } from '../../root.ts';
import { browserModules } from './modules.ts';

const require = createRequire(import.meta.url);

const HTMX = require.resolve('htmx.org/dist/htmx.min.js');
const FONTS = dirname(require.resolve('@fontsource/barlow-semi-condensed/package.json'));

const ASSETS = join(ROOT, 'views', 'assets');

/** Style, script, icon and letters: everything comes from this machine. */
export function assetsRouter(): Router {
  const router = Router();
  const keep = { maxAge: '1h' };
  router.get('/htmx.js', (_req, res) => res.sendFile(HTMX, keep));
  for (const weight of [400, 600] as const) {
    router.get(`/barlow-${weight}.woff2`, (_req, res) => res.sendFile(fontFile(weight), { maxAge: '30d' }));
  }
  router.use('/modules', browserModules());
  const sheets = new Set(readdirSync(ASSETS).filter((name) => name.endsWith('.css')));
  router.use((req, res, next) => {
    const name = req.path.slice(1);
    if (!sheets.has(name)) next();
    else res.set('Cache-Control', 'public, max-age=3600').type('css').send(laidOutNoMore(name));
  });
  router.use(express.static(ASSETS, { index: false, dotfiles: 'ignore', ...keep }));
  return router;
}

/** A style sheet as a browser needs it: what it says to whoever changes it, and how it is laid out, is a fifth of what is sent. */
function laidOutNoMore(name: string): string {
  return readFileSync(join(ASSETS, name), 'utf8')
    .replaceAll(/\/\*[\s\S]*?\*\//g, '')
    .replaceAll(/\s*\n\s*/g, ' ')
    .replaceAll(/ ?([{};]) /g, '$1')
    .replaceAll(';}', '}')
    .trim();
}

/** Where the letters of a weight lie on this machine. */
export function fontFile(weight: 400 | 600): string {
  return join(FONTS, 'files', `barlow-semi-condensed-latin-${weight}-normal.woff2`);
}
