import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { ShelfFacts } from '../../../shared/words/shelf.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import {
  changeShelf,
  coversOnShelf,
  reservedFor,
  ShelfChanged,
  type ShelfEdit,
  shelfHistory,
} from '../../../src/records/shelf/shelfChanges.ts';
import { errorOf } from '../refusals.ts';
import { alder, as, received } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const facts: ShelfFacts = {
  jobRevision: 1,
  allowanceMm: 0.05,
  family: alder,
  wallsAre: 'measured',
  wallsMm: [4.6, 4.55],
  errors: { commonMm: 0.01, ownMm: [0.005, 0.005] },
  signed: true,
  studs: null,
  resurfacedMm: 0,
  crankPilotMm: null,
  against: null,
};

onEachDatabase((engine) => {
  let shop: Shop;
  let [cover, order]: [number, number] = [0, 0];
  beforeEach(async () => {
    shop = await engine.openEmpty();
    cover = (await createJob(shop.db, as('AB'), { received: received() })).id;
    order = (await createJob(shop.db, as('AB'), { received: received() })).id;
  });
  afterEach(() => shop.close());

  const change = (edit: Partial<ShelfEdit>, who = 'AB', why = '') =>
    changeShelf(shop.db, as(who, why), { jobId: cover, what: 'put', from: 0, facts, ...edit });

  test('a cover is put on the shelf, reserved, moved and taken off; every change stays', async () => {
    await change({ lies: ' rack B ' });
    await change({ what: 'reserved', from: 1, forJob: '1002' });
    await change({ what: 'moved', from: 2, lies: 'rack C' });
    expect(await coversOnShelf(shop.db)).toMatchObject([
      { jobNumber: '1001', lies: 'rack C', forJob: '1002', familyId: 'alder-11-plain', facts },
    ]);
    expect(await reservedFor(shop.db, order)).toMatchObject([{ jobNumber: '1001' }]);
    await change({ what: 'off', from: 3 }, 'CD', 'sold with job 1002');
    expect(await coversOnShelf(shop.db)).toEqual([]);
    expect(await reservedFor(shop.db, order)).toEqual([]);
    expect((await shelfHistory(shop.db, cover)).map(({ what, who }) => `${what} ${who}`)).toEqual([
      'put AB',
      'reserved AB',
      'moved AB',
      'off CD',
    ]);
    await change({ from: 4, lies: 'rack D' });
    expect(await coversOnShelf(shop.db)).toMatchObject([{ place: 5, lies: 'rack D', forJob: null }]);
  });

  test('a second tablet that reserves the same cover is told who was first; the same press twice is one', async () => {
    await change({ lies: 'rack B' });
    await change({ what: 'reserved', from: 1, forJob: '1002' });
    await change({ what: 'reserved', from: 1, forJob: '1002' });
    expect(await shelfHistory(shop.db, cover)).toHaveLength(2);
    const second = await errorOf(change({ what: 'reserved', from: 1, forJob: '1002' }, 'CD'));
    expect(second).toBeInstanceOf(ShelfChanged);
    expect((second as unknown as ShelfChanged).theirs).toMatchObject({ who: 'AB', forJob: '1002' });
  });

  test.each([
    [{ lies: ' ' }, 'no-place'],
    [{ lies: 'x'.repeat(81) }, 'bad-place'],
    [{ lies: 'rack B', facts: { ...facts, against: 'crack' as const } }, 'not-for-shelf'],
    [{ what: 'off' as const }, 'not-on-shelf'],
    [{ what: 'moved' as const, lies: 'rack C' }, 'not-on-shelf'],
  ])('%o is refused', async (edit, code) => {
    expect(await errorOf(change(edit))).toMatchObject({ code });
    expect(await coversOnShelf(shop.db)).toEqual([]);
  });

  test('it is reserved for another job that there is, and taken off with a reason', async () => {
    await change({ lies: 'rack B' });
    const reserve = (forJob: string) => errorOf(change({ what: 'reserved', from: 1, forJob }));
    expect(await reserve('')).toMatchObject({ code: 'no-job' });
    expect(await reserve('9999')).toMatchObject({ code: 'no-such-job' });
    expect(await reserve('1001')).toMatchObject({ code: 'own-job' });
    expect(await errorOf(change({ what: 'freed', from: 1 }))).toMatchObject({ code: 'not-reserved' });
    expect(await errorOf(change({ what: 'off', from: 1 }))).toMatchObject({ code: 'why-needed' });
    expect(await errorOf(change({ what: 'put', from: 1, lies: 'rack C' }))).toMatchObject({
      code: 'on-shelf',
    });
  });

  test.each([`update shelf_change set lies = 'x'`, 'delete from shelf_change'])(
    'the database itself refuses: %s',
    async (statement) => {
      await change({ lies: 'rack B' });
      await expect(sql.raw(statement).execute(shop.db)).rejects.toThrow('only ever added to');
    },
  );
});
