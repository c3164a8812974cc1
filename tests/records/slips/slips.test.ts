import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type KeptSlip, slipNumber } from '../../../shared/words/stud/slip.ts';
import { entryHistory, getEntry, refuseSeenOtherwise, reviseEntry } from '../../../src/records/catalogue.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { printedPart } from '../../../src/records/jobs/signedPrints.ts';
import {
  findSlips,
  getSlip,
  jobsOfSlip,
  printedSlip,
  saveSlip,
  slipOfJob,
} from '../../../src/records/slips/slips.ts';
import { countBack, countOut, countsOf } from '../../../src/records/slips/stock.ts';
import { errorOf } from '../refusals.ts';
import { as, received } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { NUT_ID, newSlip, print, STUD_ID, stockShelf } from './slipSamples.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  const save = (change: Parameters<typeof newSlip>[0] = {}, who = 'BB') =>
    saveSlip(shop.db, as(who), newSlip(change), print);
  const stockOf = async (kind: 'stud' | 'nut', id: string) => (await getEntry(shop.db, kind, id))!.body.stock;
  const shelf = async () => [await stockOf('stud', STUD_ID), await stockOf('nut', NUT_ID)];

  test('a slip is saved whole, with its paper, and reads back as it was answered', async () => {
    const slip = newSlip();
    const kept = await saveSlip(shop.db, as('BB'), slip, print);
    expect(kept).toMatchObject({ number: 1, who: 'BB', day: '2026-11-24', calcVersion: 'sample-1' });
    const { sentId: _, ...said } = slip;
    expect(await getSlip(shop.db, 1)).toEqual(JSON.parse(JSON.stringify({ ...kept, ...said })) as KeptSlip);
    expect(await printedSlip(shop.db, 1)).toBe('<p>Slip S-1 by BB</p>');
    expect(await printedPart(shop.db, 'c'.repeat(64))).toMatchObject({ base64: 'cHt9' });
    expect([await getSlip(shop.db, 2), await printedSlip(shop.db, 2)]).toEqual([null, null]);
  });

  test('numbers go on by one, with several saved at once and one that could not be printed', async () => {
    const torn = saveSlip(shop.db, as('BB'), newSlip(), () => ({ html: '', parts: [] }));
    const saved = await Promise.all([save(), errorOf(torn), save(), save(), save()]);
    const numbers = saved.flatMap((one) => ('number' in (one as object) ? [(one as KeptSlip).number] : []));
    expect([...numbers].sort()).toEqual([1, 2, 3, 4]);
    expect((await save()).number).toBe(5);
  });

  test('sent twice it is one slip; another question under the same id is refused', async () => {
    const slip = newSlip();
    const twice = [1, 2].map(() => saveSlip(shop.db, as('BB'), slip, print));
    expect((await Promise.all(twice)).map(({ number }) => number)).toEqual([1, 1]);
    const other = { ...slip, asked: { ...slip.asked, typed: { stack: 'other' } } };
    expect(await errorOf(saveSlip(shop.db, as('BB'), other, print))).toMatchObject({
      code: 'sent-otherwise',
    });
    expect(await errorOf(save({}, ' '))).toMatchObject({ code: 'who-needed' });
    expect(await errorOf(save({ customerReference: 'x'.repeat(81) }))).toMatchObject({
      code: 'bad-reference',
    });
  });

  test.each([
    `update slip set who = 'XX'`,
    'delete from slip',
    `update slip_count set who = 'XX'`,
    'delete from slip_count',
    'delete from slip_job',
  ])('the database refuses: %s', async (statement) => {
    await stockShelf(shop.db, 10);
    await save();
    await countOut(shop.db, as('BB'), { number: 1 });
    await createJob(shop.db, as('BB'), { received: received(), slip: 1 });
    expect(await errorOf(sql.raw(statement).execute(shop.db))).toBeInstanceOf(Error);
    expect((await countsOf(shop.db, 1))[0]).toMatchObject({ who: 'BB' });
  });

  test('slips are found by number, word, answer, person, day and stock', async () => {
    await stockShelf(shop.db, 10);
    await save({ customerReference: '100 % Wren' });
    await save({ day: '2026-11-25' }, 'CC');
    await save();
    await countOut(shop.db, as('BB'), { number: 2 });
    const found = async (question: object) =>
      (await findSlips(shop.db, { limit: 10, ...question })).slips.map(({ number }) => number);
    expect(await found({})).toEqual([3, 2, 1]);
    for (const text of ['S-2', 's2', ' slip 2', 'Slip S-2']) expect(await found({ text }), text).toEqual([2]);
    expect(await found({ text: '100 % wren' })).toEqual([1]);
    expect(await found({ text: 'long stud hex' })).toEqual([3, 2, 1]);
    expect(await found({ text: 'S-9' })).toEqual([]);
    expect(await found({ fits: 'yes' })).toEqual([3, 2, 1]);
    expect(await found({ fits: 'no' })).toEqual([]);
    expect(await found({ who: 'cc' })).toEqual([2]);
    expect(await found({ from: '2026-11-25', to: '2026-11-25' })).toEqual([2]);
    expect(await found({ counted: true })).toEqual([2]);
    expect(await found({ counted: false })).toEqual([3, 1]);
    expect(await found({ before: 3 })).toEqual([2, 1]);
    expect(await findSlips(shop.db, { limit: 2 })).toMatchObject({
      more: true,
      slips: [{ number: 3 }, { number: 2, counted: true, customerReference: 'Demo customer 12' }],
    });
  });

  test('what looks like a job’s number is no slip’s', () => {
    expect([slipNumber('1001'), slipNumber('Job 12'), slipNumber('S-12'), slipNumber('')]).toEqual([
      null,
      null,
      12,
      null,
    ]);
  });

  test('its parts are counted out once, with the slip as the reason, and back with a reason', async () => {
    await stockShelf(shop.db, 10, 6);
    await save();
    const { lines } = await countOut(shop.db, as('BB'), { number: 1 });
    expect(lines.map(({ name, from, to }) => [name, from, to])).toEqual([
      ['Long stud 3/8-24 UNF', 10, 6],
      ['Hex nut 3/8-24', 6, 2],
    ]);
    expect(await shelf()).toEqual([6, 2]);
    const history = await entryHistory(shop.db, 'nut', NUT_ID);
    expect(history.at(-1)).toMatchObject({ revision: 2, who: 'BB', why: 'Taken out with slip S-1' });
    expect(await errorOf(countOut(shop.db, as('CC'), { number: 1 }))).toMatchObject({ code: 'counted' });
    expect(await errorOf(countBack(shop.db, as('CC'), { number: 1, why: ' ' }))).toMatchObject({
      code: 'why-needed',
    });
    expect(await shelf()).toEqual([6, 2]);
    await countBack(shop.db, as('CC'), { number: 1, why: 'caller did not come' });
    expect(await shelf()).toEqual([10, 6]);
    expect(await countsOf(shop.db, 1)).toMatchObject([
      { what: 'out', who: 'BB', why: '' },
      { what: 'back', who: 'CC', why: 'caller did not come' },
    ]);
    expect(await errorOf(countBack(shop.db, as('CC'), { number: 1, why: 'again' }))).toMatchObject({
      code: 'not-out',
    });
    await countOut(shop.db, as('BB'), { number: 1 });
    expect(await shelf()).toEqual([6, 2]);
  });

  test('pressed by two at once it is counted once', async () => {
    await stockShelf(shop.db, 10);
    await save();
    const both = await Promise.all(
      ['BB', 'CC'].map((who) => countOut(shop.db, as(who), { number: 1 }).catch((error: unknown) => error)),
    );
    expect(both.filter((one) => one instanceof Error)).toMatchObject([{ code: 'counted' }]);
    expect(await shelf()).toEqual([6, 6]);
  });

  test('never below zero: it asks, changes nothing, and gives back only what was there', async () => {
    await stockShelf(shop.db, 10, 1);
    await save();
    expect(await errorOf(countOut(shop.db, as('BB'), { number: 1 }))).toMatchObject({
      code: 'too-few',
      faults: [{ message: expect.stringContaining('only 1 of the 4 Hex nut 3/8-24 on shelf N-3') }],
    });
    expect([await shelf(), await countsOf(shop.db, 1)]).toEqual([[10, 1], []]);
    await countOut(shop.db, as('BB'), { number: 1, toZero: true });
    expect(await shelf()).toEqual([6, 0]);
    await countBack(shop.db, as('BB'), { number: 1, why: 'wrong slip' });
    expect(await shelf()).toEqual([10, 1]);
  });

  test('what nobody counts is not counted down', async () => {
    await stockShelf(shop.db, null, 6);
    await save();
    await countOut(shop.db, as('BB'), { number: 1 });
    expect(await shelf()).toEqual([null, 2]);
    await save();
    await reviseEntry(shop.db, as('AA'), {
      kind: 'nut',
      id: NUT_ID,
      fromRevision: 2,
      body: { ...(await getEntry(shop.db, 'nut', NUT_ID))!.body, stock: null },
      why: 'nobody counts them',
    });
    expect(await errorOf(countOut(shop.db, as('BB'), { number: 2 }))).toMatchObject({ code: 'not-counted' });
    expect(await errorOf(countOut(shop.db, as('BB'), { number: 9 }))).toMatchObject({ code: 'not-found' });
  });

  test('a choice of studs seen before a count is not stale; one seen before another change is', async () => {
    await stockShelf(shop.db, 10);
    await save();
    await countOut(shop.db, as('BB'), { number: 1 });
    const seen = [{ kind: 'stud', id: STUD_ID, revision: 1 }] as const;
    await refuseSeenOtherwise(shop.db, seen);
    const { body } = (await getEntry(shop.db, 'stud', STUD_ID))!;
    const change = { kind: 'stud', id: STUD_ID, fromRevision: 2, why: 'measured' } as const;
    await reviseEntry(shop.db, as('AA'), {
      ...change,
      body: { ...body, stud: { ...body.stud, projectionMm: body.stud.projectionMm + 1 } },
    });
    expect(await errorOf(refuseSeenOtherwise(shop.db, seen))).toMatchObject({ name: 'StaleEdit' });
  });

  test('a job begun from a slip leads to it, and back', async () => {
    await save();
    const job = await createJob(shop.db, as('BB'), { received: received(), slip: 1 });
    const other = await createJob(shop.db, as('BB'), { received: received() });
    expect((await slipOfJob(shop.db, job.id))?.number).toBe(1);
    expect(await slipOfJob(shop.db, other.id)).toBe(null);
    expect(await jobsOfSlip(shop.db, 1)).toEqual([job.number]);
  });
});
