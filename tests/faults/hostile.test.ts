import { afterEach, beforeEach, expect, test } from 'vitest';
import { apiExamples } from '../../src/web/api/examples.ts';
import { LEAST_ROLE } from '../../src/web/people/roles.ts';
import { SEED } from '../seed.ts';
import type { Route } from './inside/instrument.ts';
import { crawl } from './kit/crawl.ts';
import { ask } from './kit/http.ts';
import { type Mutant, mutants } from './kit/mutate.ts';
import { newFolder, type Program, start } from './kit/program.ts';
import { generator } from './kit/random.ts';
import { bytesOf, type RawAnswer, sendRaw } from './kit/raw.ts';
import { faultsIn, look } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const REQUESTS = 2600;
/** Before the memory is looked at first: what is made when it is first needed, and kept, is made by then. */
const WARM_UP = 1300;
const AT_ONCE = 6;
/** 5 KB for each request that follows. What is kept is more, and nothing of it in the memory. */
const MOST_GROWTH = 5 * 1024 * (REQUESTS - WARM_UP);

const NONE_HERE =
  /\/(begin|first|sign-in|sign-out|account|people|tokens|photos\/:name|backups\/:name|slips\/:number|import\/:kind\/:id|criteria\/jobs|how\/formula|(shelf|studies|wrong)\/:number|inspection\/:id|trends\/limit\/\w+\.csv)/;

let dataDir: string;
let program: Program;
beforeEach(async () => {
  dataDir = newFolder();
  program = await start({ dataDir, inside: ['instrument'] });
});
afterEach(async () => {
  expect(program.said().err).toBe('');
  expect(look(dataDir, faultsIn)).toEqual([]);
});

/** What is wrong with an answer, whatever was asked; '' when nothing is. */
function wrongWith({ status, head, body }: RawAnswer): string {
  if (status === null) return 'closed without an answer';
  if (status >= 500) return `answered ${status}`;
  const carries =
    /^content-security-policy: default-src 'none';script-src 'self'/im.test(head) &&
    /^x-content-type-options: nosniff\r?$/im.test(head);
  // What is no HTTP is refused before any page is made: an empty answer.
  if (!carries && !((status === 400 || status === 431) && /^(0\r\n\r\n)?$/.test(body)))
    return `answered ${status} without its headers`;
  return '';
}

async function sendAll(
  requests: readonly Mutant[],
  answered: (request: Mutant, answer: RawAnswer) => void,
): Promise<void> {
  const waiting = [...requests];
  const work = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      answered(next, await sendRaw(program.port, next.bytes));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
}

test(`${REQUESTS} random and mutated requests to every route are answered without a fault of the program`, async () => {
  console.log(`seed ${SEED}`);
  const routes = await program.ask<readonly Route[]>({ what: 'routes' });
  const walked = new Set(
    routes.flatMap(({ path, methods }) => methods.map((method) => `${method.toUpperCase()} ${path}`)),
  );
  expect(
    Object.keys(LEAST_ROLE).filter(
      (route) => !walked.has(route) && !walked.has(route.replace(/^\w+/, '_ALL')),
    ),
  ).toEqual([]);
  // The first jobs are signed: they lead to what was printed then.
  const pages = await crawl(program.url, [
    '/',
    '/catalogue?shelf=gauge',
    '/jobs/1001',
    '/jobs/1002',
    '/jobs/1003',
  ]);
  const links = pages.flatMap(({ page }) => page.links);
  const printed = pages
    .flatMap(({ page }) => page.elements.map(({ attributes }) => attributes.href ?? ''))
    .filter((address) => address.startsWith('/printed/'));
  const named = (pattern: RegExp) => [
    ...new Set(links.map((link) => pattern.exec(link)?.[1]).filter((one) => one !== undefined)),
  ];
  const next = mutants(
    {
      port: program.port,
      routes: routes.filter(({ path }) => path !== '/begin'),
      // Nobody begins for real: all the demo's jobs would be put away, and nothing be left to ask for.
      forms: pages.flatMap(({ page }) => page.forms.filter(({ action }) => action !== '/begin')),
      links: [...links, ...printed],
      jobs: named(/^\/jobs\/(\d+)/),
      entries: named(/^\/catalogue\/(\w+\/(?!new)[\w-]+)/),
      examples: Object.values(apiExamples).map(({ request }) => request),
    },
    generator(SEED),
  );
  const wrong: string[] = [];
  const statuses = new Map<number | null, number>();
  const reached = new Map<string, number>();
  const answered = (request: Mutant, answer: RawAnswer) => {
    statuses.set(answer.status, (statuses.get(answer.status) ?? 0) + 1);
    if (answer.status !== 404 && answer.status !== 400)
      reached.set(request.route, (reached.get(request.route) ?? 0) + 1);
    const why = wrongWith(answer);
    if (why !== '') wrong.push(`${why}: ${request.bytes.toString('latin1').slice(0, 1500)}`);
  };
  const make = (count: number) => Array.from({ length: count }, next);
  await sendAll(make(WARM_UP), answered);
  const before = await program.ask<number>({ what: 'heap' });
  await sendAll(make(REQUESTS - WARM_UP), answered);
  const after = await program.ask<number>({ what: 'heap' });
  const told = [...statuses]
    .sort(([a], [b]) => Number(a) - Number(b))
    .map(([status, count]) => `${count} × ${status}`);
  console.log(
    `${routes.length} routes; ${told.join(', ')}; heap ${(before / 1e6).toFixed(1)} → ${(after / 1e6).toFixed(1)} MB`,
  );
  expect(wrong.slice(0, 5).join('\n')).toBe('');
  // Where nobody signs in there are no people, and in this shop no photos, backups, slips, covers on the shelf, studies,
  // or inspection lists, nothing marked wrong, no list that waits and no limit or formula tried out.
  const unreached = routes
    .map(({ methods, path }) => `${methods.join()} ${path}`)
    .filter((route) => !reached.has(route) && !NONE_HERE.test(route));
  expect(unreached).toEqual([]);
  expect(statuses.get(303) ?? 0, 'some are taken').toBeGreaterThan(30);
  expect(statuses.get(422) ?? 0).toBeGreaterThan(80);
  expect(after - before).toBeLessThan(MOST_GROWTH);
  expect((await ask(`${program.url}/`)).status).toBe(200);
  tell(
    'Random and mutated requests to every route',
    `${REQUESTS} requests`,
    'no 5xx, no crash, CSP and nosniff on every answer, the memory does not grow, the records are sound',
  );
});

