import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import express, { type ErrorRequestHandler } from 'express';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mayAs, ROLES } from '../../../shared/words/people.ts';
import { openShopInMemory } from '../../../src/records/database/database.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { app } from '../../../src/web/app.ts';
import { accessControl } from '../../../src/web/people/accessControl.ts';
import { LEAST_ROLE } from '../../../src/web/people/roles.ts';
import { type Lan, openLan } from '../lan.ts';
import { routesOf } from '../routes.ts';

const shop = openShopInMemory();
const alone = {
  port: 0,
  host: '127.0.0.1',
  dataDir: ':memory:',
  databaseUrl: null,
  publicUrl: null,
  accounts: false,
  timeZone: 'UTC',
  demo: false,
};
const ROUTES = routesOf(app({ shop, settings: alone, now: () => new Date() }));

let lan: Lan;
let job: string;
beforeAll(async () => {
  lan = await openLan();
  job = (await findJobs(lan.shop.db, { limit: 1 })).jobs[0]!.number;
});
afterAll(async () => {
  await lan.close();
  await shop.close();
});

/** The route with something in the place of each name. */
const pathOf = (route: string) =>
  route
    .split(' ')[1]!
    .replace(':number', encodeURIComponent(job))
    .replace(':kind', 'stud')
    .replace(/:\w+/g, '999');

const asked = (route: string) => {
  const method = route.split(' ')[0]!;
  if (method === 'GET') return { method };
  return route.includes(' /api') ? { method, json: {} } : { method, form: {} };
};

test('every route has a least role in the table, and every role in the table a route', () => {
  expect(ROUTES.length).toBeGreaterThan(50);
  const told = new Set(Object.keys(LEAST_ROLE));
  expect(
    ROUTES.filter((route) => !told.has(route)),
    'add these to src/web/people/roles.ts',
  ).toEqual([]);
  const there = new Set(ROUTES);
  expect(
    [...told].filter((route) => !there.has(route)),
    'take these out of src/web/people/roles.ts',
  ).toEqual([]);
});

test('what anybody may reach without signing in is just this', () => {
  const open = Object.entries(LEAST_ROLE).filter(([, least]) => least === 'anyone');
  expect(open.map(([route]) => route)).toEqual([
    'GET /health',
    'GET /assets/htmx.js',
    'GET /assets/barlow-400.woff2',
    'GET /assets/barlow-600.woff2',
    'GET /sign-in',
    'POST /sign-in',
    'POST /sign-out',
    'GET /first',
    'POST /first',
  ]);
});

test('nothing is written below a recorder, but for what concerns oneself and the slips of the counter', () => {
  const writes = Object.entries(LEAST_ROLE).filter(
    ([route, least]) => !route.startsWith('GET ') && least === 'reader',
  );
  expect(writes.map(([route]) => route)).toEqual([
    'POST /account/password',
    'POST /account/sign-out',
    'POST /preferences',
    'POST /slips',
    'POST /slips/:number/count',
    'POST /slips/:number/back',
    'POST /api/cover/check',
    'POST /api/cover/stiffness',
    'POST /api/cover/heat',
    'POST /api/stud/check',
    'POST /api/stud/match',
    'POST /api/thread',
    'POST /api/slips',
  ]);
});

test('limits, catalog, people, tokens and backups are changed by keepers alone', () => {
  const changes = /^(POST|PUT) \/(api\/)?(criteria|catalogue|people|tokens|records|backups?)\b/;
  const found = Object.entries(LEAST_ROLE).filter(([route]) => changes.test(route));
  expect(found.length).toBeGreaterThan(10);
  expect(found.filter(([, least]) => least !== 'keeper')).toEqual([]);
});

describe.each(ROUTES)('%s', (route) => {
  const least = LEAST_ROLE[route]!;

  test('answers no stranger but where anybody may come', async () => {
    const origin: Record<string, string> = route.includes(' /api') ? {} : { origin: `http://${lan.host}` };
    const { status, text } = await lan.ask(pathOf(route), { ...asked(route), headers: origin });
    if (least === 'anyone') expect(status).not.toBe(401);
    else expect(status).toBe(401);
    if (least !== 'anyone') expect(text).not.toContain('Demo shop');
  });

  test.each(ROLES)('answers a %s where the table lets one come, and nowhere else', async (role) => {
    const { status } = await lan.askAs(role, pathOf(route), asked(route));
    if (least === 'anyone' || mayAs(role, least)) expect([401, 403]).not.toContain(status);
    else expect(status).toBe(403);
    expect(status).toBeLessThan(500);
  });

  if (route.includes(' /api')) {
    test.each(ROLES)('answers a script with a token of a %s as it answers that person', async (role) => {
      const token = await issueToken(
        lan.shop.db,
        { who: 'AK', now: () => lan.now },
        { name: 'a test', personId: lan.people.keeper.id, role },
      );
      const headers = { authorization: `Bearer ${token}` };
      const { status } = await lan.ask(pathOf(route), { ...asked(route), headers });
      if (least === 'anyone' || mayAs(role, least)) expect([401, 403]).not.toContain(status);
      else expect(status).toBe(403);
    });
  }
});

