import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import type { Wrong } from '../../../shared/words/trends/wrong.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { jobsResting, markWrong, wrongNumbered } from '../../../src/records/trends/wrong.ts';
import { cuts, decision, received, setup, wall } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

const GAUGE: ChosenGauge = { use: 'wall', id: 'bench', revision: 1, gauge: {} as ChosenGauge['gauge'] };
const WITH_GAUGE = { ...setup, gauges: [GAUGE] };
const at = (instant: string) => ({ who: 'AK', now: () => new Date(instant) });

/** The gauge, found to be wrong from a day on. */
const wrong = (since: string): Wrong => ({
  number: 1,
  at: '2026-11-30T12:00:00.000Z',
  who: 'AK',
  what: 'gauge',
  id: GAUGE.id,
  name: 'Bench gauge',
  since,
  reason: 'It read 0.1 mm high.',
  revision: null,
  biasMm: null,
  calibrationUMm: null,
});

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  /** A job measured before its cut on one day, and after it on another. */
  async function read(before: string, after?: string): Promise<number> {
    const job = await createJob(shop.db, at(before), { received: received() });
    await reviseJob(shop.db, at(before), { jobId: job.id, fromRevision: 1, what: 'setup', body: WITH_GAUGE });
    await addReadings(shop.db, at(before), { jobId: job.id, readings: [wall(`${job.id}-before`)] });
    if (after !== undefined) {
      const { id: jobId } = job;
      await reviseJob(shop.db, at(before), { jobId, fromRevision: 3, what: 'decision', body: decision(3) });
      await reviseJob(shop.db, at(before), { jobId, fromRevision: 4, what: 'cuts', body: cuts(0.25) });
      const readings = [wall(`${job.id}-after`, { pass: 'after' })];
      await addReadings(shop.db, at(after), { jobId, readings });
    }
    return job.id;
  }
  const resting = async (since: string, zone: string) =>
    (await jobsResting(shop.db, wrong(since), zone)).map(({ jobId }) => jobId);

  describe('the jobs whose gauge was wrong from a day on', () => {
    it('are those read with it before the cut or after it', async () => {
      await read('2026-03-02T10:00:00.000Z');
      const cut = await read('2026-03-02T11:00:00.000Z', '2026-03-05T10:00:00.000Z');
      const later = await read('2026-03-06T10:00:00.000Z');
      expect(await resting('2026-03-05', 'UTC')).toEqual([later, cut]);
    });

    it('begin with the shop’s day, wherever the shop is', async () => {
      const evening = await read('2026-03-05T01:00:00.000Z');
      expect(await resting('2026-03-05', 'UTC')).toEqual([evening]);
      expect(await resting('2026-03-05', 'America/Chicago')).toEqual([]);
      const dawn = await read('2026-03-07T20:00:00.000Z');
      expect(await resting('2026-03-08', 'Pacific/Auckland')).toEqual([dawn]);
      expect(await resting('2026-03-08', 'UTC')).toEqual([]);
    });

    it('of one revision alone are those read with that one', async () => {
      const { id } = await createJob(shop.db, at('2026-03-02T10:00:00.000Z'), { received: received() });
      for (const [from, revision] of [
        [1, 2],
        [2, 1],
      ] as const)
        await reviseJob(shop.db, at('2026-03-02T10:00:00.000Z'), {
          jobId: id,
          fromRevision: from,
          what: 'setup',
          body: { ...setup, gauges: [{ ...GAUGE, revision }] },
        });
      const of = async (revision: number | null) =>
        (await jobsResting(shop.db, { ...wrong('2026-03-01'), revision }, 'UTC')).map(({ jobId }) => jobId);
      expect([await of(null), await of(1), await of(2)]).toEqual([[id], [id], []]);
    });
  });

  describe('what is right', () => {
    it('is kept with what was wrong, to the last digit', async () => {
      const found = { ...wrong('2026-03-01'), biasMm: -0.0123, calibrationUMm: 0.004, revision: 3 };
      const number = await markWrong(shop.db, at('2026-03-09T10:00:00.000Z'), found);
      expect(await wrongNumbered(shop.db, number)).toMatchObject({
        biasMm: -0.0123,
        calibrationUMm: 0.004,
        revision: 3,
      });
    });
  });
});
