import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Job } from '../../../shared/words/job.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { StaleEdit } from '../../../src/records/database/errors.ts';
import { historyOf, revisionOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import {
  as,
  cuts,
  decision,
  finishedJob,
  looked,
  measuredJob,
  prints,
  received,
  setup,
  studs,
  wall,
} from '../samples.ts';
import { onEachDatabase } from '../shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  describe('an edit', () => {
    const plan = (plannedCutMm: number) => ({ plannedCutMm, typed: String(plannedCutMm) });
    let job: Job;
    beforeEach(async () => {
      job = await measuredJob(shop.db);
    });
    const revisePlan = (who: string, fromRevision: number, mm: number) =>
      reviseJob(shop.db, as(who), { jobId: job.id, fromRevision, what: 'plan', body: plan(mm) });

    test('an edit is a new revision, and what was there before stays', async () => {
      await revisePlan('AB', 4, 0.3);
      const now = await revisePlan('CD', 5, 0.4);
      expect([now.revision, now.sections.plan?.body, now.sections.plan?.who]).toEqual([6, plan(0.4), 'CD']);
      expect(await revisionOf(shop.db, job.id, 5)).toMatchObject({
        what: 'plan',
        who: 'AB',
        body: plan(0.3),
      });
    });

    test('an edit of a section somebody changed meanwhile is answered with both versions, and nothing is written', async () => {
      await revisePlan('CD', 4, 0.3);
      const error = await errorOf(revisePlan('AB', 4, 0.4));
      expect(error).toBeInstanceOf(StaleEdit);
      expect(error).toMatchObject({
        code: 'stale',
        section: 'plan',
        currentRevision: 5,
        theirs: { revision: 5, who: 'CD', body: plan(0.3) },
        since: [{ revision: 5, who: 'CD', what: 'plan' }],
        message:
          'CD changed the planned cut of job 1001 while you had it open (yours began at revision 4, theirs is 5). Nothing of yours was saved; compare the two and save again.',
      });
      expect((await getJob(shop.db, job.id))?.revision).toBe(5);
    });

    test('an edit is not stale when other sections or readings changed meanwhile', async () => {
      await reviseJob(shop.db, as('CD'), {
        jobId: job.id,
        fromRevision: 4,
        what: 'looked',
        body: looked({ crackNote: 'again' }),
      });
      await addReadings(shop.db, as('CD'), { jobId: job.id, readings: [wall('n1')] });
      const now = await revisePlan('AB', 4, 0.4);
      expect([now.revision, now.sections.looked?.who, now.readings.length]).toEqual([7, 'CD', 3]);
    });

    test('an edit sent twice is one revision, also with its fields in another order', async () => {
      await revisePlan('AB', 4, 0.3);
      const again = await reviseJob(shop.db, as(' ab '), {
        jobId: job.id,
        fromRevision: 4,
        what: 'plan',
        body: { typed: '0.3', plannedCutMm: 0.3 },
      });
      expect(again.revision).toBe(5);
    });

    test('an equal edit from another person is an edit of their own', async () => {
      await revisePlan('AB', 4, 0.3);
      expect((await revisePlan('CD', 5, 0.3)).sections.plan).toMatchObject({ revision: 6, who: 'CD' });
      expect(await errorOf(revisePlan('EF', 4, 0.3))).toBeInstanceOf(StaleEdit);
    });

    test('an edit of a revision that does not exist is refused', async () => {
      for (const from of [0, 5, 2.5, Number.NaN]) {
        expect(await errorOf(revisePlan('AB', from, 0.3))).toMatchObject({
          code: 'not-found',
          message: `Job 1001 has no revision ${from}; its revisions are 1 to 4.`,
        });
      }
    });

    test('an edit of what was received shows in the lists, and is checked like the first', async () => {
      const edit = (changes: Parameters<typeof received>[0]) =>
        reviseJob(shop.db, as('AB'), {
          jobId: job.id,
          fromRevision: 4,
          what: 'received',
          body: received(changes),
        });
      expect((await refusalOf(edit({ receivedOn: 'today' }))).code).toBe('bad-day');
      await edit({ customerReference: 'van, green' });
      const row = await shop.db.selectFrom('job').selectAll().executeTakeFirstOrThrow();
      expect([row.customer_reference, row.revision]).toEqual(['van, green', 5]);
    });

    test('of two edits at once from one revision one is kept and the other is told', async () => {
      const results = await Promise.allSettled([revisePlan('AB', 4, 0.3), revisePlan('CD', 4, 0.4)]);
      expect(results.map((r) => r.status).sort()).toEqual(['fulfilled', 'rejected']);
      expect((await historyOf(shop.db, job.id)).length).toBe(5);
    });
  });

  describe('what rests on the whole job', () => {
    const decide = (jobId: number, fromRevision: number, workedOutAt = fromRevision) =>
      reviseJob(shop.db, as('AB'), { jobId, fromRevision, what: 'decision', body: decision(workedOutAt) });
    const choose = (jobId: number, fromRevision: number) =>
      reviseJob(shop.db, as('AB'), { jobId, fromRevision, what: 'studs', body: studs });

    const changes: [string, (jobId: number) => Promise<unknown>][] = [
      [
        'the receiving data',
        (jobId) =>
          reviseJob(shop.db, as('CD'), {
            jobId,
            fromRevision: 4,
            what: 'received',
            body: received({ note: 'n' }),
          }),
      ],
      [
        'the inspection',
        (jobId) =>
          reviseJob(shop.db, as('CD'), {
            jobId,
            fromRevision: 4,
            what: 'looked',
            body: looked({ crackNote: 'n' }),
          }),
      ],
      [
        'the measuring setup',
        (jobId) =>
          reviseJob(shop.db, as('CD'), {
            jobId,
            fromRevision: 4,
            what: 'setup',
            body: { ...setup, gauge: 'other' },
          }),
      ],
      [
        'the planned cut',
        (jobId) =>
          reviseJob(shop.db, as('CD'), {
            jobId,
            fromRevision: 4,
            what: 'plan',
            body: { plannedCutMm: 0.4, typed: '0.4' },
          }),
      ],
      [
        'the cuts made',
        (jobId) => reviseJob(shop.db, as('CD'), { jobId, fromRevision: 4, what: 'cuts', body: cuts(0.1) }),
      ],
      ['the readings', (jobId) => addReadings(shop.db, as('CD'), { jobId, readings: [wall('n1')] })],
    ];

    test.each(changes)(
      'a decision is stale when %s changed after it was worked out',
      async (words, change) => {
        const { id } = await measuredJob(shop.db);
        await change(id);
        const error = await errorOf(decide(id, 4));
        expect(error).toBeInstanceOf(StaleEdit);
        expect(error).toMatchObject({
          section: 'decision',
          theirs: null,
          currentRevision: 5,
          message: `CD changed ${words} of job 1001 after revision 4, which you worked from. Nothing was saved. Check the job as it is now, then send it again.`,
        });
        expect((await getJob(shop.db, id))?.sections.decision).toBeNull();
        expect(await errorOf(choose(id, 4))).toMatchObject({ code: 'stale', section: 'studs' });
      },
    );

    test('a decision worked out before the page it came from is stale too', async () => {
      const { id } = await measuredJob(shop.db);
      expect(await errorOf(decide(id, 4, 3))).toMatchObject({ code: 'stale' });
      expect((await refusalOf(decide(id, 4, 5))).code).toBe('not-found');
      expect((await decide(id, 4)).outcome).toBe('face');
    });

    test('a choice of studs leaves the decision as it is', async () => {
      const { id } = await measuredJob(shop.db);
      await choose(id, 4);
      expect((await decide(id, 4)).revision).toBe(6);
    });

    test('a second decision from the same revision is stale, the same one sent again is not', async () => {
      const { id } = await measuredJob(shop.db);
      await decide(id, 4);
      expect((await decide(id, 4)).revision).toBe(5);
      const other = reviseJob(shop.db, as('CD'), {
        jobId: id,
        fromRevision: 4,
        what: 'decision',
        body: decision(4, { decision: 'replace', reason: 'no' }),
      });
      expect(await errorOf(other)).toMatchObject({
        code: 'stale',
        theirs: { who: 'AB', body: { decision: 'face' } },
      });
    });

    test('a signature is for the job as it is, not as it was', async () => {
      const { id, revision } = await finishedJob(shop.db);
      await reviseJob(shop.db, as('CD'), {
        jobId: id,
        fromRevision: revision,
        what: 'received',
        body: received({ note: 'n' }),
      });
      const sign = (fromRevision: number, signedRevision: number) =>
        reviseJob(
          shop.db,
          as('AB'),
          {
            jobId: id,
            fromRevision,
            what: 'signature',
            body: { statement: 'Done.', signedRevision },
          },
          prints,
        );
      expect(await errorOf(sign(revision, revision))).toMatchObject({ code: 'stale' });
      expect((await refusalOf(sign(revision + 1, revision))).code).toBe('signed-revision');
      expect((await sign(revision + 1, revision + 1)).stage).toBe('signed');
    });
  });
});
