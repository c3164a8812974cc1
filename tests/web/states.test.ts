import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { openShopInMemory, type Shop } from '../../src/records/database/database.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { WorkBusy } from '../../src/shop/work/workPool.ts';
import { app } from '../../src/web/app.ts';
import { LEAST_ROLE } from '../../src/web/people/roles.ts';
import { type Lan, openLan } from './lan.ts';

/** Every screen and form of the table of roles: what is no page of ours (JSON, files, health) is left out. */
const SCREENS = Object.keys(LEAST_ROLE).filter(
  (route) => !/ \/(api|assets|health)|\.csv$|\/(photos|printed)\//.test(route),
);
const FORMS = SCREENS.filter((route) => route.startsWith('POST '));

const pathOf = (route: string) =>
  route.split(' ')[1]!.replace(':kind', 'stud').replace(':subject', 'nothing').replace(/:\w+/g, '999999');

const TYPED = { note: 'typed by "hand" <b>' };
const KEPT = 'value="typed by &quot;hand&quot; &lt;b>"';

/** A page in the house look: one heading, and a sentence that says what happened and what to do. */
function expectHousePage(text: string, where: string): void {
  expect(text.startsWith('<!doctype html>') || text.startsWith('<!DOCTYPE html>'), where).toBe(true);
  expect(text, where).toContain('href="/assets/look.css"');
  expect(text.match(/<h1\b/g), where).toHaveLength(1);
  const main = text.slice(text.indexOf('<main'), text.indexOf('</main>'));
  const words = main
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&quot;', '"')
    .replace(/\s+/g, ' ');
  expect(words, where).toMatch(/[a-z’\d"]{2,}[.?!]( |$)/);
  expect(main, `${where} leads on`).toMatch(/<a [^>]*href=|<button/);
}

/** The program where every question to its records fails so. */
async function openFailing(failure: () => Error): Promise<{ url: string; close(): Promise<void> }> {
  const shop = openShopInMemory();
  const failing = new Proxy(shop.db, {
    get: () => () => {
      throw failure();
    },
  });
  const settings = {
    port: 0,
    host: '127.0.0.1',
    dataDir: ':memory:',
    databaseUrl: null,
    publicUrl: null,
    accounts: false,
    timeZone: 'UTC',
    demo: false,
  };
  const away: Shop = { ...shop, db: failing };
  const server: Server = createServer(app({ shop: away, settings, now: () => new Date() }));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      await shop.close();
    },
  };
}

/**
 * Answered without the records: signing in, which is not done here, a choice kept in a cookie, ending what goes on, a
 * list looked at before it is kept, a formula without its values; a backup is a folder.
 */
const WITHOUT_RECORDS =
  / \/(sign-in|sign-out|first|account|people|tokens|preferences|import|how\/formula|trends\/limit\/stop|records\/stop|records\/backups\/:name)(\/|$)/;

describe.each([
  ['the records are away', () => Object.assign(new Error('away'), { code: 'EIO', syscall: 'read' })],
  ['too much is being worked out', () => new WorkBusy()],
])('while %s', (_what, failure) => {
  let program: Awaited<ReturnType<typeof openFailing>>;
  beforeAll(async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    program = await openFailing(failure);
  });
  afterAll(async () => {
    await program.close();
    vi.restoreAllMocks();
  });

  test.each(SCREENS.filter((route) => !WITHOUT_RECORDS.test(route)))('%s says so', async (route) => {
    const [method] = route.split(' ') as ['GET' | 'POST'];
    const path = pathOf(
      route
        .replace('/slips/:number', '/slips/S-9')
        .replace(':subject', 'cover')
        .replace(':calculation', 'unbalance'),
    );
    const answer = await fetch(program.url + path, {
      method,
      redirect: 'manual',
      ...(method === 'POST' && { body: new URLSearchParams(TYPED) }),
    });
    const text = await answer.text();
    expect(answer.status).toBe(503);
    expectHousePage(text, route);
    if (method === 'POST') expect(text, 'what was typed').toContain(KEPT);
    if (method === 'POST') expect(text).toContain(`action="${path}" id="resend-form"`);
  });
});

describe('on a network', () => {
  let lan: Lan;
  beforeAll(async () => {
    lan = await openLan();
  });
  afterAll(() => lan.close());

  const inside = SCREENS.filter((route) => LEAST_ROLE[route] !== 'anyone');

  test.each(inside)('%s asks to sign in, and keeps what was typed', async (route) => {
    const posts = route.startsWith('POST ');
    const { status, text } = await lan.ask(pathOf(route), {
      ...(posts && { form: TYPED, headers: { origin: `http://${lan.host}` } }),
    });
    expect(status).toBe(401);
    expectHousePage(text, route);
    if (posts) expect(text).toContain(`name="again.note" ${KEPT}`);
    else expect(text).toContain(`name="back" value="${pathOf(route)}"`);
  });

  test.each(inside.filter((route) => LEAST_ROLE[route] !== 'reader'))(
    '%s says who may do it',
    async (route) => {
      const posts = route.startsWith('POST ');
      const { status, text } = await lan.askAs('reader', pathOf(route), posts ? { form: TYPED } : {});
      expect(status).toBe(403);
      expectHousePage(text, route);
    },
  );

  // A link to an example that is gone leads to the empty form.
  const named = inside.filter(
    (route) => /^GET .*:/.test(route) && !/^GET \/(cover\/example\/:id|import\/:kind)$/.test(route),
  );
  test.each(named)('%s says that there is none', async (route) => {
    const { status, text } = await lan.askAs('keeper', pathOf(route).replace('/stud/', '/nothing/'));
    expect(status).toBe(404);
    expectHousePage(text, route);
  });

  test.each(FORMS)('%s refuses what another site sends', async (route) => {
    const { status, text } = await lan.ask(pathOf(route), {
      form: TYPED,
      headers: { origin: 'http://evil.example' },
    });
    expect(status).toBe(403);
    expectHousePage(text, route);
    expect(text, 'nothing of the shop').not.toContain('Demo shop');
  });

  test('photos sent after signing out are not said to be kept', async () => {
    const { status, text } = await lan.ask('/jobs/1001/photos', {
      method: 'POST',
      headers: { origin: `http://${lan.host}`, 'content-type': 'multipart/form-data; boundary=x' },
    });
    expect(status).toBe(401);
    expect(text).toContain('Sign in, then choose it and send it again.');
  });
});

