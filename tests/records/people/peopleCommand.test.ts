import { afterEach, beforeEach, expect, test } from 'vitest';
import { openShopInMemory, type Shop } from '../../../src/records/database/database.ts';
import { ownPassword } from '../../../src/records/people/passwords.ts';
import {
  addFirstKeeper,
  addPerson,
  peopleHistory,
  retirePerson,
} from '../../../src/records/people/people.ts';
import { peopleCommand } from '../../../src/records/people/peopleCommand.ts';
import { beginSession, findSession } from '../../../src/records/people/sessions.ts';
import { personWith } from '../../../src/records/people/signingIn.ts';
import { findToken, issueToken } from '../../../src/records/people/tokens.ts';
import { refusalOf } from '../refusals.ts';

const NOW = new Date('2026-03-02T08:00:00.000Z');
const now = () => NOW;
const HASHED = await ownPassword('four plain words here');

let shop: Shop;
beforeEach(() => {
  shop = openShopInMemory({ now });
});
afterEach(() => shop.close());
const run = (...words: string[]) => peopleCommand(shop.db, words, now);
const firstKeeper = () => addFirstKeeper(shop.db, now, { name: 'Tester One', initials: 'AK' }, HASHED);

test('the people command lists everybody', async () => {
  expect(await run('list')).toBe('Nobody has an account yet.');
  await firstKeeper();
  const bo = await addPerson(
    shop.db,
    { who: 'AK', now },
    { name: 'Tester Seven', initials: 'BL', role: 'reader' },
    HASHED,
  );
  await retirePerson(shop.db, { who: 'AK', now }, { id: bo.id, fromRevision: 1 });
  expect(await run('list')).toBe('Tester One, AK, manager\nTester Seven, BL, reader, retired');
});

test('the people command gives a keeper who forgot theirs a new password, and records it', async () => {
  const { id } = await firstKeeper();
  const session = await beginSession(shop.db, { personId: id, device: '', now: NOW });
  const told = await run('reset', 'tester', 'one');
  const password = /is now (\S+)/.exec(told)?.[1] ?? '';
  expect(await personWith(shop.db, { name: 'Tester One', password }, NOW)).toMatchObject({ id });
  expect(
    await personWith(shop.db, { name: 'Tester One', password: 'four plain words here' }, NOW),
  ).toBeNull();
  expect(await findSession(shop.db, session, NOW)).toBeNull();
  expect((await peopleHistory(shop.db, 1))[0]).toMatchObject({
    who: 'console',
    what: 'start-password',
    why: 'from the command line',
  });
});

test('the people command finds somebody by initials too', async () => {
  const { id } = await firstKeeper();
  const password = /is now (\S+)/.exec(await run('reset', 'ak'))?.[1] ?? '';
  expect(await personWith(shop.db, { name: 'Tester One', password }, NOW)).toMatchObject({ id });
});

test('a new password withdraws that person’s tokens and names them, and those of others stay', async () => {
  const { id } = await firstKeeper();
  const by = { who: 'AK', now };
  const bo = await addPerson(shop.db, by, { name: 'Tester Seven', initials: 'BL', role: 'recorder' }, HASHED);
  const [theirs, others] = [
    await issueToken(shop.db, by, { name: 'gauge at lathe 2', personId: id, role: 'recorder' }),
    await issueToken(shop.db, by, { name: 'clock', personId: bo.id, role: 'reader' }),
  ];
  expect(await run('reset', 'Tester One')).toContain('The token "gauge at lathe 2" is withdrawn.');
  expect(await findToken(shop.db, theirs, NOW)).toBeNull();
  expect(await findToken(shop.db, others, NOW)).toMatchObject({ id: bo.id });
  expect((await peopleHistory(shop.db, 10)).map(({ what, why }) => [what, why])).toContainEqual([
    'token-withdrawn',
    'token "gauge at lathe 2"',
  ]);
});

test('the people command says what is wrong, and what it can do', async () => {
  expect((await refusalOf(run('reset', 'Nobody'))).sentence).toBe(
    'There is no account for "Nobody". To see them all: npm run people -- list',
  );
  for (const words of [[], ['reset'], ['remove', 'Tester One']]) {
    expect(await run(...words)).toContain('npm run people -- reset NAME');
  }
});

test('the people command lets a retired person back in', async () => {
  await firstKeeper();
  const ctx = { who: 'AK', now };
  const bo = await addPerson(shop.db, ctx, { name: 'Tester Seven', initials: 'BL', role: 'reader' }, HASHED);
  await retirePerson(shop.db, ctx, { id: bo.id, fromRevision: 1 });
  expect((await refusalOf(run('reset', 'Tester Seven'))).code).toBe('retired');
  expect(await run('reinstate', 'Tester Seven')).toBe('Tester Seven can sign in again.');
  expect(await run('list')).not.toContain('retired');
});
