import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Shop } from '../../../src/records/database/database.ts';
import { ringCredit } from '../../../src/records/database/migrations/015-ring-credit.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { closeRingDoubt, ringDoubts } from '../../../src/records/jobs/ringDoubts.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import { as, prints, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { ringedDecision, ringedJob, signedBefore } from './ringed.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());
  const sign = async (jobId: number) => {
    const { revision } = (await getJob(shop.db, jobId))!;
    const body = { statement: 'Measured again.', signedRevision: revision };
    return reviseJob(shop.db, as('CD'), { jobId, fromRevision: revision, what: 'signature', body }, prints);
  };
  const open = async () => (await ringDoubts(shop.db)).open.map(({ number }) => number);

  test('a job decided on a ring that nobody recorded as joined is signed only after it is decided again', async () => {
    const job = await ringedJob(shop.db);
    expect(job.stage).toBe('to-sign');
    expect(await refusalOf(sign(job.id))).toMatchObject({
      code: 'ring-not-joined',
      sentence: expect.stringMatching(/not recorded as welded to the pads. Record how .* decide again/),
    });
    await reviseJob(shop.db, as('CD'), {
      jobId: job.id,
      fromRevision: job.revision,
      what: 'decision',
      body: ringedDecision(job.revision, { joinedToPads: true }),
    });
    expect((await sign(job.id)).stage).toBe('signed');
    expect(await open()).toEqual([]);
  });

  test.each([
    ['with its ring recorded as joined', { joinedToPads: true }],
    ['where the limit was not met by the ring', { stiffness: 'not-checked' as const }],
  ])('a decision %s is signed without being decided again', async (_, ringed) => {
    const job = await ringedJob(shop.db, ringed);
    expect((await sign(job.id)).stage).toBe('signed');
    expect(await open()).toEqual([]);
  });

  test('signed jobs with a doubted ring stay listed until each is closed with a note, once', async () => {
    await signedJob(shop.db);
    const [first, second] = [
      await signedBefore(shop.db),
      await signedBefore(shop.db, { joinedToPads: null }),
    ];
    expect(await open()).toEqual([first.number, second.number]);

    const close = (word: string, job = first.number) => closeRingDoubt(shop.db, as('CD'), { job, word });
    expect(await refusalOf(close('  '))).toMatchObject({ code: 'word-needed' });
    expect(await refusalOf(close('x'.repeat(2001)))).toMatchObject({ code: 'word-needed' });
    await close(' Ring seen from inside: welded to all four pads. ');
    await close('Ring seen from inside: welded to all four pads.');
    expect(await refusalOf(close('another'))).toMatchObject({ code: 'closed-already' });
    expect(await open()).toEqual([second.number]);
    expect((await ringDoubts(shop.db)).closed).toMatchObject([
      { job: first.number, word: 'Ring seen from inside: welded to all four pads.', who: 'CD' },
    ]);
    expect(await refusalOf(close('none', '1001'))).toMatchObject({ code: 'no-ring-doubt' });
  });

  test('one signed before such jobs were marked is marked when the shop is brought up to date', async () => {
    await signedJob(shop.db);
    const job = await signedBefore(shop.db);
    await sql`update job set ring_credit = 0`.execute(shop.db);
    expect(await open()).toEqual([]);
    const steps = ringCredit[engine.name === 'SQLite' ? 'sqlite' : 'postgres'];
    await sql.raw(/UPDATE job SET ring_credit[^;]+/.exec(steps)![0]).execute(shop.db);
    expect(await open()).toEqual([job.number]);
  });

  test('a closing note on a doubted ring is never changed or taken away', async () => {
    const job = await signedBefore(shop.db);
    await closeRingDoubt(shop.db, as('CD'), { job: job.number, word: 'Called back.' });
    for (const statement of ["UPDATE ring_closed SET word = 'x'", 'DELETE FROM ring_closed']) {
      expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({
        message: 'ring_closed is only ever added to',
      });
    }
    expect((await ringDoubts(shop.db)).closed).toHaveLength(1);
  });
});
