import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Shop } from '../../../src/records/database/database.ts';
import { saveCriteria } from '../../../src/records/shopCriteria.ts';
import { countJudged, judgedUnder } from '../../../src/records/trends/judgedUnder.ts';
import { as, criteria, finishedJob, measuredJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  test('a decision counts for the revision it was made under, an open job for none', async () => {
    const before = await finishedJob(shop.db);
    await saveCriteria(shop.db, as('AK'), { fromRevision: 0, body: criteria });
    const after = [await finishedJob(shop.db), await finishedJob(shop.db)];
    await measuredJob(shop.db);
    expect(await countJudged(shop.db)).toEqual(
      new Map([
        [0, 1],
        [1, 2],
      ]),
    );
    const numbers = async (revision: number, from?: number) =>
      (await judgedUnder(shop.db, revision, from)).map(({ number }) => number);
    expect(await numbers(0)).toEqual([before.number]);
    expect(await numbers(1)).toEqual(after.map(({ number }) => number).reverse());
    expect(await numbers(1, after[1]!.id)).toEqual([after[0]!.number]);
    expect(await numbers(2)).toEqual([]);
  });
});
