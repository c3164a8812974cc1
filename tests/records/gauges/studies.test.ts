import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { nextPlace } from '../../../shared/words/gauges/gaugeStudies.ts';
import { addEntry } from '../../../src/records/catalogue.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import {
  addStudyReading,
  getStudy,
  startStudy,
  stopStudy,
  studiesOf,
  withdrawStudyReading,
} from '../../../src/records/gauges/studies.ts';
import { errorOf } from '../refusals.ts';
import { as } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { gauge, newStudy, newStudyReading } from './gaugeSamples.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    await addEntry(shop.db, as('AB'), { kind: 'gauge', id: 'm1', body: gauge });
  });
  afterEach(() => shop.close());

  test('a study is kept with its order, and sent twice is one', async () => {
    for (let i = 0; i < 2; i++) expect(await startStudy(shop.db, as('AB'), newStudy())).toBe(1);
    const { sentId: _, ...kept } = newStudy();
    expect(await getStudy(shop.db, 1)).toEqual({
      ...kept,
      number: 1,
      at: expect.any(String),
      who: 'AB',
      readings: [],
      stopped: null,
    });
    expect(
      await errorOf(startStudy(shop.db, as('AB'), newStudy({ plan: { ...kept.plan, rounds: 3 } }))),
    ).toMatchObject({ code: 'sent-otherwise' });
    const next = newStudy({ sentId: 'another-study-of-this-test' });
    expect(await startStudy(shop.db, as('AB'), next)).toBe(2);
    expect((await studiesOf(shop.db, 'm1')).map(({ number }) => number)).toEqual([2, 1]);
    expect(await studiesOf(shop.db, 'other')).toEqual([]);
    expect(
      await errorOf(startStudy(shop.db, as('AB'), newStudy({ sentId: 'x'.repeat(20), gaugeId: 'none' }))),
    ).toMatchObject({ message: 'The catalog has no gauge "none".' });
  });

  test('a place is read once, whoever comes second; a withdrawn reading opens it again', async () => {
    await startStudy(shop.db, as('AB'), newStudy());
    const add = (change: Parameters<typeof newStudyReading>[0] = {}) =>
      addStudyReading(shop.db, as('AA'), 1, newStudyReading(change));
    for (let i = 0; i < 2; i++) await add();
    expect(await errorOf(add({ valueMm: 4.8 }))).toMatchObject({ code: 'sent-otherwise' });
    const second = { id: '00000000-0000-4000-8000-000000000012' };
    expect(await errorOf(add(second))).toMatchObject({ code: 'already-read' });
    expect(await errorOf(add({ ...second, place: 8 }))).toMatchObject({ code: 'no-such-place' });
    expect(nextPlace((await getStudy(shop.db, 1))!)).toBe(1);
    const { id } = newStudyReading();
    const withdraw = (why: string) => withdrawStudyReading(shop.db, as('CD'), 1, { id, why });
    expect(await errorOf(withdraw(' '))).toMatchObject({ code: 'why-needed' });
    await withdraw('slipped');
    expect(await errorOf(withdraw('again'))).toMatchObject({ code: 'withdrawn' });
    expect(nextPlace((await getStudy(shop.db, 1))!)).toBe(0);
    await add({ ...second, valueMm: 4.9 });
    expect((await getStudy(shop.db, 1))!.readings).toMatchObject([
      { valueMm: 4.91, withdrawn: { who: 'CD', why: 'slipped' } },
      { valueMm: 4.9, withdrawn: null },
    ]);
  });

  test('a stopped study takes no more; a complete one is not stopped', async () => {
    await startStudy(shop.db, as('AB'), newStudy());
    expect(await errorOf(stopStudy(shop.db, as('AB'), 1, ''))).toMatchObject({ code: 'why-needed' });
    await stopStudy(shop.db, as('AB'), 1, 'enough');
    expect(await errorOf(stopStudy(shop.db, as('AB'), 1, 'again'))).toMatchObject({ code: 'stopped' });
    expect(await errorOf(addStudyReading(shop.db, as('AA'), 1, newStudyReading()))).toMatchObject({
      code: 'stopped',
    });
    await startStudy(shop.db, as('AB'), newStudy({ sentId: 'another-study-of-this-test' }));
    for (const place of newStudy().order.keys())
      await addStudyReading(
        shop.db,
        as('AA'),
        2,
        newStudyReading({ id: `a-reading-at-the-place-${place}`, place }),
      );
    expect(await errorOf(stopStudy(shop.db, as('AB'), 2, 'late'))).toMatchObject({ code: 'complete' });
  });

  test.each([
    'update study set day = day',
    'update study_reading set value_mm = 5',
    'delete from study_reading',
    `update study_reading_withdrawn set why = 'x'`,
    'delete from study_stopped',
  ])('"%s" is refused', async (statement) => {
    await startStudy(shop.db, as('AB'), newStudy());
    await addStudyReading(shop.db, as('AA'), 1, newStudyReading());
    await withdrawStudyReading(shop.db, as('AA'), 1, { id: newStudyReading().id, why: 'slipped' });
    await stopStudy(shop.db, as('AB'), 1, 'enough');
    expect(await errorOf(sql.raw(statement).execute(shop.db))).toMatchObject({
      message: expect.stringContaining('is only ever added to'),
    });
  });
});
