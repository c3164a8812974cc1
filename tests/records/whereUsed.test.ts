import { afterEach, beforeEach, expect, test } from 'vitest';
import { demoLathes } from '../../data/demo/lathes.ts';
import { demoLiningChosen, demoLinings } from '../../data/demo/linings.ts';
import { demoWashers } from '../../data/demo/nuts.ts';
import { demoSteelChosen, demoSteels } from '../../data/demo/steels.ts';
import { addEntry } from '../../src/records/catalogue.ts';
import type { Shop } from '../../src/records/database/database.ts';
import { createJob } from '../../src/records/jobs/createJob.ts';
import { reviseJob } from '../../src/records/jobs/reviseJob.ts';
import { saveSlip } from '../../src/records/slips/slips.ts';
import { MOST_NAMED, whereUsed } from '../../src/records/whereUsed.ts';
import { alder, as, received } from './samples.ts';
import { onEachDatabase } from './shops.ts';
import { NUT_ID, newSlip, print, STUD_ID } from './slips/slipSamples.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  test('an entry is named by its jobs and slips, counted whole and listed newest first', async () => {
    for (let i = 0; i < MOST_NAMED + 3; i++) await createJob(shop.db, as('MH'), { received: received() });
    await createJob(shop.db, as('MH'), { received: received({ familyId: 'other' }) });
    const { jobs, slips } = await whereUsed(shop.db, 'family', received().familyId);
    expect([jobs.count, jobs.newest.length, slips.count]).toEqual([MOST_NAMED + 3, MOST_NAMED, 0]);
    expect(jobs.newest[0]).toEqual({ number: '1015', receivedOn: '2026-03-02' });
  });

  test('a slip names its stack, stud, nut, washer and shims', async () => {
    const slip = newSlip();
    const shims = demoWashers.slice(0, 2).map(({ id, entry }) => ({ id, entry }));
    const kit = { ...slip.answered.kit, shims };
    await saveSlip(shop.db, as('BB'), { ...slip, answered: { ...slip.answered, kit } }, print);
    await saveSlip(shop.db, as('BB'), newSlip(), print);
    const count = async (kind: 'stack' | 'stud' | 'nut' | 'washer', id: string) =>
      (await whereUsed(shop.db, kind, id)).slips.newest.map(({ number }) => number);
    expect(await count('stud', STUD_ID)).toEqual([2, 1]);
    expect(await count('stack', slip.asked.stackId)).toEqual([2, 1]);
    expect(await count('nut', NUT_ID)).toEqual([2, 1]);
    expect(await count('washer', shims[1]!.id)).toEqual([1]);
    expect(await count('stud', slip.asked.stackId)).toEqual([]);
  });

  test('a steel or a lining is named by the cover types of it, at whatever revision', async () => {
    for (const { id, steel } of demoSteels)
      await addEntry(shop.db, as('AB'), { kind: 'steel', id, body: steel });
    for (const { id, lining } of demoLinings)
      await addEntry(shop.db, as('AB'), { kind: 'lining', id, body: lining });
    const both = { steel: demoSteelChosen(), lining: demoLiningChosen() };
    await addEntry(shop.db, as('AB'), { kind: 'family', id: 'alder', body: { ...alder, ...both } });
    await addEntry(shop.db, as('AB'), { kind: 'family', id: 'elm', body: { ...alder, name: 'Elm' } });
    const covers = async (kind: 'steel' | 'lining', id: string) =>
      (await whereUsed(shop.db, kind, id)).covers;
    const one = { count: 1, newest: [{ id: 'alder', name: alder.name }] };
    expect(await covers('steel', both.steel.id)).toEqual(one);
    expect(await covers('lining', both.lining.id)).toEqual(one);
    expect(await covers('steel', demoSteels[1]!.id)).toEqual({ count: 0, newest: [] });
    expect(await covers('lining', demoLinings[1]!.id)).toEqual({ count: 0, newest: [] });
  });

  test('a lathe is named by the jobs whose plan has chosen it', async () => {
    const { id, lathe } = demoLathes[0]!;
    await addEntry(shop.db, as('AB'), { kind: 'lathe', id, body: lathe });
    const job = await createJob(shop.db, as('AB'), { received: received() });
    const jobs = async () => (await whereUsed(shop.db, 'lathe', id)).jobs.newest.map(({ number }) => number);
    expect(await jobs()).toEqual([]);
    const body = { plannedCutMm: null, typed: '', lathe: { id, revision: 1, lathe } };
    await reviseJob(shop.db, as('AB'), { jobId: job.id, fromRevision: 1, what: 'plan', body });
    expect(await jobs()).toEqual([job.number]);
  });
});