describe('changed meanwhile by somebody else', () => {
  let lan: Lan;
  beforeAll(async () => {
    lan = await openLan();
  });
  afterAll(() => lan.close());

  const now = async (number: string) => (await getJob(lan.shop.db, number))!;
  const received = async () => {
    const { familyId, receivedOn } = (await now('1005')).sections.received!.body;
    return { family: familyId, receivedOn };
  };
  const note = { 'result.pads': 'sound', 'note.pads': TYPED.note };

  test.each<[string, () => Promise<Record<string, string>>, Record<string, string>]>([
    ['received', received, { note: TYPED.note }],
    [
      'looked',
      async () => ({ crackTest: 'none-found', crackMethod: 'dye' }),
      { crackNote: TYPED.note, ...note },
    ],
    ['setup', async () => ({ chucking: 'pads-and-pilot-trued' }), { gauge: TYPED.note }],
    ['plan', async () => ({ cut: '0.3' }), { cut: '0.31' }],
    ['cuts', async () => ({ depth: '0.01' }), { depth: '0.02', note: TYPED.note }],
    ['decision', async () => ({}), { decision: 'face', reason: TYPED.note }],
    ['signature', async () => ({}), { statement: TYPED.note }],
  ])('POST /jobs/:number/%s shows both, and keeps what was typed', async (section, theirs, mine) => {
    const from = String((await now('1005')).revision);
    const first = await theirs();
    // A decision and a signature rest on the whole job: any change since is one.
    const changed = Object.keys(first).length > 0 ? section : 'received';
    const body = changed === section ? first : { ...(await received()), customer: `counter for ${section}` };
    const { status: taken, text: why } = await lan.askAs('recorder', `/jobs/1005/${changed}`, {
      form: { ...body, from, unit: 'mm' },
    });
    expect(taken, why.slice(0, 2000)).toBe(303);
    const before = (await now('1005')).revision;
    const form = { ...first, ...mine, from, unit: 'mm', criteria: '1' };
    const { status, text } = await lan.askAs('keeper', `/jobs/1005/${section}`, { form });
    expect(status).toBe(409);
    expectHousePage(text, section);
    expect(text).toContain('<section class="faults stale" role="alert"');
    expect(text).toMatch(/CD changed this|The job changed after you opened it/);
    expect(text).toContain('Nothing of yours is saved yet');
    for (const typed of Object.values(mine).filter((one) => one === TYPED.note))
      expect(text).toContain(typed.replaceAll('"', '&quot;').replace('<', '&lt;'));
    expect((await now('1005')).revision, 'nothing was overwritten').toBe(before);
  });
});

describe('too many tries', () => {
  const WAIT = /at most (10|30) within 15 minutes\. This one was not looked at\. Wait 1[45] minutes/;
  const wrong = { password: 'wrong wrong wrong' };

  test.each([
    ['POST /sign-in', { people: true }, { name: 'Tester One', ...wrong }],
    ['POST /first', { people: false }, { code: 'wrong', name: 'Tester One' }],
    ['POST /account/password', { people: true }, { old: 'wrong wrong wrong', name: 'Tester One' }],
  ] as const)('%s says how long to wait, and keeps what was typed', async (route, options, typed) => {
    const lan = await openLan({ ...options, demo: false });
    const path = route.split(' ')[1]!;
    const form = { ...typed, back: '/jobs', action: '/jobs/1001/looked', 'again.note': TYPED.note };
    const headers = { origin: `http://${lan.host}` };
    const cookie: Record<string, string> = path.startsWith('/account')
      ? { cookie: await lan.cookieOf('keeper') }
      : {};
    const send = () => lan.ask(path, { form, headers: { ...headers, ...cookie } });
    let reply = await send();
    for (let i = 0; i < 30 && reply.status === 422; i++) reply = await send();
    expect(reply.status).toBe(429);
    expect(Number(reply.headers['retry-after'])).toBeGreaterThan(800);
    expectHousePage(reply.text, route);
    expect(reply.text.replaceAll('\u00a0', ' ')).toMatch(WAIT);
    expect(reply.text).toContain('aria-invalid="true"');
    expect(reply.text, 'no password goes back').not.toContain('wrong wrong wrong');
    if (path !== '/account/password') expect(reply.text).toContain('value="Tester One"');
    if (path === '/sign-in') expect(reply.text).toContain(`name="again.note" ${KEPT}`);
    await lan.close();
  });
});