describe('what is not in the table of roles', () => {
  test('answers nobody, a keeper neither, where somebody forgot to put a route there', async () => {
    const server = express();
    const settings = { ...alone, host: 'shop.example', accounts: true };
    server.use(accessControl({ shop: lan.shop, settings, now: () => lan.now }));
    server.get('/forgotten', (_req, res) => void res.send('told'));
    server.get('/jobs', (_req, res) => void res.send('told'));
    server.use(
      ((error: Error, _req, res, _next) => void res.status(404).send(error.message)) as ErrorRequestHandler,
    );
    const listening = server.listen(0, '127.0.0.1');
    await once(listening, 'listening');
    const { port } = listening.address() as AddressInfo;
    const cookie = await lan.cookieOf('keeper');
    const get = async (path: string) =>
      (await fetch(`http://127.0.0.1:${port}${path}`, { headers: { cookie } })).text();
    expect(await get('/jobs')).toBe('told');
    expect(await get('/forgotten')).toMatch(/^There is no such page/);
    await new Promise((resolve) => listening.close(resolve));
  });

  test.each(['/nowhere', '/people/1/nowhere', '/api/nowhere'])('answers nobody at %s', async (path) => {
    expect((await lan.ask(path)).status).toBe(401);
    expect((await lan.askAs('keeper', path)).status).toBe(404);
  });

  test.each(['DELETE', 'PATCH', 'PUT'])('answers nobody who sends %s to a page', async (method) => {
    const headers = { origin: `http://${lan.host}` };
    expect((await lan.ask(`/jobs/${job}`, { method, headers })).status).toBe(401);
    expect((await lan.askAs('keeper', `/jobs/${job}`, { method })).status).toBe(404);
  });

  test.each([
    '/JOBS',
    '/jobs/',
    '//jobs',
    '/jobs//',
    '/./jobs',
    '/%6aobs',
    '/jobs?x=/sign-in',
    '/assets/../jobs',
  ])('is reached by nobody through %s', async (path) => {
    const { status, text } = await lan.ask(path);
    expect([401, 404]).toContain(status);
    expect(text).not.toContain('Demo shop');
  });
});

test('a script in JSON, a part in htmx and a page are each told in their own way', async () => {
  const api = await lan.ask('/api/thread', { json: {} });
  expect(JSON.parse(api.text)).toMatchObject({ error: { code: 'sign-in-needed' } });
  expect(api.headers['www-authenticate']).toBe('Bearer');
  const part = await lan.ask('/cover?w.0=4', {
    headers: { 'hx-request': 'true', 'hx-current-url': `http://${lan.host}/cover?w.0=4.9` },
  });
  // What was asked for is newer than the address the page had before.
  expect([part.status, part.headers['hx-redirect']]).toEqual([401, '/sign-in?back=%2Fcover%3Fw.0%3D4']);
  const drawn = await lan.ask('/stud/drawn?pull=4', {
    headers: { 'hx-request': 'true', 'hx-current-url': `http://${lan.host}/catalogue/stack/new` },
  });
  // The form around it is typed in and not saved: the page stays.
  expect([drawn.status, drawn.headers['hx-redirect']]).toEqual([401, undefined]);
  const page = await lan.ask('/jobs?stage=to-cut');
  expect(page.text).toContain('name="back" value="/jobs?stage=to-cut"');
  const refused = await lan.askAs('reader', '/jobs', { form: {} });
  expect(refused.text).toContain('Only a recorder may do this, so nothing was changed.');
});

test('where nobody signs in, everything answers and the pages of people say why they are empty', async () => {
  const open = await openLan({ settings: { accounts: false, host: '127.0.0.1' } });
  const headers = { host: `127.0.0.1:${open.port}` };
  expect((await open.ask('/jobs', { headers })).text).toContain('Demo shop');
  expect((await open.ask('/people', { headers })).text).toContain('Nobody signs in here');
  for (const path of ['/sign-in', '/first', '/account', '/people/1']) {
    expect((await open.ask(path, { headers })).status, path).toBe(404);
  }
  const add = { headers, form: { name: 'Tester Seven', newInitials: 'BL', role: 'keeper' } };
  expect((await open.ask('/people', add)).status).toBe(404);
  expect((await open.ask('/tokens', { headers, form: { tokenName: 'x' } })).status).toBe(404);
  await open.close();
});
