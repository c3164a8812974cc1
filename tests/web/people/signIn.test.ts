import { createHook } from 'node:async_hooks';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ownPassword, startPassword } from '../../../src/records/people/passwords.ts';
import { changePassword, getPerson, listPeople, retirePerson } from '../../../src/records/people/people.ts';
import { IDLE_MS, LIFE_MS, sessionsOf } from '../../../src/records/people/sessions.ts';
import { issueToken } from '../../../src/records/people/tokens.ts';
import { SESSION } from '../../../src/web/people/sessionCookie.ts';
import { type Asked, type Lan, openLan, PASSWORD, PEOPLE, type Reply, sessionIn } from '../lan.ts';

let lan: Lan;
beforeEach(async () => {
  lan = await openLan({ demo: false });
});
afterEach(() => lan.close());

const signIn = (fields: Record<string, string>, headers: Record<string, string> = {}): Promise<Reply> =>
  lan.ask('/sign-in', { form: fields, headers: { origin: `http://${lan.host}`, ...headers } });
const AS_KEEPER = { name: PEOPLE.keeper.name, password: PASSWORD };
/** Counts what compiled code is given to do on other threads, as comparing a password is, until it is asked. */
function handedToThreads(): () => number {
  let works = 0;
  // Compiled code gives its work no name, or the one of its library.
  const hook = createHook({
    init: (_id, type) => {
      if (/^(undefined|napi|argon)/i.test(String(type))) works += 1;
    },
  }).enable();
  return () => {
    hook.disable();
    return works;
  };
}
const cookie = (secret: string | null) => ({ cookie: `${SESSION}=${secret}` });

