import type Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { Role } from '../../shared/words/people.ts';
import { openShop } from '../../src/records/database/database.ts';
import { ownPassword } from '../../src/records/people/passwords.ts';
import { addPerson } from '../../src/records/people/people.ts';
import { beginSession } from '../../src/records/people/sessions.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { apiExamples } from '../../src/web/api/examples.ts';
import { SESSION } from '../../src/web/people/sessionCookie.ts';
import { SEED } from '../seed.ts';
import type { Route } from './inside/instrument.ts';
import { crawl } from './kit/crawl.ts';
import { faultsIn as markupIn, submit, type Tried } from './kit/forms.ts';
import { ask } from './kit/http.ts';
import { MARK, MARKUP } from './kit/markup.ts';
import { mutants } from './kit/mutate.ts';
import { newFolder, type Program, start } from './kit/program.ts';
import { generator } from './kit/random.ts';
import { sendRaw } from './kit/raw.ts';
import { faultsIn, jobForm, look } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const REQUESTS = 1600;
/** Some of them retire one another, or change one another's password, on the way. */
const KEEPERS = 8;
const AT_ONCE = 6;
/** Sessions that were ended meanwhile are begun anew this often. */
const RENEWED_EVERY = 50;
/** The shop’s name, which nobody hears who has not signed in. */
const SHOP = 'Bramble Lane';

interface Somebody {
  readonly id: number;
  readonly initials: string;
  readonly role: Role;
}

/** A shop where people sign in: many keepers, a recorder and a reader. */
async function peopled(): Promise<{ dataDir: string; people: Somebody[] }> {
  const dataDir = newFolder();
  const shop = openShop({ dataDir });
  const password = await ownPassword('four plain words here');
  const roles: Role[] = ['reader', 'recorder', ...Array(KEEPERS).fill('keeper')];
  const people: Somebody[] = [];
  for (const [i, role] of roles.entries()) {
    const initials = `P${i}`;
    const ctx = { who: 'P0', now: () => new Date() };
    const { id } = await addPerson(shop.db, ctx, { name: `Person ${i}`, initials, role }, password);
    people.push({ id, initials, role });
  }
  await shop.close();
  return { dataDir, people };
}

/** Named beside the program that runs, once the demo has its limits. */
async function nameTheShop(dataDir: string): Promise<void> {
  const shop = openShop({ dataDir });
  const { revision, body } = await currentCriteria(shop.db);
  const ctx = { who: 'P9', why: 'named', now: () => new Date() };
  await saveCriteria(shop.db, ctx, { fromRevision: revision, body: { ...body, shopName: SHOP } });
  await shop.close();
}

/** A new session of each, made beside the program that runs. */
async function cookiesOf(dataDir: string, people: readonly Somebody[]): Promise<string[]> {
  const shop = openShop({ dataDir });
  const made: string[] = [];
  for (const { id } of people) {
    const secret = await beginSession(shop.db, { personId: id, device: 'a test', now: new Date() });
    made.push(`${SESSION}=${secret}`);
  }
  await shop.close();
  return made;
}

const onNetwork = (dataDir: string): Promise<Program> =>
  start({ dataDir, inside: ['instrument'], env: { HOST: '0.0.0.0' } });
const baseOf = (program: Program) => `http://127.0.0.1:${program.port}`;

