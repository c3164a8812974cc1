import { afterAll, beforeAll, expect, test } from 'vitest';
import { addManyJobs } from '../../data/demo/manyJobs.ts';
import { seedDemo } from '../../data/demo/seed.ts';
import { jobsAsked } from '../../src/demo.ts';
import type { Shop } from '../../src/records/database/database.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { findJobs } from '../../src/records/jobs/findJobs.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { recheckDecision } from '../../src/shop/recheck.ts';
import { printsFor } from '../../src/web/job/papers.ts';
import { refusalOf } from './refusals.ts';
import { as, received } from './samples.ts';
import { onEachDatabase } from './shops.ts';

const TODAY = new Date('2026-11-24T12:00:00Z');

onEachDatabase((engine) => {
  let shop: Shop;
  beforeAll(async () => {
    shop = await engine.openEmpty();
    await seedDemo(shop.db, printsFor(null, { timeZone: 'UTC' }));
  });
  afterAll(() => shop.close());

  test('invented jobs read like any, each with its own number and days, and the last are the open ones', async () => {
    const before = (await findJobs(shop.db, { limit: 200, stage: ['signed', 'closed'] })).jobs.length;
    const told: number[] = [];
    await addManyJobs(shop.db, { count: 70, today: TODAY, told: (done) => told.push(done) });
    expect(told).toEqual([70]);
    const { jobs } = await findJobs(shop.db, { limit: 200, to: '2026-11-23' });
    expect(new Set(jobs.map(({ number }) => number)).size).toBe(jobs.length);
    expect(jobs.filter(({ receivedOn }) => receivedOn === '2026-11-23').length).toBeGreaterThanOrEqual(12);
    const signed = (await findJobs(shop.db, { limit: 200, stage: 'signed' })).jobs.length;
    expect(signed).toBeGreaterThanOrEqual(before + 30);
    for (const line of jobs.slice(0, 40)) {
      const job = await getJob(shop.db, line.number);
      expect(job).toMatchObject({ stage: line.stage, outcome: line.outcome, demo: true });
      expect(job?.sections.received?.body).toMatchObject({ customerReference: line.customerReference });
      if (!line.customerReference.includes('invented customer')) continue;
      expect(job?.sections.received?.at.slice(0, 10)).toBe(line.receivedOn);
      const decision = job?.sections.decision;
      if (decision) expect(recheckDecision(decision.body, 'mm')).toBeNull();
    }
    const [one] = jobs.filter(({ customerReference }) => customerReference.includes('invented customer'));
    const found = await findJobs(shop.db, { limit: 5, text: one!.customerReference });
    expect(found.jobs.map(({ number }) => number)).toContain(one!.number);
  });

  test('a shop with a job of its own is refused, and nothing is added', async () => {
    await createJob(shop.db, as('AB'), { number: 'own', received: received() });
    const count = async () => (await shop.db.selectFrom('job').select('id').execute()).length;
    const before = await count();
    expect(await refusalOf(addManyJobs(shop.db, { count: 1, today: TODAY }))).toMatchObject({
      code: 'real-shop',
      sentence: expect.stringMatching(/^Invented jobs are only added to a demo shop, and it has job own/),
    });
    expect(await count()).toBe(before);
  });
});

test('the command takes a number of jobs and nothing else', () => {
  expect(jobsAsked(['--jobs', '50000'])).toBe(50_000);
  for (const words of [[], ['--jobs'], ['--jobs', '0'], ['--jobs', '2e3'], ['--jobs', '5', '6'], ['5']]) {
    expect(() => jobsAsked(words)).toThrow(/npm run demo -- --jobs 1000/);
  }
});
