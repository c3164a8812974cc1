import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Job } from '../../../shared/words/job.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { NotInRecords, StaleEdit } from '../../../src/records/database/errors.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { historyOf, revisionOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob, jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob, type SectionEdit } from '../../../src/records/jobs/reviseJob.ts';
import { errorOf, refusalOf } from '../refusals.ts';
import {
  alder,
  as,
  crack,
  cuts,
  decision,
  finishedJob,
  looked,
  measuredJob,
  prints,
  received,
  setup,
  signedJob,
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

  describe('the job as it was', () => {
    test('a job at every revision is what it was then, to the letter', async () => {
      const seen: Job[] = [await create()];
      const jobId = seen[0]!.id;
      const at = () => seen.at(-1)!.revision;
      const push = (job: Job) => seen.push(job);
      const edit = (who: string, what: SectionEdit) => reviseJob(shop.db, as(who, 'because'), what, prints);
      push(await edit('AB', { jobId, fromRevision: at(), what: 'looked', body: crack }));
      push(
        await edit('CD', {
          jobId,
          fromRevision: at(),
          what: 'looked',
          body: looked({ crackNote: 'a scratch' }),
        }),
      );
      push(await edit('AB', { jobId, fromRevision: at(), what: 'setup', body: setup }));
      push(
        (
          await addReadings(shop.db, as('AB'), {
            jobId,
            readings: [wall('a'), wall('b', { valueMm: 0.49, doubtful: true })],
          })
        ).job,
      );
      push((await addReadings(shop.db, as('AB'), { jobId, readings: [wall('c', { replaces: 'b' })] })).job);
      push(await edit('AB', { jobId, fromRevision: at(), what: 'decision', body: decision(at()) }));
      push(
        (
          await addReadings(shop.db, as('AB'), {
            jobId,
            readings: [wall('d', { valueMm: null, replaces: 'a', typed: '' })],
          })
        ).job,
      );
      push(await edit('AB', { jobId, fromRevision: at(), what: 'decision', body: decision(at()) }));
      push(await edit('AB', { jobId, fromRevision: at(), what: 'cuts', body: cuts(0.2) }));
      push((await addReadings(shop.db, as('AB'), { jobId, readings: [wall('e', { pass: 'after' })] })).job);
      push(await edit('AB', { jobId, fromRevision: at(), what: 'studs', body: studs }));
      push(
        await edit('AB', {
          jobId,
          fromRevision: at(),
          what: 'signature',
          body: { statement: 'Done.', signedRevision: at() },
        }),
      );
      push(
        await edit('AB', {
          jobId,
          fromRevision: at(),
          what: 'received',
          body: received({ family: { ...alder, name: 'Birch' } }),
        }),
      );

      expect(seen.map((job) => job.stage)).toEqual([
        'to-look',
        'to-decide',
        'to-measure',
        'to-measure',
        'to-decide',
        'to-decide',
        'to-cut',
        'to-decide',
        'to-cut',
        'to-verify',
        'to-sign',
        'to-sign',
        'signed',
        'to-decide',
      ]);
      expect(seen.map((job) => job.readings.map((r) => r.id).join(''))).toEqual([
        '',
        '',
        '',
        '',
        'ab',
        'ac',
        'ac',
        'c',
        'c',
        'c',
        'ce',
        'ce',
        'ce',
        'ce',
      ]);
      for (const job of seen) expect(await jobAtRevision(shop.db, jobId, job.revision)).toEqual(job);
      expect((await historyOf(shop.db, jobId)).map((line) => line.revision)).toEqual(
        seen.map((job) => job.revision),
      );
      expect(await errorOf(jobAtRevision(shop.db, jobId, 15))).toBeInstanceOf(NotInRecords);
    });

    test('a decision is kept with everything it was worked out from', async () => {
      const { id } = await signedJob(shop.db);
      await reviseJob(shop.db, as('AB', 'wrong family'), {
        jobId: id,
        fromRevision: 8,
        what: 'received',
        body: received({ family: { ...alder, nominalWallMm: 6 } }),
      });
      expect((await jobAtRevision(shop.db, id, 8)).sections.decision?.body).toEqual(decision(4));
      expect((await jobAtRevision(shop.db, id, 8)).sections.received?.body.family.nominalWallMm).toBe(5);
    });
  });

  describe('the history', () => {
    test('the history names who did what and why, in order', async () => {
      const { id } = await measuredJob(shop.db);
      expect((await historyOf(shop.db, id)).map((line) => [line.revision, line.who, line.what])).toEqual([
        [1, 'AB', 'received'],
        [2, 'AB', 'looked'],
        [3, 'AB', 'setup'],
        [4, 'AB', 'reading'],
      ]);
      expect(await historyOf(shop.db, 77)).toEqual([]);
      expect(await revisionOf(shop.db, id, 4)).toMatchObject({
        what: 'reading',
        body: [{ id: '1-w1' }, { id: '1-w2' }],
      });
      expect(await revisionOf(shop.db, id, 2)).toMatchObject({ what: 'looked', body: looked() });
      expect(await revisionOf(shop.db, id, 5)).toBeNull();
    });
  });
});
