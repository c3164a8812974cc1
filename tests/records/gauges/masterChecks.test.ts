import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import {
  addMasterCheck,
  masterChecksOf,
  withdrawMasterCheck,
} from '../../../src/records/gauges/masterChecks.ts';
import { errorOf } from '../refusals.ts';
import { as } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { gauge, newCheck } from './gaugeSamples.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    await addEntry(shop.db, as('AB'), { kind: 'gauge', id: 'm1', body: gauge });
  });
  afterEach(() => shop.close());

  test('a check is kept whole, with the day its calibration was due, and sent twice is one', async () => {
    for (let i = 0; i < 2; i++) await addMasterCheck(shop.db, as('BB'), newCheck());
    expect(await masterChecksOf(shop.db, ['m1', 'other'])).toEqual([
      { ...newCheck(), at: expect.any(String), who: 'BB', dueOn: '2027-03-01', withdrawn: null },
    ]);
    expect(await errorOf(addMasterCheck(shop.db, as('BB'), newCheck({ readingMm: 5.1 })))).toMatchObject({
      code: 'sent-otherwise',
    });
    expect(await masterChecksOf(shop.db, [])).toEqual([]);
  });

  test('a check is of a gauge there is, by somebody', async () => {
    expect(await errorOf(addMasterCheck(shop.db, as('BB'), newCheck({ gaugeId: 'none' })))).toMatchObject({
      message: 'The catalog has no gauge "none".',
    });
    expect(await errorOf(addMasterCheck(shop.db, as(''), newCheck()))).toMatchObject({ code: 'who-needed' });
  });

  test('a mistyped check is withdrawn once, with a reason, and stays readable', async () => {
    await addMasterCheck(shop.db, as('BB'), newCheck());
    const asked = { gaugeId: 'm1', id: newCheck().id, why: 'wrong block' };
    const withdraw = (change: Partial<typeof asked> = {}) =>
      withdrawMasterCheck(shop.db, as('CD'), { ...asked, ...change });
    expect(await errorOf(withdraw({ why: ' ' }))).toMatchObject({ code: 'why-needed' });
    expect(await errorOf(withdraw({ gaugeId: 'other' }))).toMatchObject({
      message: 'This gauge has no such check on a master.',
    });
    await withdraw();
    expect((await masterChecksOf(shop.db, ['m1']))[0]).toMatchObject({
      readingMm: 5.002,
      withdrawn: { who: 'CD', why: 'wrong block' },
    });
    expect(await errorOf(withdraw())).toMatchObject({ code: 'withdrawn' });
  });

  test.each([
    `update master_check set reading_mm = 5`,
    'delete from master_check',
    `update master_check_withdrawn set why = 'x'`,
    'delete from master_check_withdrawn',
  ])('"%s" is refused', async (statement) => {
    await addMasterCheck(shop.db, as('BB'), newCheck());
    await withdrawMasterCheck(shop.db, as('CD'), { gaugeId: 'm1', id: newCheck().id, why: 'wrong' });
    expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({
      message: expect.stringContaining('is only ever added to'),
    });
  });
});
