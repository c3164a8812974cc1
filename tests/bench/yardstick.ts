import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import compression from 'compression';
import express from 'express';
import { options, type VNode } from 'preact';
import { renderPage } from '../../views/render.ts';
import { serve } from '../web/program.ts';
import { PAGES } from './pages.ts';

/**
 * Bare Express, run beside the program: it renders the same trees of views, their props at hand, and keeps one row in
 * one durable commit for each request that sends one.
 */
const drawn = new Map<string, VNode>();
const hooks = options as unknown as { __b?: (vnode: VNode) => void };
let first: VNode | null = null;
hooks.__b = (vnode) => {
  first ??= vnode;
};
const program = await serve({ demo: true, unit: 'in' });
for (const path of Object.values(PAGES)) {
  first = null;
  await (await fetch(program.url + path)).text();
  if (first !== null) drawn.set(path, first);
}
delete hooks.__b;
await program.close();

const raw = new Database(join(mkdtempSync(join(tmpdir(), 'coverwright-bench-')), 'yard.sqlite'));
raw.pragma('journal_mode = WAL');
raw.pragma('synchronous = FULL');
raw.exec('CREATE TABLE reading (id INTEGER PRIMARY KEY, body TEXT NOT NULL)');
const add = raw.prepare('INSERT INTO reading (body) VALUES (?)');

const bare = express();
bare.use(compression({ threshold: 256 }));
bare.post('/commit', express.json(), (req, res) => {
  add.run(JSON.stringify(req.body));
  res.json({ kept: true });
});
bare.get('/{*path}', (req, res) => {
  const page = drawn.get(req.originalUrl);
  if (page === undefined) res.status(404).end();
  else res.send(renderPage(page));
});
const server = bare.listen(0, '127.0.0.1', () => {
  const address = server.address();
  console.log(`http://127.0.0.1:${typeof address === 'object' && address ? address.port : 0}`);
});
process.once('SIGTERM', () => {
  raw.close();
  process.exit(0);
});
