import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Shop } from '../../../src/records/database/database.ts';
import { repeatsInJobs } from '../../../src/records/gauges/repeatsInJobs.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { repeatabilityInJobs } from '../../../src/shop/gauging/repeatabilityInJobs.ts';
import { as, received, setup, wall } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { gauge } from './gaugeSamples.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  async function jobWith(gaugeId: string, valuesMm: readonly number[]): Promise<void> {
    const { id: jobId } = await createJob(shop.db, as('AB'), { received: received() });
    const gauges = [{ id: gaugeId, revision: 1, use: 'wall' as const, gauge }];
    await reviseJob(shop.db, as('AB'), { jobId, fromRevision: 1, what: 'setup', body: { ...setup, gauges } });
    const readings = valuesMm.map((valueMm, i) =>
      wall(`${jobId}-w${i}`, { valueMm, typed: String(valueMm), angleDeg: 0, radiusMm: 110 }),
    );
    await addReadings(shop.db, as('AB'), { jobId, readings });
  }

  test('repeats at one station of one job are pooled over the jobs with this gauge', async () => {
    // JCGM 100:2008, 4.2.4: 1, 3 and 2, 4, 6 → s √(10/3) with 3 degrees of freedom; here in tenths of a millimeter.
    await jobWith('m1', [4.1, 4.3]);
    await jobWith('m1', [4.2, 4.4, 4.6]);
    await jobWith('m1', [4.9]);
    await jobWith('other', [4.1, 4.9]);
    const found = await repeatsInJobs(shop.db, 'm1', 'wall');
    expect(found.jobs).toBe(2);
    const told = repeatabilityInJobs(found)!;
    expect(told).toMatchObject({ jobs: 2, stations: 2, degreesOfFreedom: 3 });
    expect(told.repeatability.value).toBeCloseTo(0.1 * Math.sqrt(10 / 3), 10);
    expect(await repeatsInJobs(shop.db, 'none', 'wall')).toEqual({ jobs: 0, repeats: [] });
  });
});
