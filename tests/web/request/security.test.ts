import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listEntries } from '../../../src/records/catalogue.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { ownNames } from '../../../src/web/request/addresses.ts';
import { type Lan, openLan, PEOPLE } from '../lan.ts';

let lan: Lan;
beforeAll(async () => {
  lan = await openLan();
});
afterAll(() => lan.close());

async function family() {
  return (await listEntries(lan.shop.db, 'family'))[0]!;
}
async function jobForm(number: string) {
  return { number, family: (await family()).id, receivedOn: '2026-11-24', customer: '', note: '' };
}

describe('whoever signed in stands behind a change, whatever is sent', () => {
  const forged = { who: 'XX', initials: 'XX' };

  test('of a job, its look, its readings and its photos', async () => {
    const made = await lan.askAs('recorder', '/jobs', { form: { ...(await jobForm('501')), ...forged } });
    expect(made.headers.location).toBe('/jobs/501');
    const looked = { from: '1', crackTest: 'none-found', crackMethod: 'dye', crackNote: 'clean', ...forged };
    expect((await lan.askAs('keeper', '/jobs/501/looked', { form: looked })).status).toBe(303);
    const setup = { from: '2', gauge: 'M1', through: 'bare', ...forged };
    expect((await lan.askAs('recorder', '/jobs/501/setup', { form: setup })).status).toBe(303);
    const job = (await getJob(lan.shop.db, '501'))!;
    expect(job.sections.received?.who).toBe(PEOPLE.recorder.initials);
    expect(job.sections.looked?.who).toBe(PEOPLE.keeper.initials);
    expect(job.sections.setup?.who).toBe(PEOPLE.recorder.initials);
  });

  test('of the criteria and the catalogue', async () => {
    const page = await lan.askAs('keeper', '/criteria');
    const form: Record<string, string> = { why: 'a test', ...forged };
    for (const [, name, value] of page.text.matchAll(/<input[^>]* name="([^"]+)"[^>]* value="([^"]*)"/g)) {
      if (name !== 'who') form[name!] ??= value!;
    }
    expect((await lan.askAs('keeper', '/criteria', { form })).status).toBe(303);
    expect(await currentCriteria(lan.shop.db)).toMatchObject({ who: PEOPLE.keeper.initials });
  });

  test('by a script', async () => {
    const { recorder } = lan.people;
    const ctx = { who: 'AK', now: () => lan.now };
    const authorization = `Bearer ${await issueToken(lan.shop.db, ctx, { name: 'a test', personId: recorder.id, role: 'recorder' })}`;
    const { id } = await family();
    const json = {
      id: 'job-of-a-script-1',
      number: '502',
      who: 'XX',
      received: { familyId: id, customerReference: '', receivedOn: '2026-11-24', note: '' },
    };
    const made = await lan.ask('/api/jobs', { json, headers: { authorization } });
    expect([200, 201], made.text).toContain(made.status);
    expect((await getJob(lan.shop.db, '502'))?.sections.received?.who).toBe(recorder.initials);
  });

  test('by a form, which asks for no initials and says who signs', async () => {
    for (const path of ['/jobs/new', '/jobs/501', '/cover', '/criteria', '/catalogue/stud/new']) {
      const { text } = await lan.askAs('keeper', path);
      expect(text, path).not.toMatch(/name="(who|initials)"/);
      if (path !== '/cover') expect(text, path).toContain('Signed as AK, Tester One.');
    }
  });

  test('of a crack, which another account lifts and other initials do not', async () => {
    await lan.askAs('recorder', '/jobs', { form: await jobForm('503') });
    const look = (from: number, crackTest: string, who: string) => ({
      form: { from: String(from), crackTest, crackMethod: 'dye', crackNote: 'seen by eye and with dye', who },
    });
    const found = await lan.askAs('recorder', '/jobs/503/looked', look(1, 'found', 'CD'));
    expect(found.status).toBe(303);
    const same = await lan.askAs('recorder', '/jobs/503/looked', look(2, 'none-found', 'AK'));
    expect(same.status).toBe(422);
    expect((await getJob(lan.shop.db, '503'))?.sections.looked?.body.crackTest).toBe('found');
    const other = await lan.askAs('keeper', '/jobs/503/looked', look(2, 'none-found', 'CD'));
    expect(other.status).toBe(303);
  });
});

describe('a post from another site', () => {
  test.each([
    ['of another site', { origin: 'http://evil.example' }],
    ['of another port', { origin: 'http://shop.example:1' }],
    ['of nothing (null)', { origin: 'null' }],
    ['that is no address', { origin: 'shop.example' }],
    ['that only begins alike', { origin: 'http://shop.example.evil.example' }],
    ['left out, though there is a cookie', { origin: '' }],
  ])('does nothing with the Origin %s', async (_what, { origin }) => {
    const headers: Record<string, string> = { cookie: await lan.cookieOf('recorder') };
    if (origin !== '') headers.origin = origin;
    const { total: before } = await count();
    const { status } = await lan.ask('/jobs', { form: await jobForm('600'), headers });
    expect(status).toBe(403);
    expect((await count()).total).toBe(before);
  });

  test('signs nobody in as another', async () => {
    const headers = { origin: 'http://evil.example' };
    const { status, cookies } = await lan.ask('/sign-in', { form: { name: 'x', password: 'y' }, headers });
    expect([status, cookies]).toEqual([403, []]);
  });

  test('is told in a page what to set, should the other site be this shop under an address it does not know', async () => {
    const headers = { cookie: await lan.cookieOf('recorder'), origin: 'https://proxy.example' };
    const { status, text } = await lan.ask('/jobs', { form: await jobForm('600'), headers });
    expect([status, text]).toEqual([403, expect.stringContaining('<h1>Not saved</h1>')]);
    expect(text).toContain(
      "If https://proxy.example is this shop's own address, set PUBLIC_URL to it, and set the proxy in between to pass on the Host header.",
    );
    const hostile = await lan.ask('/jobs', {
      form: await jobForm('600'),
      headers: { ...headers, origin: 'x<script>' },
    });
    expect(hostile.text).not.toContain('<script>');
  });

  test('gets no answer that another site may read', async () => {
    const headers = { cookie: await lan.cookieOf('keeper'), origin: 'http://evil.example' };
    for (const method of ['GET', 'OPTIONS']) {
      const reply = await lan.ask('/api/openapi.json', { method, headers });
      expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
    }
  });

  async function count() {
    return { total: (await findJobs(lan.shop.db, { limit: 200 })).jobs.length };
  }
});

