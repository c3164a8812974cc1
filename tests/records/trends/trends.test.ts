import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Shop, write } from '../../../src/records/database/database.ts';
import { comebacksOf } from '../../../src/records/jobs/comebacks.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { TREND_VERSION } from '../../../src/records/trends/keepTrend.ts';
import { renewTrends } from '../../../src/records/trends/renewTrends.ts';
import { notGathered, trendFigures, wallsUnder } from '../../../src/records/trends/trendFigures.ts';
import { refusalOf } from '../refusals.ts';
import { as, decision, measuredJob, received, signedJob } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const WIDTH = { wallNm: 100_000, cutNm: 50_000, leftNm: 250_000 };

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());
  const figures = (question = {}) => trendFigures(shop.db, question, WIDTH);
  const rows = async () => [
    await shop.db.selectFrom('job_trend').selectAll().orderBy('job_id').execute(),
    await shop.db
      .selectFrom('job_rests')
      .selectAll()
      .orderBy('job_id')
      .orderBy('what')
      .orderBy('id')
      .execute(),
  ];

  describe('what the trends count', () => {
    it('of an empty shop is nothing', async () => {
      expect(await figures()).toMatchObject({ jobs: 0, months: [], walls: [], byDecision: [], patterns: [] });
    });

    it('of a job goes with each change of it: measured, decided, cut, signed', async () => {
      const { id } = await measuredJob(shop.db);
      expect(await figures()).toMatchObject({
        months: [{ month: '2026-03', outcome: null, n: 1 }],
        walls: [{ familyId: 'alder-11-plain', bin: 49, n: 1 }],
        cuts: [],
      });
      await signedJob(shop.db);
      const after = await figures();
      expect(after.months).toEqual(
        expect.arrayContaining([
          { month: '2026-03', outcome: null, n: 1 },
          { month: '2026-03', outcome: 'face', n: 1 },
        ]),
      );
      expect(after).toMatchObject({
        jobs: 2,
        walls: [{ bin: 49, n: 2 }],
        cuts: [{ bin: 5, n: 1 }],
        days: [{ bin: 0, n: 1 }],
        byDecision: [{ decision: 'face', released: 1, back: 0 }],
        byWallLeft: [{ bin: 18, released: 1, back: 0 }],
      });
      await reviseJob(shop.db, as('AB', 'received twice'), {
        jobId: id,
        fromRevision: 4,
        what: 'closed',
        body: { closed: true },
      });
      expect((await figures()).jobs).toBe(1);
    });

    it('is the same when it is made anew', async () => {
      const first = await signedJob(shop.db);
      await createJob(shop.db, as('AB'), { received: received({ comebackOf: first.number }) });
      const kept = await rows();
      await shop.db.deleteFrom('job_rests').execute();
      await shop.db.deleteFrom('job_trend').execute();
      expect(await notGathered(shop.db, TREND_VERSION)).toBe(2);
      await renewTrends(shop.db);
      expect(await notGathered(shop.db, TREND_VERSION)).toBe(0);
      expect(await rows()).toEqual(kept);
    });

    it('is nothing of a change that was given up', async () => {
      const job = await measuredJob(shop.db);
      const kept = await rows();
      await write(shop.db, async (trx) => {
        await reviseJob(trx, as('AB'), {
          jobId: job.id,
          fromRevision: job.revision,
          what: 'decision',
          body: decision(job.revision),
        });
        throw new Error('given up');
      }).catch(() => undefined);
      expect(await rows()).toEqual(kept);
    });

    it('by cover type and days of receipt', async () => {
      await measuredJob(shop.db);
      expect((await figures({ familyId: 'another' })).jobs).toBe(0);
      expect((await figures({ from: '2026-03-02', to: '2026-03-02' })).jobs).toBe(1);
      expect((await figures({ from: '2026-03-03' })).jobs).toBe(0);
    });

    it('a wall at the minimum is not below it: 4.92 mm', async () => {
      await measuredJob(shop.db);
      const under = async (minimumMm: number) =>
        wallsUnder(shop.db, {}, [{ familyId: 'alder-11-plain', minimumMm }]);
      expect(await under(4.92)).toEqual([{ familyId: 'alder-11-plain', measured: 1, under: 0 }]);
      expect(await under(4.9201)).toEqual([{ familyId: 'alder-11-plain', measured: 1, under: 1 }]);
    });
  });

  describe('a comeback', () => {
    const comeback = (number: string, of: string | null, receivedOn = '2026-03-02') =>
      createJob(shop.db, as('AB'), { number, received: received({ comebackOf: of, receivedOn }) });

    it('names an earlier job, which then counts as come back', async () => {
      const first = await signedJob(shop.db);
      await comeback('B1', first.number.toLowerCase());
      await comeback('B2', first.number);
      expect(await comebacksOf(shop.db, first.id)).toEqual([
        { number: 'B1', receivedOn: '2026-03-02' },
        { number: 'B2', receivedOn: '2026-03-02' },
      ]);
      expect((await figures()).byDecision).toEqual([{ decision: 'face', released: 1, back: 1 }]);
      const again = (await getJob(shop.db, 'B1'))!;
      for (const [of, back] of [
        [null, 1],
        [first.number, 1],
      ] as const) {
        await reviseJob(shop.db, as('AB'), {
          jobId: again.id,
          fromRevision: (await getJob(shop.db, 'B1'))!.revision,
          what: 'received',
          body: received({ comebackOf: of }),
        });
        expect((await figures()).byDecision[0]!.back).toBe(back);
      }
    });

    it('is refused of no job, of itself, of a later one, and round in a circle', async () => {
      await comeback('C1', null);
      await comeback('C2', 'C1');
      const c1 = (await getJob(shop.db, 'C1'))!;
      const revise = (of: string) =>
        reviseJob(shop.db, as('AB'), {
          jobId: c1.id,
          fromRevision: c1.revision,
          what: 'received',
          body: received({ comebackOf: of }),
        });
      expect(await refusalOf(comeback('C3', 'none'))).toMatchObject({
        code: 'no-earlier-job',
        sentence: 'There is no job "none" here. Enter the number of the earlier job, or leave it blank.',
      });
      expect(await refusalOf(revise('C1'))).toMatchObject({ code: 'comeback-of-itself' });
      expect(await refusalOf(revise('C2'))).toMatchObject({ code: 'comeback-circle' });
      expect(await refusalOf(comeback('C4', 'C1', '2026-03-01'))).toMatchObject({ code: 'comeback-before' });
      expect(await getJob(shop.db, 'C3')).toBeNull();
    });
  });
});
