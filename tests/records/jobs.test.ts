import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openShopInMemory, type Shop } from '../../src/records/database.ts';
import { createJob, getJob } from '../../src/records/jobs.ts';
import { as, received, signedJob } from './samples.ts';

let shop: Shop;
beforeEach(() => {
  shop = openShopInMemory();
});
afterEach(() => shop.close());

describe('a new job', () => {
  test('is numbered from 1001 on', async () => {
    const numbers = [];
    for (let i = 0; i < 3; i++)
      numbers.push((await createJob(shop.db, as('AB'), { received: received() })).number);
    expect(numbers).toEqual(['1001', '1002', '1003']);
  });
  test('goes all the way', async () => {
    const job = await signedJob(shop.db);
    expect(job).toEqual(await getJob(shop.db, job.number));
    expect([job.stage, job.outcome, job.revision, job.readings.length]).toEqual(['signed', 'face', 8, 3]);
  });
});