test(`${REQUESTS} random and mutated requests where people sign in tell strangers nothing and sign nothing for them`, async () => {
  console.log(`seed ${SEED}`);
  const { dataDir, people } = await peopled();
  const program = await onNetwork(dataDir);
  await nameTheShop(dataDir);
  const routes = await program.ask<readonly Route[]>({ what: 'routes' });
  let cookies = await cookiesOf(dataDir, people);
  const keeper = { Cookie: cookies.at(-1)! };
  const pages = await crawl(baseOf(program), ['/', '/people', '/account', '/records'], keeper);
  expect(pages.find(({ path }) => path === '/people')?.status).toBe(200);
  expect(pages.find(({ path }) => path === '/')?.html).toContain(SHOP);
  const began = new Date().toISOString();
  // First one request of each that nothing is wrong with: what random ones keep is left to chance.
  const well: [Role, number][] = [];
  for (const [i, { role }] of people.entries()) {
    const { status } = await ask(`${baseOf(program)}/jobs`, {
      method: 'POST',
      headers: {
        Cookie: cookies[i]!,
        Origin: baseOf(program),
        'Content-Type': 'application/x-www-form-urlencoded',
      },
      body: new URLSearchParams(jobForm(`P-${i}`)).toString(),
    });
    well.push([role, status]);
  }
  expect(well).toEqual(people.map(({ role }) => [role, role === 'reader' ? 403 : 303]));
  const next = mutants(
    {
      port: program.port,
      routes,
      forms: pages.flatMap(({ page }) => page.forms),
      links: pages.flatMap(({ page }) => page.links),
      jobs: ['1001', '1002', '1003'],
      entries: ['stud/long-3-8-24', 'stack/two-piece-four-3-8-24'],
      examples: Object.values(apiExamples).map(({ request }) => request),
      cookies: () => cookies,
    },
    generator(SEED),
  );
  const wrong: string[] = [];
  const statuses = new Map<number | null, number>();
  let left = REQUESTS;
  while (left > 0) {
    const batch = Array.from({ length: Math.min(left, RENEWED_EVERY) }, next);
    left -= batch.length;
    const work = async () => {
      for (let one = batch.shift(); one !== undefined; one = batch.shift()) {
        const { status, body } = await sendRaw(program.port, one.bytes);
        statuses.set(status, (statuses.get(status) ?? 0) + 1);
        const asked = one.bytes.toString('latin1');
        if (status === null || status >= 500) wrong.push(`${status}: ${asked.slice(0, 1500)}`);
        const known = cookies.some((cookie) => asked.includes(cookie));
        // A form that a stranger sends comes back to them, with what they put into it.
        const theirs = /Bramble(\+|%20| )Lane/.test(asked);
        if (!known && !theirs && body.includes(SHOP)) wrong.push(`told a stranger: ${asked.slice(0, 1500)}`);
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, work));
    cookies = await cookiesOf(dataDir, people);
  }
  const told = [...statuses].sort(([a], [b]) => Number(a) - Number(b)).map(([s, n]) => `${n} × ${s}`);
  console.log(`${routes.length} routes; ${told.join(', ')}`);
  expect(wrong.slice(0, 5)).toEqual([]);
  expect(statuses.get(200) ?? 0).toBeGreaterThan(100);
  expect(statuses.get(303) ?? 0).toBeGreaterThan(50);
  expect(statuses.get(403) ?? 0).toBeGreaterThan(50);

  // Whatever was sent, everything kept is signed by somebody who may: the program's own people, and never the reader.
  const signed = (raw: Database.Database, table: string) =>
    raw.prepare<[string], string>(`SELECT DISTINCT who FROM ${table} WHERE at >= ?`).pluck().all(began);
  const [byJobs, byEntries, byTokens] = look(dataDir, (raw) => [
    signed(raw, 'job_revision'),
    signed(raw, 'entry_revision'),
    signed(raw, 'api_token'),
  ]);
  const of = (...roles: Role[]) =>
    people.filter(({ role }) => roles.includes(role)).map((one) => one.initials);
  expect(byJobs!.toSorted()).toEqual(of('recorder', 'keeper').toSorted());
  expect(of('keeper')).toEqual(expect.arrayContaining([...byEntries!, ...byTokens!]));
  expect(program.said().err).toBe('');
  expect(look(dataDir, faultsIn)).toEqual([]);
  tell(
    'Random and mutated requests where people sign in',
    `${REQUESTS} requests by ${people.length} people and by strangers`,
    'no 5xx, nothing told to a stranger, nothing signed by anybody who may not, the records are sound',
  );
});

test('no markup in what is typed of people, passwords and tokens becomes any, at once or later', async () => {
  const { dataDir, people } = await peopled();
  const program = await onNetwork(dataDir);
  const base = baseOf(program);
  const [cookie] = await cookiesOf(dataDir, people.slice(-1));
  const keeper = { Cookie: cookie! };
  const own = ['/people', '/account', `/people/${people[1]!.id}`, '/sign-in', '/first'];
  const tried: Tried[] = [];
  const forms = (await crawl(base, own, keeper))
    .filter(({ path }) => own.includes(path))
    .flatMap(({ page }) => page.forms)
    // Without these the session goes on.
    .filter(({ action }) => /people|tokens|account|sign-in|first/.test(action) && !/sign-out/.test(action));
  const actions = [...new Set(forms.map(({ action }) => action))];
  expect(actions).toEqual(expect.arrayContaining(['/people', '/tokens', '/account/password']));
  for (const action of actions) {
    const form = forms.find((one) => one.action === action)!;
    for (const markup of MARKUP) {
      for (const { name } of form.fields) {
        const answer = await submit(base, form, { [name]: markup }, keeper);
        tried.push({ what: `${action} ${name}=${markup}`, answer });
      }
      const all = Object.fromEntries(
        form.fields.filter(({ kind }) => kind !== 'choice').map(({ name }) => [name, markup]),
      );
      // Initials take none of it; the name and what a token is for do.
      const named = { newInitials: `M${MARKUP.indexOf(markup)}`, password: 'four plain words here' };
      tried.push({ what: `${action} all`, answer: await submit(base, form, { ...all, ...named }, keeper) });
    }
  }
  // As a stranger too, to whom what was typed is shown again.
  for (const { page } of await crawl(base, ['/sign-in', '/first'])) {
    for (const form of page.forms) {
      for (const markup of MARKUP) {
        const all = Object.fromEntries(form.fields.map(({ name }) => [name, markup]));
        tried.push({ what: `${form.action}, a stranger`, answer: await submit(base, form, all) });
      }
    }
  }
  const shown = (await crawl(base, [...own, '/'], keeper)).map(({ path, status, html }) => ({
    what: path,
    answer: { status, headers: { 'content-type': 'text/html' }, text: html },
  }));
  expect(markupIn(base, [...tried, ...shown])).toEqual([]);
  const kept = look(dataDir, (raw) => [
    raw.prepare(`SELECT count(*) FROM person WHERE name LIKE '%${MARK}%'`).pluck().get(),
    raw.prepare(`SELECT count(*) FROM api_token WHERE name LIKE '%${MARK}%'`).pluck().get(),
  ]);
  console.log(`markup in the names of ${kept.join(' people and ')} tokens; ${tried.length} forms sent`);
  for (const count of kept) expect(count).toBeGreaterThan(3);
  expect(shown.filter(({ answer }) => answer.text.includes(MARK)).length).toBeGreaterThan(1);
  expect(program.said().err).toBe('');
  tell(
    'Markup in every field of people, passwords and tokens',
    `${MARKUP.length} kinds, 200 forms or more`,
    'all of it stays text, for a keeper and for a stranger',
  );
});
