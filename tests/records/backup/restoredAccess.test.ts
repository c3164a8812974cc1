import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { backUp } from '../../../src/records/backup/backup.ts';
import { restore } from '../../../src/records/backup/restore.ts';
import { accessInWords } from '../../../src/records/backup/restoredAccess.ts';
import { FILE_NAME, openShop, type Shop } from '../../../src/records/database/database.ts';
import { ownPassword } from '../../../src/records/people/passwords.ts';
import {
  addFirstKeeper,
  addPerson,
  changePassword,
  listPeople,
  peopleHistory,
  retirePerson,
  revisePerson,
} from '../../../src/records/people/people.ts';
import { beginSession, findSession } from '../../../src/records/people/sessions.ts';
import { personWith } from '../../../src/records/people/signingIn.ts';
import { findToken, issueToken, listTokens, withdrawToken } from '../../../src/records/people/tokens.ts';
import { tell } from '../../faults/kit/tell.ts';
import { errorOf } from '../refusals.ts';
import { as } from '../samples.ts';

const NOW = new Date('2026-03-02T17:04:05.678Z');
const now = () => NOW;
const OLD = await ownPassword('the old words of then');
const NEW = await ownPassword('the new words of today');

let dataDir: string;
let shop: Shop;
let backup: string;
let one: { readonly id: number; readonly revision: number };
let two: { readonly id: number; readonly revision: number };
let session: string;
let withdrawn: string;
let good: string;
beforeEach(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-doors-'));
  shop = openShop({ dataDir });
  one = await addFirstKeeper(shop.db, now, { name: 'Tester One', initials: 'AA' }, OLD);
  two = await addPerson(shop.db, as('AA'), { name: 'Tester Two', initials: 'BB', role: 'keeper' }, OLD);
  session = await beginSession(shop.db, { personId: two.id, device: '', now: NOW });
  const issue = (name: string) => issueToken(shop.db, as('AA'), { name, personId: one.id, role: 'reader' });
  [withdrawn, good] = [await issue('withdrawn since'), await issue('good then')];
  backup = (await backUp({ dataDir, now })).folder;
});
afterEach(async () => {
  await shop.close();
  rmSync(dataDir, { recursive: true });
});

/** What somebody does after an employee left. */
async function closeDoorsToday(): Promise<void> {
  const [, token] = await listTokens(shop.db);
  await withdrawToken(shop.db, as('AA'), token!.id);
  await retirePerson(shop.db, as('AA'), { id: two.id, fromRevision: two.revision });
  await changePassword(shop.db, as('AA'), { id: one.id, password: NEW });
  await addPerson(shop.db, as('AA'), { name: 'Tester Three', initials: 'CC', role: 'recorder' }, NEW);
  await shop.close();
}

const standing = async () =>
  (await listPeople(shop.db)).map(
    ({ name, initials, role, retired }) => `${name} ${initials} ${role}${retired ? ' retired' : ''}`,
  );

const TODAY = ['Tester One AA keeper', 'Tester Three CC recorder', 'Tester Two BB keeper retired'];

