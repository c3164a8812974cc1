import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { FILE_NAME, openShop, type Shop } from '../../../src/records/database/database.ts';
import { usesStored } from '../../../src/records/people/lastUsed.ts';
import { ownPassword } from '../../../src/records/people/passwords.ts';
import { addFirstKeeper } from '../../../src/records/people/people.ts';
import { beginSession, findSession, IDLE_MS, sessionsOf } from '../../../src/records/people/sessions.ts';
import { findToken, issueToken, listTokens } from '../../../src/records/people/tokens.ts';
import { tell } from '../../faults/kit/tell.ts';
import { as } from '../samples.ts';

const START = new Date('2026-03-02T08:00:00.000Z');
const after = (ms: number) => new Date(START.getTime() + ms);
const HASHED = await ownPassword('four plain words here');

let folder: string;
let shop: Shop;
let session: string;
let token: string;
let keeper: number;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'coverwright-used-'));
  shop = openShop({ dataDir: folder });
  const person = { name: 'Tester One', initials: 'AA' };
  keeper = (await addFirstKeeper(shop.db, () => START, person, HASHED)).id;
  session = await beginSession(shop.db, { personId: keeper, device: '', now: START });
  token = await issueToken(shop.db, as('AA'), { name: 'gauge', personId: keeper, role: 'reader' });
});
afterEach(async () => {
  await shop.close();
  rmSync(folder, { recursive: true, force: true });
});

const stored = async () => {
  const [row] = await shop.db.selectFrom('session').select('used_at').execute();
  const [other] = await shop.db.selectFrom('api_token').select('used_at').execute();
  return [row?.used_at, other?.used_at];
};

test('who is signed in is found while another program holds the lock, and the last use is stored once it lets go', async () => {
  const other = new Database(join(folder, FILE_NAME));
  other.exec('BEGIN IMMEDIATE');
  expect(await findSession(shop.db, session, after(IDLE_MS))).not.toBeNull();
  expect(await findToken(shop.db, token, after(IDLE_MS))).not.toBeNull();
  expect(await stored()).toEqual([START.toISOString(), null]);
  // Shown and counted as used meanwhile.
  expect(await sessionsOf(shop.db, keeper, after(IDLE_MS))).toMatchObject([
    { usedAt: after(IDLE_MS).toISOString() },
  ]);
  expect(await listTokens(shop.db)).toMatchObject([{ usedAt: after(IDLE_MS).toISOString() }]);
  expect(await findSession(shop.db, session, after(2 * IDLE_MS))).not.toBeNull();
  other.exec('ROLLBACK');
  other.close();
  await usesStored(shop.db);
  expect(await stored()).toEqual([after(2 * IDLE_MS).toISOString(), after(IDLE_MS).toISOString()]);
});

test('who is signed in is found where nothing can be stored, and what was noted is stored with the next use that can', async () => {
  await sql`create temp trigger full before update on session begin select raise(abort, 'full'); end`.execute(
    shop.db,
  );
  expect(await findSession(shop.db, session, after(IDLE_MS))).not.toBeNull();
  await usesStored(shop.db);
  expect(await findSession(shop.db, session, after(2 * IDLE_MS))).not.toBeNull();
  await usesStored(shop.db);
  expect(await stored()).toEqual([START.toISOString(), null]);
  await sql`drop trigger full`.execute(shop.db);
  expect(await findToken(shop.db, token, after(2 * IDLE_MS))).not.toBeNull();
  await usesStored(shop.db);
  expect(await stored()).toEqual([after(2 * IDLE_MS).toISOString(), after(2 * IDLE_MS).toISOString()]);
  tell(
    'Disk full while people are signed in',
    '1 session, 1 token',
    'who is signed in is found, no reading needs a write; the last use is stored once it can be',
  );
});

test('a use within a minute of the last one is not stored again', async () => {
  await findSession(shop.db, session, after(60_000));
  await usesStored(shop.db);
  expect((await stored())[0]).toBe(START.toISOString());
  await findSession(shop.db, session, after(60_001));
  await usesStored(shop.db);
  expect((await stored())[0]).toBe(after(60_001).toISOString());
});

test('what only reads takes no lock that a change of another program would wait for', async () => {
  const other = new Database(join(folder, FILE_NAME));
  other.exec('BEGIN IMMEDIATE');
  const read = shop.db
    .transaction()
    .setAccessMode('read only')
    .execute((trx) => trx.selectFrom('person').select('name').execute());
  expect(await read).toEqual([{ name: 'Tester One' }]);
  other.exec('ROLLBACK');
  other.close();
});