const deep = (open: string, close: string) => `${open.repeat(10_000)}1${close.repeat(10_000)}`;

test('deep, huge and misleading JSON is refused in the one shape errors have', async () => {
  const calls = Object.entries(apiExamples);
  for (const [path, { request }] of calls) {
    const text = JSON.stringify(request);
    const bodies: readonly [string, string][] = [
      ['lists in lists', deep('[', ']')],
      ['objects in objects', deep('{"a":', '}')],
      ['deep inside a field', `{"thread":${deep('[', ']')},"cover":${deep('{"x":', '}')}}`],
      [
        'a number of 100 000 digits',
        text.replace(/:\d+(\.\d+)?/g, `:${'9'.repeat(100_000)}`).slice(0, 900_000),
      ],
      ['numbers beyond numbers', text.replace(/:\d+(\.\d+)?/g, ':1e999')],
      [
        'the names of prototypes',
        '{"__proto__":{"thread":"3/8-24 UNF-2A"},"constructor":{"prototype":{"polluted":1}}}',
      ],
      ['other kinds of values', text.replace(/:(\d+(\.\d+)?|"[^"]*")/g, ':[{}]')],
      ['one very long text', `{"thread":"${'3'.repeat(900_000)}"}`],
    ];
    expect(bodies).toHaveLength(8);
    for (const [what, body] of bodies) {
      const answer = await ask(`${program.url}/api${path}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body,
      });
      // A call without numbers is what it was.
      expect(
        body === text ? [200] : [400, 413, 422],
        `${path}: ${what}: ${answer.text.slice(0, 300)}`,
      ).toContain(answer.status);
      if (body === text) continue;
      expect(JSON.parse(answer.text)).toEqual({
        error: { code: expect.any(String), message: expect.stringMatching(/\.$/), fields: expect.any(Array) },
      });
      expect(answer.text.length).toBeLessThan(200_000);
    }
    const again = await ask(`${program.url}/api${path}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: text,
    });
    expect(again.status, path).toBe(200);
    expect(again.text).not.toContain('polluted');
  }
  tell('Deep, huge and misleading JSON', '8 kinds to each call', 'refused in the one shape errors have');
});

test('no path climbs out of the folder of assets or of photos', async () => {
  const CLIMBS = [
    '../',
    '..%2f',
    '%2e%2e/',
    '%2e%2e%2f',
    '..%5c',
    '..\\',
    '.%2e/',
    '%252e%252e%252f',
    '..%c0%af',
    '....//',
    '%00../',
    '..;/',
    '/..//..//',
    './.././',
  ];
  const OWN = [
    'package.json',
    'views/layout.tsx',
    'src/main.ts',
    'src/main.js',
    'coverwright.sqlite',
    '.git/HEAD',
  ];
  // What a browser may have of the program it does get, also from the built copy.
  const script = await ask(`${program.url}/assets/modules/views/browser/coverwright.js`);
  expect([script.status, script.text]).toEqual([200, expect.stringContaining('addEventListener')]);
  for (const climb of ['', ...CLIMBS]) {
    for (const start of ['/assets/', '/assets/modules/', '/photos/', '/']) {
      for (const file of OWN) {
        const target = start + climb.repeat(3) + file;
        const answer = await sendRaw(
          program.port,
          bytesOf({ method: 'GET', target, headers: [['Host', `127.0.0.1:${program.port}`]] }),
        );
        expect([400, 403, 404], target).toContain(answer.status);
        expect(answer.body, target).not.toMatch(/"dependencies"|import .+ from|SQLite format|ref: refs/);
      }
    }
  }
  tell(
    'Paths that try to climb out of the folder of assets or of photos',
    `${CLIMBS.length} kinds`,
    "nothing of the program's own files leaves",
  );
});
