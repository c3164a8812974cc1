import { afterEach, beforeEach, expect, it } from 'vitest';
import { copyDue, lastCopyAway, recordCopyAway } from '../../../src/records/backup/copyAway.ts';
import { openShopInMemory, type Shop } from '../../../src/records/database/database.ts';
import { currentCriteria, saveCriteria } from '../../../src/records/shopCriteria.ts';

let shop: Shop;
beforeEach(() => {
  shop = openShopInMemory();
});
afterEach(() => shop.close());

const at = (time: string) => ({ who: 'AA', why: '', now: () => new Date(time) });
const away = (whither: string, time = '2026-11-24T12:00:00Z') => recordCopyAway(shop.db, at(time), whither);
const due = (time: string, zone = 'UTC') => copyDue(shop.db, new Date(time), zone);

async function askEvery(backupAwayDays: number | null) {
  const { body, revision } = await currentCriteria(shop.db);
  await saveCriteria(
    shop.db,
    { ...at('2026-11-01T12:00:00Z'), why: 'house rule' },
    { fromRevision: revision, body: { ...body, backupAwayDays } },
  );
}

it('where a copy went is 1 to 80 characters once the blanks around it are gone', async () => {
  await away(`  ${'a'.repeat(80)}  `);
  expect((await lastCopyAway(shop.db))?.whither).toBe('a'.repeat(80));
  for (const typed of ['', '   ', 'a'.repeat(81), 'drive\u0007', 'drive\nin the safe'])
    await expect(away(typed), JSON.stringify(typed)).rejects.toThrow(
      'Enter where the copy is now, in 1 to 80 characters.',
    );
  expect((await lastCopyAway(shop.db))?.whither).toBe('a'.repeat(80));
});

it('an accent typed as two characters is kept as one', async () => {
  await away('cafe\u0301');
  expect((await lastCopyAway(shop.db))?.whither).toBe('caf\u00e9');
});

it('the copy recorded last stands, whatever its time says', async () => {
  expect(await lastCopyAway(shop.db)).toBeNull();
  await away('drive 1', '2026-11-24T12:00:00Z');
  await away('drive 2', '2026-11-20T12:00:00Z');
  expect(await lastCopyAway(shop.db)).toEqual({
    at: '2026-11-20T12:00:00.000Z',
    who: 'AA',
    whither: 'drive 2',
  });
});

it('nobody is reminded while the shop asks for none', async () => {
  expect(await due('2026-11-24T12:00:00Z')).toBeNull();
  await askEvery(3);
  expect(await due('2026-11-24T12:00:00Z')).toBe(
    'No backup is recorded as taken off this machine. The shop limits ask for one every 3 days.',
  );
  await askEvery(null);
  expect(await due('2026-11-24T12:00:00Z')).toBeNull();
});

it('days are the shop’s own: a copy late one evening is a day old the next morning', async () => {
  await askEvery(1);
  await away('drive 1', '2026-11-24T04:30:00Z');
  // Chicago is six hours behind: 10:30 PM on the 23rd, then still the 23rd, then the 24th.
  expect(await due('2026-11-24T05:59:00Z', 'America/Chicago')).toBeNull();
  expect(await due('2026-11-24T06:00:00Z', 'America/Chicago')).toBe(
    'The last backup left this machine 1 day ago. The shop limits ask for one every day.',
  );
  expect(await due('2026-11-24T06:00:00Z', 'UTC')).toBeNull();
});

it('a day of 23 or 25 hours counts as one', async () => {
  await askEvery(2);
  await away('drive 1', '2026-03-07T18:00:00Z');
  expect(await due('2026-03-08T18:00:00Z', 'America/Chicago')).toBeNull();
  expect(await due('2026-03-09T18:00:00Z', 'America/Chicago')).toBe(
    'The last backup left this machine 2 days ago. The shop limits ask for one every 2 days.',
  );
});
