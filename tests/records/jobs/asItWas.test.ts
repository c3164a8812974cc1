import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Job } from '../../../shared/words/job.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { NotInRecords } from '../../../src/records/database/errors.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { historyOf, revisionOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob, type SectionEdit } from '../../../src/records/jobs/reviseJob.ts';
import { errorOf } from '../refusals.ts';
import {
  alder,
  as,
  crack,
  cuts,
  decision,
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