describe('after a restore', () => {
  test('people, roles and passwords are as before it, nobody is signed in and every token is withdrawn', async () => {
    await closeDoorsToday();
    const asked: string[] = [];
    const done = await restore({
      dataDir,
      folder: backup,
      now,
      confirm: (differ) => {
        asked.push(...differ);
        return true;
      },
    });
    expect(asked).toEqual([
      'Tester One, AA: has another password in the backup; the present one stays.',
      'Tester Three, CC: not in the backup; stays a recorder.',
      'Tester Two, BB: a manager in the backup; stays retired.',
    ]);
    expect(done.access).toMatchObject({
      from: 'present',
      differ: asked,
      tokens: ['withdrawn since', 'good then'],
    });
    shop = openShop({ dataDir });
    expect(await standing()).toEqual(TODAY);
    expect(await findSession(shop.db, session, NOW)).toBeNull();
    expect(await findToken(shop.db, withdrawn, NOW)).toBeNull();
    expect(await findToken(shop.db, good, NOW)).toBeNull();
    expect(
      await personWith(shop.db, { name: 'Tester One', password: 'the old words of then' }, NOW),
    ).toBeNull();
    expect(
      await personWith(shop.db, { name: 'Tester One', password: 'the new words of today' }, NOW),
    ).not.toBeNull();
    expect(
      await personWith(shop.db, { name: 'Tester Two', password: 'the old words of then' }, NOW),
    ).toBeNull();
    expect(await peopleHistory(shop.db, 1)).toMatchObject([
      { who: 'console', why: 'restored: as before the restore' },
    ]);
    tell(
      'Backup restored from before doors were closed',
      '3 people, 2 tokens, 1 session',
      'nobody is signed in, tokens are withdrawn, people, roles and passwords are as before it; what differs is listed first',
    );
  });

  test('it is undone by the same command, and people stay as they are', async () => {
    await closeDoorsToday();
    const { aside } = await restore({ dataDir, folder: backup, now, confirm: () => true });
    const later = () => new Date(NOW.getTime() + 60_000);
    const undone = await restore({ dataDir, folder: aside!, now: later });
    expect(undone.access.differ).toEqual([]);
    shop = openShop({ dataDir });
    expect(await standing()).toEqual(TODAY);
  });

  test('a name that is another person’s by now goes to that person', async () => {
    await revisePerson(shop.db, as('AA'), {
      id: two.id,
      fromRevision: two.revision,
      name: 'Tester Four',
      role: 'keeper',
    });
    const { revision } = (await listPeople(shop.db)).find(({ id }) => id === one.id)!;
    await revisePerson(shop.db, as('AA'), {
      id: one.id,
      fromRevision: revision,
      name: 'Tester Two',
      role: 'keeper',
    });
    await shop.close();
    await restore({ dataDir, folder: backup, now, confirm: () => true });
    shop = openShop({ dataDir });
    expect(await standing()).toEqual(['Tester Four BB keeper', 'Tester Two AA keeper']);
  });

  test('somebody of the backup of another shop, whom the present one does not have, is retired', async () => {
    const other = mkdtempSync(join(tmpdir(), 'coverwright-other-'));
    const theirs = openShop({ dataDir: other });
    await addFirstKeeper(theirs.db, now, { name: 'Tester Nine', initials: 'NN' }, OLD);
    const { folder } = await backUp({ dataDir: other, now });
    await theirs.close();
    await shop.close();
    const done = await restore({ dataDir, folder, now, confirm: () => true });
    expect(done.access.differ).toContain('Tester Nine, NN: not in the present shop; is retired.');
    shop = openShop({ dataDir });
    expect(await standing()).toEqual([
      'Tester Nine NN keeper retired',
      'Tester One AA keeper',
      'Tester Two BB keeper',
    ]);
    rmSync(other, { recursive: true });
  });
});

test('what differs and is not confirmed is listed, and nothing is restored', async () => {
  await closeDoorsToday();
  const records = () =>
    readdirSync(dataDir)
      .filter((name) => name !== 'in-use.lock')
      .sort();
  const before = records();
  const error = await errorOf(restore({ dataDir, folder: backup, now }));
  expect(error).toMatchObject({
    code: 'not-confirmed',
    message: expect.stringMatching(
      /Tester Two, BB: a manager in the backup; stays retired\.[\s\S]*--yes\. Nothing was changed\.$/,
    ),
  });
  expect(records()).toEqual(before);
  shop = openShop({ dataDir });
  expect(await standing()).toEqual(TODAY);
});

test('where the people of the shop before cannot be read, the command says so and not that there were none', async () => {
  await closeDoorsToday();
  writeFileSync(join(dataDir, FILE_NAME), 'no database any more');
  const done = await restore({ dataDir, folder: backup, now });
  expect(done.access.from).toBe('backup-unread');
  expect(accessInWords(done.access)[0]).toBe(
    'The people of the shop before can’t be read. Those of the backup can sign in, with their passwords from then; retire who has left:',
  );
  shop = openShop({ dataDir });
});

test('into an empty folder the people of the backup stand, and the command names who may come in', async () => {
  const empty = mkdtempSync(join(tmpdir(), 'coverwright-empty-'));
  const done = await restore({ dataDir: empty, folder: backup, now });
  expect(accessInWords(done.access)).toEqual([
    'There were no people before, so those of the backup can sign in, with their passwords from then:',
    '  Tester One, AA, manager',
    '  Tester Two, BB, manager',
    'To give somebody a new password: npm run people -- reset NAME',
    'Everybody must sign in again.',
    'Tokens withdrawn: withdrawn since, good then. Make new ones where scripts need them.',
  ]);
  const restored = openShop({ dataDir: empty });
  expect(await findSession(restored.db, session, NOW)).toBeNull();
  expect(await findToken(restored.db, good, NOW)).toBeNull();
  expect(
    await personWith(restored.db, { name: 'Tester Two', password: 'the old words of then' }, NOW),
  ).not.toBeNull();
  await restored.close();
  rmSync(empty, { recursive: true });
});
