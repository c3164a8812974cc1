import { readdirSync } from 'node:fs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Served, serve } from '../program.ts';

const root = new URL('../../../', import.meta.url);

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

const ask = (path: string, init?: RequestInit) => fetch(`${program.url}/assets/modules/${path}`, init);

/** Every module that a page's script comes to import, by its address. */
async function reached(entry: string): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  const open = [new URL(entry, `${program.url}/assets/modules/`).href];
  for (const url of open) {
    const answer = await fetch(url);
    expect([url, answer.status, answer.headers.get('content-type')]).toEqual([
      url,
      200,
      'text/javascript; charset=utf-8',
    ]);
    const text = await answer.text();
    found.set(url, text);
    for (const [, from] of text.matchAll(/(?:^|;)(?:import|export)\b[^;"']*?\bfrom ?["']([^"']+)["']/gm)) {
      expect(from).toMatch(/^\.{1,2}\/.*\.js$/);
      const next = new URL(from!, url).href;
      if (!open.includes(next)) open.push(next);
    }
  }
  return found;
}

test.each([
  ['every page', 'views/browser/coverwright.js', 1],
  ['the measuring page', 'views/browser/bench/bench.js', 15],
])('the script of %s reaches all it imports, and is plain JavaScript', async (_what, entry, least) => {
  const modules = await reached(entry);
  expect(modules.size).toBeGreaterThanOrEqual(least);
  for (const text of modules.values()) expect(text).not.toMatch(/(?:^|[;}])(import type|interface|type) /m);
});

test('a module is asked about each time and sent again only when it has changed', async () => {
  const first = await ask('shared/quantity/readQuantity.js');
  expect(first.headers.get('cache-control')).toBe('no-cache');
  const etag = first.headers.get('etag')!;
  const again = await ask('shared/quantity/readQuantity.js', {
    headers: { 'if-none-match': etag, 'cache-control': 'max-age=0' },
  });
  expect([again.status, await again.text()]).toEqual([304, '']);
});

test.each([
  'src/main.js',
  'src/records/people/passwords.js',
  'src/web/request/modules.js',
  'shared/schemas/job.js',
  'views/layout.js',
  'views/layout.tsx',
  'views/browser/tsconfig.json',
  'views/browser/coverwright.ts',
  'shared/quantity/../../src/main.js',
  'shared/quantity/%2e%2e/%2e%2e/src/main.js',
  'shared/quantity/..%2f..%2fsrc/main.js',
  'shared%2fquantity/readQuantity.js',
  'shared//quantity/readQuantity.js',
  'package.json',
  '',
])('no module is sent under %j', async (path) => {
  const answer = await ask(path);
  expect(answer.status).toBe(404);
  expect(await answer.text()).not.toMatch(/\b(import|export) /);
});

test('no file of the program but those for the browser has an address there', async () => {
  const sent = [
    'views/browser',
    'views/browser/bench',
    'shared/measuring',
    'shared/quantity',
    'shared/words',
  ];
  const files = ['src', 'shared', 'views', 'data']
    .flatMap((room) =>
      readdirSync(new URL(room, root), { recursive: true, encoding: 'utf8' }).map(
        (path) => `${room}/${path}`,
      ),
    )
    .filter((path) => /\.tsx?$/.test(path))
    .filter((path) => !sent.some((folder) => path.replace(/\/[^/]+$/, '') === folder));
  expect(files.length).toBeGreaterThan(200);
  for (const path of files) {
    const { status } = await ask(path.replace(/\.tsx?$/, '.js'));
    expect([path, status]).toEqual([path, 404]);
  }
});

test('nothing can be posted to a module', async () => {
  const { status } = await ask('shared/quantity/readQuantity.js', {
    method: 'POST',
    headers: { origin: program.url },
  });
  expect(status).toBe(404);
});
