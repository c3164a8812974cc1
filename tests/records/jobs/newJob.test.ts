import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Shop } from '../../../src/records/database/database.ts';
import { NotInRecords } from '../../../src/records/database/errors.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob, jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import { alder, as, received } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  const create = (number?: string) =>
    createJob(shop.db, as('AB'), { received: received(), ...(number === undefined ? {} : { number }) });

  describe('the number of a new job', () => {
    test('a new job’s number is 1001 in a new shop, then the one after the highest plain number', async () => {
      const numbers = [];
      for (const typed of [undefined, '  ', 'J-9000', '0007', '1500', undefined])
        numbers.push((await create(typed)).number);
      expect(numbers).toEqual(['1001', '1002', 'J-9000', '0007', '1500', '1501']);
    });

    test('a new job’s number skips one that is taken, and does not count on from a scanned code', async () => {
      await create('9999999');
      await create('10000000');
      await create('4006381333931');
      expect((await create()).number).toBe('10000001');
    });

    test('a job’s number is kept as typed, and finds the job whatever its letter case', async () => {
      const job = await create('  Kd-17 ');
      expect(job.number).toBe('Kd-17');
      expect(await getJob(shop.db, 'KD-17')).toEqual(job);
      expect(await getJob(shop.db, job.id)).toEqual(job);
    });

    test('a job’s number that is taken is refused with the job that has it', async () => {
      await create('Kd-17');
      expect(await refusalOf(create('kD-17'))).toEqual({
        code: 'number-taken',
        path: 'number',
        sentence:
          'Job number Kd-17 is taken by the Alder 11 plain received on 2026-03-02; give another number.',
      });
    });

    test.each([['x'.repeat(41)], ['12\n13'], ['12\u200b13'], ['a\0b']])(
      'the job number %j is refused',
      async (typed) => {
        expect((await refusalOf(create(typed))).code).toBe('bad-number');
      },
    );
  });

  describe('a new job', () => {
    test('a new job is one revision, by somebody, with what was received', async () => {
      const job = await createJob(shop.db, as('AB', 'came with the van'), {
        received: received(),
        demo: true,
      });
      expect(job).toMatchObject({
        number: '1001',
        revision: 1,
        stage: 'to-look',
        outcome: null,
        demo: true,
        readings: [],
      });
      expect(job.sections.received).toMatchObject({
        revision: 1,
        who: 'AB',
        why: 'came with the van',
        body: received(),
      });
      expect(job.createdAt).toBe(job.changedAt);
    });

    test.each([
      ['nobody', 'who-needed', () => createJob(shop.db, as(' '), { received: received() })],
      [
        'a name that cannot be seen',
        'who-too-long',
        () => createJob(shop.db, as('\u200b'), { received: received() }),
      ],
      ['a name of nine', 'who-too-long', () => createJob(shop.db, as('ABCDEFGHI'), { received: received() })],
      [
        'a day that is none',
        'bad-day',
        () => createJob(shop.db, as('AB'), { received: received({ receivedOn: '2026-02-30' }) }),
      ],
      [
        'a month that is none',
        'bad-day',
        () => createJob(shop.db, as('AB'), { received: received({ receivedOn: '2026-13-01' }) }),
      ],
      [
        'a day with a time',
        'bad-day',
        () => createJob(shop.db, as('AB'), { received: received({ receivedOn: '2026-03-02T08:00' }) }),
      ],
      [
        'half a character',
        'bad-text',
        () => createJob(shop.db, as('AB'), { received: received({ note: 'a\ud800b' }) }),
      ],
      [
        'an infinite size',
        'not-a-number',
        () =>
          createJob(shop.db, as('AB'), {
            received: received({ family: { ...alder, nominalWallMm: Number.POSITIVE_INFINITY } }),
          }),
      ],
    ])('a new job with %s is refused, and nothing is kept', async (_, code, attempt) => {
      expect((await refusalOf(attempt())).code).toBe(code);
      expect(await getJob(shop.db, '1001')).toBeNull();
    });
  });

  describe('a job that is not there', () => {
    test('a job that does not exist reads as null, and changing it is refused', async () => {
      for (const which of [1, 0, -1, 1.5, Number.NaN, '1001', ''])
        expect(await getJob(shop.db, which)).toBeNull();
      const change = reviseJob(shop.db, as('AB'), {
        jobId: 5,
        fromRevision: 1,
        what: 'plan',
        body: { plannedCutMm: null, typed: '' },
      });
      expect(await errorOf(change)).toBeInstanceOf(NotInRecords);
      expect(await errorOf(jobAtRevision(shop.db, 5, 1))).toMatchObject({
        message: 'There is no job 5 here. Look for it under Jobs.',
      });
    });
  });
});
