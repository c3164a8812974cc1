import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Db, openShop, type Shop, write } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob, jobAtRevision } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
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

  const read = () => getJob(shop.db, jobId);

  test('a job that has not changed is read to the same object, and a reading just added too', async () => {
    const { job } = await addReadings(shop.db, as('AB'), { jobId, readings: [wall('a')] });
    const once = await read();
    expect(once).toEqual(job);
    expect(await read()).toBe(once);
    await addReadings(shop.db, as('CD'), { jobId, readings: [wall('b')] });
    const grown = await read();
    expect(grown?.readings.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(await read()).toBe(grown);
  });

  test('every change of a section is read, and an earlier revision as it was', async () => {
    const first = await read();
    const body = received({ note: 'came with a sheared bolt' });
    await reviseJob(shop.db, as('AB'), { jobId, fromRevision: 1, what: 'received', body });
    expect((await read())?.sections.received?.body.note).toBe('came with a sheared bolt');
    expect(await jobAtRevision(shop.db, jobId, 1)).toEqual(first);
    expect((await read())?.sections.received?.body.note).toBe('came with a sheared bolt');
  });

  test('what was given up with its change is forgotten, whatever takes its revision', async () => {
    await addReadings(shop.db, as('AB'), { jobId, readings: [wall('a')] });
    const before = await read();
    const givenUp = write(shop.db, async (trx) => {
      await addReadings(trx, as('AB'), { jobId, readings: [wall('b')] });
      await getJob(trx, jobId);
      throw new Error('given up');
    });
    await expect(givenUp).rejects.toThrow('given up');
    expect(await read()).toEqual(before);
    await addReadings(shop.db, as('CD'), { jobId, readings: [wall('c')] });
    const after = await read();
    expect([after?.revision, after?.readings.map(({ id, who }) => `${id} ${who}`)]).toEqual([
      3,
      ['a AB', 'c CD'],
    ]);
  });
});

/** Whatever is given up and whatever takes its place happen at one moment, so that only what they say tells them apart. */
const at = (who: string) => ({ who, now: () => new Date('2026-03-02T09:00:00Z') });

test('what another process saves in place of what was given up here is read', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  const [here, there] = [openShop({ dataDir }), openShop({ dataDir })];
  const { id: jobId } = await createJob(here.db, at('AB'), { received: received() });
  await getJob(here.db, jobId);
  const giveUp = (change: (db: Db) => Promise<unknown>) =>
    expect(
      write(here.db, async (trx) => {
        await change(trx);
        throw new Error('given up');
      }),
    ).rejects.toThrow('given up');

  const noted = (db: Db, note: string) =>
    reviseJob(db, at('AB'), { jobId, fromRevision: 1, what: 'received', body: received({ note }) });
  await giveUp((trx) => noted(trx, 'mine'));
  await noted(there.db, 'theirs');
  expect((await getJob(here.db, jobId))?.sections.received?.body.note).toBe('theirs');

  const measured = (db: Db, id: string) => addReadings(db, at('AB'), { jobId, readings: [wall(id)] });
  await giveUp((trx) => measured(trx, 'mine'));
  await measured(there.db, 'theirs');
  expect((await getJob(here.db, jobId))?.readings.map(({ id }) => id)).toEqual(['theirs']);
  await Promise.all([here.close(), there.close()]);
  rmSync(dataDir, { recursive: true, force: true });
});
