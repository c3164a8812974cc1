import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Role } from '../../../shared/words/people.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { isPassword, ownPassword, startPassword } from '../../../src/records/people/passwords.ts';
import {
  addFirstKeeper,
  addPerson,
  changePassword,
  getPerson,
  hasPeople,
  listPeople,
  peopleHistory,
  reinstatePerson,
  retirePerson,
  revisePerson,
} from '../../../src/records/people/people.ts';
import {
  beginSession,
  endSession,
  endSessions,
  findSession,
  IDLE_MS,
  LIFE_MS,
  sessionsOf,
} from '../../../src/records/people/sessions.ts';
import { personWith } from '../../../src/records/people/signingIn.ts';
import { findToken, issueToken, listTokens, withdrawToken } from '../../../src/records/people/tokens.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import { as } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const START = new Date('2026-03-02T08:00:00.000Z');
const after = (ms: number) => new Date(START.getTime() + ms);
const PASSWORD = 'four plain words here';
const HASHED = await ownPassword(PASSWORD);

onEachDatabase((engine) => {
  let shop: Shop;
  let keeper: number;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    const first = { name: 'Tester One', initials: 'AK' };
    keeper = (await addFirstKeeper(shop.db, () => START, first, HASHED)).id;
  });
  afterEach(() => shop.close());

  async function add(name: string, initials: string, role: Role = 'recorder') {
    return addPerson(shop.db, as('AK'), { name, initials, role }, HASHED);
  }

  describe('people', () => {
    test('the first person is a keeper, and can be added once only', async () => {
      expect(await listPeople(shop.db)).toMatchObject([
        { name: 'Tester One', initials: 'AK', role: 'keeper' },
      ]);
      const second = addFirstKeeper(shop.db, () => START, { name: 'Tester Seven', initials: 'BL' }, HASHED);
      expect((await refusalOf(second)).code).toBe('not-first');
      expect(await hasPeople(shop.db)).toBe(true);
    });

    test('a change of a person is a revision with who, when and what', async () => {
      const bo = await add('Tester Seven', 'BL');
      await revisePerson(shop.db, as('AK', 'left the lathe'), {
        id: bo.id,
        fromRevision: 1,
        name: 'Tester Seven',
        role: 'reader',
      });
      await retirePerson(shop.db, as('AK', 'moved away'), { id: bo.id, fromRevision: 2 });
      await reinstatePerson(shop.db, as('AK'), { id: bo.id, fromRevision: 3 });
      await changePassword(shop.db, as('BL'), { id: bo.id, password: await ownPassword('another long one') });
      const lines = (await peopleHistory(shop.db, 50)).filter((line) => line.personId === bo.id);
      expect(lines.map(({ what, who, role, why }) => [what, who, role, why])).toEqual([
        ['own-password', 'BL', 'reader', ''],
        ['reinstated', 'AK', 'reader', ''],
        ['retired', 'AK', 'reader', 'moved away'],
        ['changed', 'AK', 'reader', 'left the lathe'],
        ['added', 'AK', 'recorder', ''],
      ]);
      expect(await getPerson(shop.db, bo.id)).toMatchObject({ revision: 5, retired: false });
    });

    test.each([
      ['a name taken, in other letters', ['tester  ONE', 'XX'], 'name-taken'],
      ['initials taken, in other letters', ['Tester Seven', 'ak'], 'initials-taken'],
      ['no name', [' ', 'BL'], 'name-needed'],
      ['initials too long', ['Tester Seven', 'BOLINDBOL'], 'bad-initials'],
      ["the command line's own initials", ['Tester Seven', 'Console'], 'bad-initials'],
      ['a name with a sign nobody sees', ['Bo\u200bLind', 'BL'], 'bad-name'],
    ] as const)('a person with %s is refused', async (_what, [name, initials], code) => {
      expect((await refusalOf(add(name, initials))).code).toBe(code);
      expect(await listPeople(shop.db)).toHaveLength(1);
    });

    test('initials of a retired person are not given again', async () => {
      const bo = await add('Tester Seven', 'BL');
      await retirePerson(shop.db, as('AK'), { id: bo.id, fromRevision: 1 });
      expect((await refusalOf(add('Bea Lowe', 'BL'))).code).toBe('initials-taken');
    });

    test('the last keeper can be neither retired nor demoted', async () => {
      const retire = retirePerson(shop.db, as('AK'), { id: keeper, fromRevision: 1 });
      expect((await refusalOf(retire)).code).toBe('last-keeper');
      const lower = { id: keeper, fromRevision: 1, name: 'Tester One', role: 'reader' as const };
      expect((await refusalOf(revisePerson(shop.db, as('AK'), lower))).code).toBe('last-keeper');
      expect(await getPerson(shop.db, keeper)).toMatchObject({ revision: 1, role: 'keeper', retired: false });
      await add('Tester Seven', 'BL', 'keeper');
      expect(await revisePerson(shop.db, as('AK'), lower)).toMatchObject({ role: 'reader' });
    });

    test('a change of a person begun from another revision is refused', async () => {
      const edit = { id: keeper, fromRevision: 7, name: 'Ash', role: 'keeper' as const };
      expect((await refusalOf(revisePerson(shop.db, as('AK'), edit))).code).toBe('stale-person');
    });

    test.each([
      ['DELETE FROM person_revision', 'person_revision is only ever added to'],
      ["UPDATE person_revision SET who = 'XY'", 'person_revision is only ever added to'],
      ['DELETE FROM person', 'a person is retired, never deleted'],
      ["UPDATE person SET initials = 'XY'", 'a person keeps their initials'],
    ])('the database refuses %s', async (statement, message) => {
      expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({ message });
    });
  });

  describe('passwords', () => {
    test('passwords are kept as argon2id, salted, and nowhere in the clear', async () => {
      const first = await ownPassword(PASSWORD);
      const second = await ownPassword(PASSWORD);
      expect(first.hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
      expect(first.hash).not.toBe(second.hash);
      expect(await isPassword(PASSWORD, first.hash)).toBe(true);
      expect(await isPassword(`${PASSWORD}.`, first.hash)).toBe(false);
      expect(await isPassword(PASSWORD, null)).toBe(false);
    });

    test.each([
      ['nine char', 'The password has 9 characters; it needs at least 10. A few plain words are easiest.'],
      ['x'.repeat(201), 'The password has 201 characters; it may have at most 200. Use a shorter one.'],
    ])('the password %.12s… is refused', async (typed, sentence) => {
      expect((await refusalOf(ownPassword(typed))).sentence).toBe(sentence);
    });

    test('a password of ten characters is enough, whatever they are', async () => {
      expect((await ownPassword('aaaaaaaaaa')).start).toBe(false);
    });

    test('people sign in by name in any letter case, and not with a wrong password, an unknown name or when retired', async () => {
      const bo = await add('Tester Seven', 'BL');
      const asked = (name: string, password = PASSWORD) => personWith(shop.db, { name, password }, START);
      expect(await asked(' tester SEVEN')).toMatchObject({ id: bo.id });
      expect(await asked('Tester Seven', 'four plain words her')).toBeNull();
      expect(await asked('Nobody')).toBeNull();
      await retirePerson(shop.db, as('AK'), { id: bo.id, fromRevision: 1 });
      expect(await asked('Tester Seven')).toBeNull();
    });

    test('a start password is good for a week', async () => {
      const { typed, password } = await startPassword();
      expect(typed).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);
      await changePassword(shop.db, { who: 'AK', now: () => START }, { id: keeper, password });
      const session = await beginSession(shop.db, { personId: keeper, device: '', now: START });
      expect(await findSession(shop.db, session, START)).toMatchObject({ mustChoosePassword: true });
      const day = 24 * 3600 * 1000;
      const asked = (now: Date) => personWith(shop.db, { name: 'Tester One', password: typed }, now);
      expect(await asked(after(7 * day))).toMatchObject({ id: keeper });
      expect(await asked(after(7 * day + 1))).toBeNull();
    });
  });

  describe('sessions', () => {
    const begin = (now = START) => beginSession(shop.db, { personId: keeper, device: 'a tablet', now });

    test('a session keeps a hash of its token, not the token', async () => {
      const secret = await begin();
      expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
      const rows = JSON.stringify(await shop.db.selectFrom('session').selectAll().execute());
      expect(rows).not.toContain(secret);
      expect(await findSession(shop.db, secret, START)).toMatchObject({
        person: { id: keeper },
        mustChoosePassword: false,
      });
      expect(await findSession(shop.db, `${secret}x`, START)).toBeNull();
    });

    test('a session ends when idle, and at last however much it is used', async () => {
      const idle = await begin();
      expect(await findSession(shop.db, idle, after(IDLE_MS))).not.toBeNull();
      expect(await findSession(shop.db, idle, after(2 * IDLE_MS + 1))).toBeNull();
      const used = await begin();
      for (let at = IDLE_MS; at <= LIFE_MS; at += IDLE_MS) {
        expect(await findSession(shop.db, used, after(at))).not.toBeNull();
      }
      expect(await findSession(shop.db, used, after(LIFE_MS + 1))).toBeNull();
    });

    const HOUR = 3600 * 1000;

    test('a session stays when the clock goes back, and is idle from the corrected hour on', async () => {
      const one = await begin(after(72 * HOUR));
      expect(await findSession(shop.db, one, START)).not.toBeNull();
      expect(await sessionsOf(shop.db, keeper, START)).toMatchObject([{ usedAt: START.toISOString() }]);
      expect(await findSession(shop.db, one, after(IDLE_MS))).not.toBeNull();
      expect(await findSession(shop.db, one, after(2 * IDLE_MS + 1))).toBeNull();
    });

    test('a session never outlasts a clock that was years ahead, and ends where it jumps ahead', async () => {
      const future = await begin(after(400 * 24 * HOUR));
      expect(await findSession(shop.db, future, START)).toBeNull();
      const now = await begin();
      expect(await findSession(shop.db, now, after(400 * 24 * HOUR))).toBeNull();
      // Looked at once at a wrong hour, it is as it was when the clock is right again.
      expect(await findSession(shop.db, now, after(HOUR))).not.toBeNull();
      expect(await findSession(shop.db, now, after(-2 * HOUR))).not.toBeNull();
      expect(await findSession(shop.db, now, after(5 * HOUR))).not.toBeNull();
    });

    test('sessions end one by one, or all of a person at once, or when the person is retired or gets another password', async () => {
      const [one, two] = [await begin(), await begin()];
      await endSession(shop.db, one);
      expect(await findSession(shop.db, one, START)).toBeNull();
      expect(await sessionsOf(shop.db, keeper, START)).toHaveLength(1);
      await endSessions(shop.db, keeper);
      expect(await findSession(shop.db, two, START)).toBeNull();
      const three = await begin();
      await changePassword(shop.db, as('AK'), {
        id: keeper,
        password: await ownPassword('another long one'),
      });
      expect(await findSession(shop.db, three, START)).toBeNull();
      await add('Tester Seven', 'BL', 'keeper');
      const four = await begin();
      await retirePerson(shop.db, as('BL'), { id: keeper, fromRevision: 2 });
      expect(await findSession(shop.db, four, START)).toBeNull();
    });
  });

  describe('tokens for scripts', () => {
    const issue = (role: Role, personId = keeper) =>
      issueToken(shop.db, as('AK'), { name: 'gauge at lathe 2', personId, role });

    test('a token acts for a person, with the lesser of the two roles', async () => {
      const bo = await add('Tester Seven', 'BL', 'recorder');
      expect(await findToken(shop.db, await issue('reader', bo.id), START)).toMatchObject({
        id: bo.id,
        role: 'reader',
      });
      expect(await findToken(shop.db, await issue('keeper', bo.id), START)).toMatchObject({
        role: 'recorder',
      });
      expect(await findToken(shop.db, 'cw_unknown', START)).toBeNull();
    });

    test('a token is kept as a hash, shows when it was used, and stays withdrawn', async () => {
      const secret = await issue('recorder');
      await findToken(shop.db, secret, START);
      expect(JSON.stringify(await shop.db.selectFrom('api_token').selectAll().execute())).not.toContain(
        secret,
      );
      const [token] = await listTokens(shop.db);
      expect(token).toMatchObject({ issuedBy: 'AK', usedAt: START.toISOString(), withdrawnAt: null });
      await withdrawToken(shop.db, as('AK'), token!.id);
      expect(await findToken(shop.db, secret, START)).toBeNull();
      await expect(sql.raw('UPDATE api_token SET withdrawn_at = NULL').execute(shop.db)).rejects.toThrow(
        'a token stays withdrawn',
      );
      const whats = (await peopleHistory(shop.db, 9)).map((line) => line.what);
      expect(whats.slice(0, 2)).toEqual(['token-withdrawn', 'token']);
    });

    test('a token ends with its person', async () => {
      const bo = await add('Tester Seven', 'BL');
      const secret = await issue('recorder', bo.id);
      await retirePerson(shop.db, as('AK'), { id: bo.id, fromRevision: 2 });
      expect(await findToken(shop.db, secret, START)).toBeNull();
      expect((await refusalOf(issue('reader', bo.id))).code).toBe('retired');
    });
  });
});