/** What a keeper does that makes a secret, and the page it is then told on. */
async function toldBy(path: string, asked: Asked) {
  const headers = { cookie: await lan.cookieOf('keeper') };
  const made = await lan.ask(path, { ...asked, headers: { ...headers, origin: `http://${lan.host}` } });
  expect(made.status).toBe(303);
  const again = () => lan.ask(String(made.headers.location).replace(/#.*/, ''), { headers });
  const page = await again();
  return { told: /<code id="secret">([^<]+)</.exec(page.text)?.[1] ?? '', page, again };
}

describe('signing in', () => {
  test('takes the initials for the name', async () => {
    const { initials } = PEOPLE.keeper;
    expect((await signIn({ name: initials.toLowerCase(), password: PASSWORD })).status).toBe(303);
    expect((await signIn({ name: initials, password: 'not my password' })).status).toBe(422);
  });

  test('leads back to where somebody was, and to nowhere else', async () => {
    const there = await signIn({ ...AS_KEEPER, back: '/jobs?stage=to-cut' });
    expect([there.status, there.headers.location]).toEqual([303, '/jobs?stage=to-cut']);
    for (const back of [
      '//evil.example',
      '/\\evil.example',
      'https://evil.example',
      '/a\\b',
      'javascript:x',
    ]) {
      expect((await signIn({ ...AS_KEEPER, back })).headers.location, back).toBe('/');
    }
  });

  test('gives a cookie that no script reads and no other site sends', async () => {
    const [set] = (await signIn(AS_KEEPER)).cookies;
    expect(set).toMatch(
      new RegExp(
        `^${SESSION}=[\\w-]{43}; Max-Age=${LIFE_MS / 1000}; Path=/; Expires=[^;]+; HttpOnly; SameSite=Lax$`,
      ),
    );
  });

  test('over https gives a Secure cookie', async () => {
    const secure = await openLan({ demo: false, settings: { publicUrl: 'https://shop.example' } });
    const headers = { host: 'shop.example', origin: 'https://shop.example' };
    const { cookies } = await secure.ask('/sign-in', { form: AS_KEEPER, headers });
    expect(cookies[0]).toMatch(/; Secure/);
    await secure.close();
  });

  test('begins a session nobody knew, and ends the one that was there', async () => {
    const fixed = 'A'.repeat(43);
    const first = sessionIn(await signIn(AS_KEEPER, cookie(fixed)));
    expect(first).not.toBe(fixed);
    expect((await lan.ask('/account', { headers: cookie(fixed) })).status).toBe(401);
    const second = sessionIn(await signIn(AS_KEEPER, cookie(first)));
    expect(second).not.toBe(first);
    expect((await lan.ask('/account', { headers: cookie(first) })).status).toBe(401);
    expect((await lan.ask('/account', { headers: cookie(second) })).status).toBe(200);
  });

  test('tells an unknown name and a wrong password the same, after the same work', async () => {
    const tried = async (fields: Record<string, string>) => {
      const begun = handedToThreads();
      const text = (await signIn(fields)).text.replace(/value="[^"]*"/g, '');
      return { text, works: begun() };
    };
    const unknown = { name: 'Nobody Here', password: 'not this one at all' };
    // The first of all unknown names makes the password that nobody has.
    await tried(unknown);
    const wrong = await tried({ ...AS_KEEPER, password: 'not this one at all' });
    expect(wrong.text).toContain('Name or password is wrong.');
    expect(wrong.works).toBe(1);
    expect(await tried(unknown)).toEqual(wrong);
  });

  test('sends no password back in the page', async () => {
    expect((await signIn({ ...AS_KEEPER, password: 'typed-and-wrong' })).text).not.toContain(
      'typed-and-wrong',
    );
  });
});

describe('the limit on tries at passwords', () => {
  test('is ten wrong ones for an account in a quarter of an hour, from wherever', async () => {
    const wrong = { ...AS_KEEPER, password: 'wrong wrong wrong' };
    const ten = Array.from({ length: 10 }, (_, i) => signIn(wrong, { 'x-forwarded-for': `192.0.2.${i}` }));
    expect((await Promise.all(ten)).map(({ status }) => status)).toEqual(Array(10).fill(422));
    const eleventh = await signIn(AS_KEEPER, { 'x-forwarded-for': '192.0.2.99' });
    expect(eleventh.status).toBe(429);
    expect(Number(eleventh.headers['retry-after'])).toBeGreaterThan(800);
    expect(eleventh.text).toContain(
      'Too many failed tries: at most 10 within 15 minutes. This one was not looked at. Wait 15 minutes, then try again.',
    );
    expect(sessionIn(eleventh)).toBeNull();
    const other = { name: PEOPLE.reader.name, password: PASSWORD };
    expect((await signIn(other, { 'x-forwarded-for': '192.0.2.99' })).status).toBe(303);
  });

  test('shuts nobody out of the address they signed in from before, nor of the computer itself', async () => {
    const from = (address: string) => ({ 'x-forwarded-for': address });
    expect((await signIn(AS_KEEPER, from('192.0.2.7'))).status).toBe(303);
    const wrong = { ...AS_KEEPER, password: 'wrong wrong wrong' };
    for (let i = 0; i < 10; i++) await signIn(wrong, from(`198.51.100.${i}`));
    expect((await signIn(AS_KEEPER, from('198.51.100.99'))).status).toBe(429);
    expect((await signIn(AS_KEEPER, from('192.0.2.7'))).status).toBe(303);
    expect((await signIn(AS_KEEPER)).status).toBe(303);
    // Ten wrong ones from there count there, all the same.
    for (let i = 0; i < 10; i++) await signIn(wrong, from('192.0.2.7'));
    expect((await signIn(AS_KEEPER, from('192.0.2.7'))).status).toBe(429);
    expect((await signIn(AS_KEEPER)).status).toBe(303);
  });

  test('is thirty for an address, whatever the names', async () => {
    const thirty = Array.from({ length: 30 }, (_, i) => signIn({ name: `Nobody ${i}`, password: 'wrong' }));
    expect((await Promise.all(thirty)).map(({ status }) => status)).toEqual(Array(30).fill(422));
    expect((await signIn(AS_KEEPER)).status).toBe(429);
    expect((await signIn(AS_KEEPER, { 'x-forwarded-for': '192.0.2.1' })).status).toBe(303);
  });

  test('does not count right ones', async () => {
    for (let i = 0; i < 12; i++) expect((await signIn(AS_KEEPER)).status).toBe(303);
  });
});

describe('a session', () => {
  test('ends at sign-out, and at once', async () => {
    const session = cookie(sessionIn(await signIn(AS_KEEPER)));
    const out = await lan.ask('/sign-out', {
      method: 'POST',
      headers: { ...session, origin: `http://${lan.host}` },
    });
    expect([out.status, out.headers.location, sessionIn(out)]).toEqual([303, '/sign-in', '']);
    expect((await lan.ask('/', { headers: session })).status).toBe(401);
  });

  test('ends everywhere when its person asks for that', async () => {
    const elsewhere = { cookie: await lan.cookieOf('keeper') };
    await lan.askAs('keeper', '/account/sign-out', { method: 'POST' });
    expect((await lan.ask('/', { headers: elsewhere })).status).toBe(401);
    expect(await sessionsOf(lan.shop.db, lan.people.keeper.id, lan.now)).toEqual([]);
  });

  test('ends when idle', async () => {
    const session = { cookie: await lan.cookieOf('keeper') };
    lan.now = new Date(lan.now.getTime() + IDLE_MS + 1000);
    expect((await lan.ask('/', { headers: session })).status).toBe(401);
  });

  test('ends with the account, and a role given or taken counts at once', async () => {
    const session = { cookie: await lan.cookieOf('recorder') };
    const { id, revision } = lan.people.recorder;
    await lan.askAs('keeper', `/people/${id}`, {
      form: { from: String(revision), name: PEOPLE.recorder.name, role: 'reader' },
    });
    const headers = { ...session, origin: `http://${lan.host}` };
    expect((await lan.ask('/jobs', { form: {}, headers })).status).toBe(403);
    await retirePerson(lan.shop.db, { who: 'AK', now: () => lan.now }, { id, fromRevision: revision + 1 });
    expect((await lan.ask('/jobs', { headers: session })).status).toBe(401);
  });

  test('that ended loses no form: what was typed is sent after signing in', async () => {
    const form = { number: '77', note: 'two "marks" & <more>', who: 'XX' };
    const late = await lan.ask('/jobs', {
      form,
      headers: { origin: `http://${lan.host}`, ...cookie('gone') },
    });
    expect(late.status).toBe(401);
    expect(late.text).toContain('name="again.note" value="two &quot;marks&quot; &amp; &lt;more>"');
    expect(late.text).toContain('name="action" value="/jobs"');
    const again = await signIn({
      ...AS_KEEPER,
      action: '/jobs',
      'again.number': '77',
      'again.note': form.note,
    });
    expect(again.text).toContain('<form method="post" action="/jobs"');
    expect(again.text).toContain('name="note" value="two &quot;marks&quot; &amp; &lt;more>"');
    const away = await signIn({ ...AS_KEEPER, action: 'https://evil.example/', 'again.number': '77' });
    expect(away.text).toContain('<form method="post" action="/"');
  });
});

describe('the first keeper', () => {
  let empty: Lan;
  beforeEach(async () => {
    empty = await openLan({ demo: false, people: false });
  });
  afterEach(() => empty.close());
  const first = (changes: Record<string, string>) =>
    empty.ask('/first', {
      headers: { origin: `http://${empty.host}` },
      form: {
        code: empty.firstCode.typed,
        name: 'Tester One',
        newInitials: 'AK',
        password: PASSWORD,
        again: PASSWORD,
        ...changes,
      },
    });

  test('is asked for by every page until there is one, and the API answers nobody', async () => {
    for (const path of ['/', '/jobs', '/people', '/nowhere', '/sign-in']) {
      const { status, headers } = await empty.ask(path);
      expect([status, headers.location], path).toEqual([303, '/first']);
    }
    const api = await empty.ask('/api/thread', { json: {} });
    expect([api.status, api.text]).toEqual([401, expect.stringContaining('Nobody has an account yet')]);
  });

  test('comes in with the code, which is then no code any more', async () => {
    const made = await first({ code: ` ${empty.firstCode.typed.toUpperCase()} ` });
    expect([made.status, made.headers.location]).toEqual([303, '/']);
    expect((await empty.ask('/people', { headers: cookie(sessionIn(made)) })).status).toBe(200);
    expect(empty.firstCode.is(empty.firstCode.typed)).toBe(false);
    expect((await first({ name: 'Tester Seven', newInitials: 'BL' })).status).toBe(404);
    expect(await listPeople(empty.shop.db)).toHaveLength(1);
  });

  test('comes in with the code without its dashes, and a wrong code empties no other box', async () => {
    const slip = await first({ code: 'aaaa' });
    expect(slip.text.match(new RegExp(`value="${PASSWORD}"`, 'g'))).toHaveLength(2);
    expect((await first({ code: empty.firstCode.typed.replaceAll('-', '') })).status).toBe(303);
  });

  test.each([
    [{ code: 'aaaa-aaaa-aaaa-aaaa' }, 'That is not the code printed when the program started'],
    [{ code: '' }, 'That is not the code printed when the program started'],
    [{ password: 'nine char', again: 'nine char' }, 'The password has 9 characters; it needs at least 10.'],
    [{ again: 'something else' }, 'The two passwords differ. Enter the same one twice.'],
    [{ newInitials: '' }, "can't be initials. Use 1 to 8 letters"],
  ])('does not come in with %j', async (changes, sentence) => {
    const refused = await first(changes as Record<string, string>);
    expect([refused.status, refused.text]).toEqual([422, expect.stringContaining(sentence)]);
    expect(await listPeople(empty.shop.db)).toEqual([]);
    expect((await first({})).status).toBe(303);
  });

  test('is told when the records cannot keep them, and the code is not used up by it', async () => {
    await sql`PRAGMA query_only = ON`.execute(empty.shop.db);
    const failed = await first({});
    expect([failed.status, failed.text]).toEqual([503, expect.stringContaining('could not be saved')]);
    expect(failed.headers['set-cookie'] ?? []).toEqual([]);
    await sql`PRAGMA query_only = OFF`.execute(empty.shop.db);
    expect((await first({})).status).toBe(303);
  });

  test('is one where two come at once', async () => {
    const both = await Promise.all([first({}), first({ name: 'Tester Seven', newInitials: 'BL' })]);
    // The other is refused by the rule when both were read before either was kept, else because the page is gone.
    const statuses = both.map((reply) => reply.status).sort((a, b) => a - b);
    expect(statuses[0]).toBe(303);
    expect([404, 422]).toContain(statuses[1]);
    expect(await listPeople(empty.shop.db)).toHaveLength(1);
  });

  test('comes in with a code that cannot be guessed at: tries are limited', async () => {
    for (let i = 0; i < 30; i++) expect((await first({ code: `wrong-${i}` })).status).toBe(422);
    expect((await first({})).status).toBe(429);
  });
});

describe("a keeper's page of people", () => {
  test('adds somebody with a password told once, who must choose their own before anything else', async () => {
    const { told, page: added } = await toldBy('/people', {
      form: { name: 'Tester Seven', newInitials: 'BL', role: 'recorder', who: 'XX', initials: 'XX' },
    });
    expect(added.headers['cache-control']).toBe('no-store');
    expect((await lan.askAs('keeper', '/people')).text).not.toContain(told);
    const session = cookie(sessionIn(await signIn({ name: 'Tester Seven', password: told })));
    const page = await lan.ask('/jobs', { headers: session });
    expect([page.status, page.headers.location]).toEqual([303, '/account?back=%2Fjobs']);
    const headers = { ...session, origin: `http://${lan.host}` };
    const chosen = await lan.ask('/account/password', {
      headers,
      form: { old: told, password: 'quite another one', again: 'quite another one', back: '/jobs' },
    });
    expect(chosen.headers.location).toBe('/jobs');
    expect((await lan.ask('/jobs', { headers: session })).status).toBe(401);
    expect((await lan.ask('/jobs', { headers: cookie(sessionIn(chosen)) })).status).toBe(200);
    expect((await signIn({ name: 'Tester Seven', password: told })).status).toBe(422);
  });

  test('a fault empties no other box', async () => {
    const typed = { old: PASSWORD, password: 'quite another one', again: 'quite another one' };
    const wrong = await lan.askAs('reader', '/account/password', { form: { ...typed, old: 'not mine' } });
    expect(wrong.text.match(/value="quite another one"/g)).toHaveLength(2);
    expect(wrong.text).not.toContain('value="not mine"');
    const slip = await lan.askAs('reader', '/account/password', { form: { ...typed, again: 'a slip' } });
    expect(slip.text).toContain(`value="${PASSWORD}"`);
    expect(slip.text).not.toContain('quite another one');
    expect(slip.headers['cache-control']).toBe('no-store');
  });

  test('asks for the present password before another is chosen', async () => {
    const form = { old: 'not my password', password: 'quite another one', again: 'quite another one' };
    const refused = await lan.askAs('reader', '/account/password', { form });
    expect([refused.status, refused.text]).toEqual([
      422,
      expect.stringContaining('That is not your current password.'),
    ]);
  });

  test('shows a password again when the page is loaded again, to its keeper alone, for ten minutes', async () => {
    const { told, again } = await toldBy(`/people/${lan.people.reader.id}/password`, { method: 'POST' });
    expect(told).not.toBe('');
    lan.now = new Date(lan.now.getTime() + 9 * 60_000);
    expect((await again()).text).toContain(told);
    expect((await lan.askAs('keeper', `/people/${lan.people.reader.id}`)).text).not.toContain(told);
    lan.now = new Date(lan.now.getTime() + 60_000);
    expect((await again()).text).not.toContain(told);
  });

  test('gives a new password, and ends every session of theirs', async () => {
    const session = { cookie: await lan.cookieOf('reader') };
    const { told } = await toldBy(`/people/${lan.people.reader.id}/password`, { method: 'POST' });
    expect((await lan.ask('/', { headers: session })).status).toBe(401);
    expect((await signIn({ name: PEOPLE.reader.name, password: PASSWORD })).status).toBe(422);
    expect((await signIn({ name: PEOPLE.reader.name, password: told })).status).toBe(303);
  });

  test('retires and lets back in, and never the last keeper', async () => {
    const { id } = lan.people.keeper;
    const refused = await lan.askAs('keeper', `/people/${id}/retire`, {
      form: { from: '1', retire: 'yes' },
    });
    expect([refused.status, refused.text]).toEqual([
      422,
      expect.stringContaining('This is the only manager left'),
    ]);
    const { reader } = lan.people;
    const asked = await lan.askAs('keeper', `/people/${reader.id}/retire`, { form: { from: '1' } });
    expect([asked.status, asked.text]).toEqual([422, expect.stringContaining(`Retire ${reader.name}?`)]);
    expect(await getPerson(lan.shop.db, reader.id)).toMatchObject({ retired: false });
    await lan.askAs('keeper', `/people/${reader.id}/retire`, { form: { from: '1', retire: 'yes' } });
    expect(await getPerson(lan.shop.db, reader.id)).toMatchObject({ retired: true });
    expect((await signIn({ name: reader.name, password: PASSWORD })).status).toBe(422);
    await lan.askAs('keeper', `/people/${reader.id}/reinstate`, { form: { from: '2' } });
    expect((await signIn({ name: reader.name, password: PASSWORD })).status).toBe(303);
  });

  test('issues a token, shown once, and withdraws it', async () => {
    const { told: token } = await toldBy('/tokens', {
      form: { tokenName: 'gauge', tokenPerson: String(lan.people.recorder.id), tokenRole: 'recorder' },
    });
    const call = () => lan.ask('/api/openapi.json', { headers: { authorization: `Bearer ${token}` } });
    expect((await call()).status).toBe(200);
    expect((await lan.ask('/jobs', { headers: { authorization: `Bearer ${token}` } })).status).toBe(401);
    await lan.askAs('keeper', '/tokens/1/withdraw', { method: 'POST' });
    expect((await call()).status).toBe(401);
    // A cookie beside a token that is not good does not let the call in.
    const both = { authorization: `Bearer ${token}`, cookie: await lan.cookieOf('keeper') };
    expect((await lan.ask('/api/openapi.json', { headers: both })).status).toBe(401);
  });
});

test('a token does not outlive the password of its person that a keeper resets, and the page says so', async () => {
  const { recorder } = lan.people;
  const ctx = { who: 'AK', now: () => lan.now };
  const token = { name: 'gauge at lathe 2', personId: recorder.id, role: 'recorder' } as const;
  const secret = await issueToken(lan.shop.db, ctx, token);
  const call = () => lan.ask('/api/jobs', { headers: { authorization: `Bearer ${secret}` } });
  expect((await call()).status).toBe(200);
  const { page: reset } = await toldBy(`/people/${recorder.id}/password`, { method: 'POST' });
  expect([reset.status, reset.text]).toEqual([
    200,
    expect.stringContaining('The token &quot;gauge at lathe 2&quot; no longer works.'),
  ]);
  expect((await call()).status).toBe(401);
  const people = await lan.askAs('keeper', '/people');
  expect(people.text).toContain('token withdrawn');
});

test('start and own passwords are told apart after a reset', async () => {
  const ctx = { who: 'AK', now: () => lan.now };
  const { id, name } = lan.people.reader;
  const { typed, password } = await startPassword();
  await changePassword(lan.shop.db, ctx, { id, password });
  const session = cookie(sessionIn(await signIn({ name, password: typed })));
  expect((await lan.ask('/jobs', { headers: session })).headers.location).toBe('/account?back=%2Fjobs');
  await changePassword(lan.shop.db, ctx, { id, password: await ownPassword(PASSWORD) });
  const own = cookie(sessionIn(await signIn({ name, password: PASSWORD })));
  expect((await lan.ask('/jobs', { headers: own })).status).toBe(200);
});
