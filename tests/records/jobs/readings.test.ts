import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { NewReading } from '../../../shared/words/job.ts';
import { openShop, type Shop, write } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { historyOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { refusalOf } from '../refusals.ts';
import { as, received, wall } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  let jobId: number;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    jobId = (await createJob(shop.db, as('AB'), { received: received() })).id;
  });
  afterEach(() => shop.close());

  const add = (...readings: NewReading[]) => addReadings(shop.db, as('AB'), { jobId, readings });
  const standingIds = async () => (await getJob(shop.db, jobId))?.readings.map((r) => r.id);

  describe('a reading', () => {
    test('a reading is kept as typed, with who, when and its revision, in the order it came', async () => {
      const odd = wall('zz', {
        kind: 'face',
        angleDeg: 22.5,
        radiusMm: 123.25,
        valueMm: -0.0123,
        typed: '-.0123',
        gauge: 'dial',
        doubtful: true,
      });
      const { job, added, already } = await add(odd, wall('aa'));
      expect([added, already, job.revision]).toEqual([['zz', 'aa'], [], 2]);
      expect(job.readings[0]).toEqual({ ...odd, confirmed: null, revision: 2, who: 'AB', at: job.changedAt });
      expect(job.readings.map((r) => r.id)).toEqual(['zz', 'aa']);
    });

    test('a job takes four thousand readings and refuses more with a sentence', async () => {
      const some = (from: number, count: number) =>
        Array.from({ length: count }, (_, i) => wall(`many-${from + i}`, { angleDeg: (from + i) % 360 }));
      await add(...some(0, 3999));
      expect(await refusalOf(add(...some(3999, 2)))).toEqual({
        code: 'too-many-readings',
        path: 'readings',
        sentence:
          'Job 1001 would have 4001 readings; it can have at most 4000. Nothing was saved. Use another job for more.',
      });
      expect((await add(...some(3999, 1))).job.readings).toHaveLength(4000);
    });

    test('a reading that was given up with its change is not remembered, and another in its place is', async () => {
      await add(wall('first'));
      await getJob(shop.db, jobId);
      const givenUp = write(shop.db, async (trx) => {
        await addReadings(trx, as('AB'), { jobId, readings: [wall('lost')] });
        expect((await getJob(trx, jobId))?.readings.map(({ id }) => id)).toEqual(['first', 'lost']);
        throw new Error('given up');
      });
      await expect(givenUp).rejects.toThrow('given up');
      expect(await standingIds()).toEqual(['first']);
      await add(wall('second'));
      expect(await standingIds()).toEqual(['first', 'second']);
    });

    test('a reading sent again is harmless', async () => {
      await add(wall('a'), wall('b'));
      const again = await add(wall('a'), wall('b'), wall('c'), wall('c'));
      expect([again.added, again.already]).toEqual([['c'], ['a', 'b', 'c']]);
      const third = await addReadings(shop.db, as('CD'), {
        jobId,
        readings: [wall('a'), wall('b'), wall('c')],
      });
      expect([third.added, third.already, third.job.revision]).toEqual([[], ['a', 'b', 'c'], 3]);
      expect((await historyOf(shop.db, jobId)).length).toBe(3);
    });

    test.each<[string, Partial<NewReading>]>([
      ['value', { valueMm: 4.93 }],
      ['text', { typed: '4.920' }],
      ['place', { angleDeg: 45 }],
      ['radius', { radiusMm: 120 }],
      ['kind', { kind: 'mark' }],
      ['pass', { pass: 'after' }],
      ['gauge', { gauge: 'caliper' }],
      ['doubt', { doubtful: true }],
      ['replacement', { replaces: 'b' }],
    ])(
      'a reading sent again with another %s is refused, and nothing of its batch is kept',
      async (_, changes) => {
        await add(wall('a'), wall('b'));
        expect(await refusalOf(add(wall('n'), wall('a', changes)))).toMatchObject({
          code: 'reading-differs',
          path: 'readings.1.id',
        });
        expect((await getJob(shop.db, jobId))?.readings).toHaveLength(2);
        expect((await getJob(shop.db, jobId))?.readings[0]).toMatchObject(wall('a'));
      },
    );

    test('a reading sent again with other content is refused with what to do', async () => {
      await add(wall('a'));
      expect((await refusalOf(add(wall('a', { valueMm: 5, typed: '5' })))).sentence).toBe(
        'The reading a ("5") is already recorded with other values. A reading is never changed: send the correction as a new reading that replaces it.',
      );
    });

    test('a reading’s id used in another job is not taken for this one', async () => {
      await add(wall('a'));
      const other = (await createJob(shop.db, as('AB'), { received: received() })).id;
      expect(
        (await refusalOf(addReadings(shop.db, as('AB'), { jobId: other, readings: [wall('a')] }))).code,
      ).toBe('reading-differs');
      expect((await getJob(shop.db, other))?.readings).toEqual([]);
    });

    test('a reading twice in one batch with other content is refused', async () => {
      expect((await refusalOf(add(wall('a'), wall('a', { valueMm: 5 })))).code).toBe('reading-differs');
      expect(await standingIds()).toEqual([]);
    });

    test.each<[string, string, Partial<NewReading>]>([
      ['no id', 'id', { id: '' }],
      ['a long id', 'id', { id: 'x'.repeat(65) }],
      ['an id with a blank', 'id', { id: 'a b' }],
      ['no such kind', 'kind', { kind: 'weight' as never }],
      ['no such pass', 'pass', { pass: 'during' as never }],
      ['an infinite value', 'valueMm', { valueMm: Number.POSITIVE_INFINITY }],
      ['a value that is no number', 'valueMm', { valueMm: Number.NaN }],
      ['no value at all', 'valueMm', { valueMm: undefined as never }],
      ['a wall of nothing', 'valueMm', { valueMm: 0 }],
      ['a mark above the face', 'valueMm', { kind: 'mark', valueMm: -0.1 }],
      ['no value and nothing to withdraw', 'valueMm', { valueMm: null }],
      ['an angle that is no number', 'angleDeg', { angleDeg: Number.NaN }],
      ['more than a turn', 'angleDeg', { angleDeg: 361 }],
      ['no radius', 'radiusMm', { radiusMm: 0 }],
      ['an infinite radius', 'radiusMm', { radiusMm: Number.POSITIVE_INFINITY }],
      ['a NUL typed', 'typed', { typed: '4\0' }],
      ['itself to replace', 'replaces', { replaces: 'n' }],
      ['a doubt that is neither yes nor no', 'doubtful', { doubtful: 'no' as never }],
    ])('a reading with %s is refused, and nothing of its batch is kept', async (_, field, changes) => {
      const refusal = await refusalOf(add(wall('ok'), wall('n', changes)));
      expect(refusal.path).toBe(`readings.1.${field}`);
      expect(refusal.sentence).toMatch(/^[A-Z"].*\.$/);
      expect(await standingIds()).toEqual([]);
    });

    test('a reading of another pass or kind is told what there is', async () => {
      const during = await refusalOf(add(wall('n', { pass: 'during' as never })));
      expect(during).toMatchObject({ code: 'bad-reading', path: 'readings.0.pass' });
      expect(during.sentence).toBe('A reading is taken before or after the cut, not "during".');
      const weight = await refusalOf(add(wall('n', { kind: 'weight' as never })));
      expect(weight.sentence).toBe('A reading is of kind wall, face or mark, not "weight".');
    });

    test('a reading of no job, or by nobody, is refused', async () => {
      expect(
        (await refusalOf(addReadings(shop.db, as('AB'), { jobId: 9, readings: [wall('a')] }))).code,
      ).toBe('not-found');
      expect((await refusalOf(addReadings(shop.db, as(''), { jobId, readings: [wall('a')] }))).code).toBe(
        'who-needed',
      );
    });
  });

  describe('a correction', () => {
    test('a correction takes the place of what it replaces, which is kept', async () => {
      await add(wall('a'), wall('b'));
      const { job } = await add(wall('c', { replaces: 'a', valueMm: 4.5, typed: '4.5' }));
      expect(job.readings.map((r) => r.id)).toEqual(['b', 'c']);
      expect(await shop.db.selectFrom('reading').select('id').orderBy('id').execute()).toHaveLength(3);
    });

    test('a correction may follow within one batch, as a tablet sends it after a lost connection', async () => {
      const queue = [
        wall('a', { valueMm: 0.492, typed: '.492' }),
        wall('b', { replaces: 'a' }),
        wall('c', { replaces: 'b', valueMm: null, typed: '' }),
      ];
      expect((await add(...queue)).job.readings).toEqual([]);
      expect((await add(...queue)).already).toEqual(['a', 'b', 'c']);
    });

    test.each<[string, string, string]>([
      ['of a reading that is not there', 'zz', 'is not a reading of this job'],
      ['of one that was replaced', 'a', 'was replaced or withdrawn already, perhaps on another tablet'],
      ['of one that was withdrawn', 'd', 'was replaced or withdrawn already, perhaps on another tablet'],
      ['of a withdrawal', 'e', 'was replaced or withdrawn already, perhaps on another tablet'],
    ])('a correction %s is refused', async (_, replaces, why) => {
      await add(
        wall('a'),
        wall('b', { replaces: 'a' }),
        wall('d'),
        wall('e', { replaces: 'd', valueMm: null }),
      );
      expect(await refusalOf(add(wall('n', { replaces })))).toEqual({
        code: 'nothing-to-replace',
        path: 'readings.0.replaces',
        sentence: `The reading ${replaces} ${why}; reload the job and correct the readings it has now.`,
      });
      expect(await standingIds()).toEqual(['b']);
    });

    test('a correction of a reading of another job is refused', async () => {
      await add(wall('a'));
      const other = (await createJob(shop.db, as('AB'), { received: received() })).id;
      const attempt = addReadings(shop.db, as('AB'), {
        jobId: other,
        readings: [wall('n', { replaces: 'a' })],
      });
      expect((await refusalOf(attempt)).code).toBe('nothing-to-replace');
    });

    test('of two corrections of one reading one counts and the other is told', async () => {
      await add(wall('a'));
      const results = await Promise.allSettled([
        add(wall('b', { replaces: 'a', valueMm: 4.8 })),
        add(wall('c', { replaces: 'a', valueMm: 4.7 })),
      ]);
      // Either may come first; the one that was kept is the one that stands.
      expect(results.map((r) => r.status).sort()).toEqual(['fulfilled', 'rejected']);
      expect(await standingIds()).toEqual([results[0]!.status === 'fulfilled' ? 'b' : 'c']);
    });
  });

  test('each reading is there once when two programs send what two tablets measured, twice', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
    const shops = [openShop({ dataDir: folder }), openShop({ dataDir: folder })] as const;
    const job = await createJob(shops[0].db, as('AB'), { received: received() });
    const readings = Array.from({ length: 24 }, (_, i) => wall(`r${i}`, { angleDeg: i * 15 }));
    const sent = readings.flatMap((reading) =>
      [0, 1, 0, 1].map((which) =>
        addReadings(shops[which]!.db, as(which === 0 ? 'AB' : 'CD'), { jobId: job.id, readings: [reading] }),
      ),
    );
    const results = await Promise.all(sent);
    expect(results.flatMap((r) => r.added).sort()).toEqual(readings.map((r) => r.id).sort());
    expect(results.flatMap((r) => r.already)).toHaveLength(72);
    const kept = await getJob(shops[1].db, job.id);
    expect([kept?.readings.length, kept?.revision]).toEqual([24, 25]);
    for (const each of shops) await each.close();
    rmSync(folder, { recursive: true });
  });
});