describe('the program', () => {
  test.each(['evil.example', 'shop.example.evil.example', '192.0.2.1', 'shop.example@evil.example'])(
    'does not answer to the name "%s"',
    async (host) => {
      const { status, text } = await lan.ask('/sign-in', { headers: { host } });
      expect([400, 421]).toContain(status);
      expect(text).not.toContain('Password');
    },
  );

  test('says under a wrong name which addresses are right, as links', async () => {
    const headers = { host: 'evil<b>.example' };
    const page = await lan.ask('/jobs/1001', { headers: { host: 'evil.example' } });
    expect(page.text).toContain('&#34;evil.example&#34; is not an address of this shop.');
    expect(page.text).toContain(`<a href="http://shop.example:${lan.port}">`);
    expect((await lan.ask('/', { headers })).text).not.toContain('<b>');
    expect(page.text).toContain('<meta name="viewport" content="width=device-width, initial-scale=1">');
    const call = await lan.ask('/api/jobs', { headers: { host: 'evil.example' } });
    expect([call.status, JSON.parse(call.text).error.message]).toEqual([
      421,
      `"evil.example" is not an address of this shop. Use http://shop.example:${lan.port}.`,
    ]);
  });

  test.each(['shop.example', 'SHOP.example:80', 'localhost', '127.0.0.1:9', '[::1]:4180'])(
    'answers to the name "%s"',
    async (host) => {
      expect((await lan.ask('/sign-in', { headers: { host } })).status).toBe(200);
    },
  );

  test('listening everywhere answers to the names of this machine and of PUBLIC_URL, and to no other', () => {
    const own = ownNames({ host: '0.0.0.0', publicUrl: 'http://shop.example:4180' })();
    expect(own.has('shop.example')).toBe(true);
    expect(own.has('127.0.0.1')).toBe(true);
    expect(own.has('evil.example')).toBe(false);
    expect(ownNames({ host: '192.0.2.7', publicUrl: null })().has('192.0.2.7')).toBe(true);
    expect(ownNames({ host: '2001:db8::7', publicUrl: null })().has('[2001:db8::7]')).toBe(true);
  });
});

describe('headers', () => {
  const CSP =
    "default-src 'none';script-src 'self';style-src 'self';img-src 'self' data:;font-src 'self';connect-src 'self';form-action 'self';base-uri 'none';frame-ancestors 'none'";

  test.each(['/sign-in', '/jobs', '/assets/look.css', '/api/openapi.json', '/health', '/nowhere'])(
    'of %s hold also over plain HTTP',
    async (path) => {
      const { headers } = await lan.ask(path);
      expect(headers['content-security-policy']).toBe(CSP);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['x-frame-options']).toBe('SAMEORIGIN');
      expect(headers['referrer-policy']).toBe('same-origin');
      expect(headers['strict-transport-security']).toBeUndefined();
      expect(headers['x-powered-by']).toBeUndefined();
    },
  );

  test('let no proxy keep a page of the shop', async () => {
    const { headers } = await lan.askAs('reader', '/jobs');
    expect(headers['cache-control']).toBe('private, no-cache');
  });
});

describe('what is typed is text, never markup or script', () => {
  const SCRIPT = `"><script>alert(1)</script><img src=x onerror=alert(2)>'`;

  test('in every field of the pages of people and in what the address carries', async () => {
    const pages = [
      await lan.ask('/sign-in', {
        form: {
          name: SCRIPT,
          password: 'x',
          back: `/${SCRIPT}`,
          action: `/${SCRIPT}`,
          [`again.${SCRIPT}`]: SCRIPT,
        },
        headers: { origin: `http://${lan.host}` },
      }),
      await lan.ask(`/sign-in?back=${encodeURIComponent(`/${SCRIPT}`)}`),
      await lan.ask(`/nowhere?x=${encodeURIComponent(SCRIPT)}`),
      await lan.askAs('keeper', '/people', {
        form: { name: SCRIPT, newInitials: SCRIPT, role: SCRIPT },
      }),
      await lan.askAs('keeper', '/people', { form: { name: SCRIPT, newInitials: 'SC', role: 'reader' } }),
      await lan.askAs('keeper', '/tokens', {
        form: { tokenName: SCRIPT, tokenPerson: '1', tokenRole: 'reader' },
      }),
      await lan.askAs('keeper', '/people'),
      await lan.ask('/nowhere', {
        form: { [SCRIPT]: SCRIPT },
        headers: { origin: `http://${lan.host}` },
      }),
    ];
    for (const { text } of pages) {
      expect(text).not.toContain('<script>alert');
      expect(text).not.toContain('<img src=x');
    }
    expect(pages.at(-2)!.text).toContain('&lt;script>alert(1)');
  });
});
