import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  addEntry,
  entryHistory,
  getEntry,
  listEntries,
  reinstateEntry,
  retireEntry,
  reviseEntry,
  typedIn,
} from '../../src/records/catalogue.ts';
import type { Shop } from '../../src/records/database/database.ts';
import { StaleEdit } from '../../src/records/database/errors.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { errorOf, refusalOf } from './refusals.ts';
import { alder, as, criteria } from './samples.ts';
import { onEachDatabase } from './shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
  });
  afterEach(() => shop.close());

  const add = (name: string, id?: string) =>
    addEntry(shop.db, as('AB'), { kind: 'family', body: { ...alder, name }, ...(id ? { id } : {}) });

  describe('adding', () => {
    test('a new entry’s id is made from its name, and another where that one is used', async () => {
      const ids = [];
      for (const name of ['Alder 11 plain', 'Alder 11 (plain)', '  Über/4  ', '—'])
        ids.push((await add(name)).id);
      expect(ids).toEqual(['alder-11-plain', 'alder-11-plain-2', 'uber-4', 'family']);
    });

    test('a new entry keeps who, when and the body as given', async () => {
      const made = await add('Alder 11 plain', 'alder');
      expect(made).toMatchObject({
        id: 'alder',
        revision: 1,
        who: 'AB',
        name: 'Alder 11 plain',
        retired: false,
      });
      expect(made.at).toMatch(/^2026-03-02T\d\d:\d\d:\d\d\.000Z$/);
      expect(made.body).toEqual({ ...alder, name: 'Alder 11 plain' });
      expect(await getEntry(shop.db, 'family', 'alder')).toEqual(made);
    });

    test('what was typed is kept beside each revision, changes no body and makes no revision', async () => {
      const wall = { nominalWallMm: { text: '3/16', bareUnit: 'in' } };
      const pad = { padThicknessMm: { text: '1/4 in', bareUnit: null } };
      const made = await addEntry(shop.db, as('AB'), {
        kind: 'family',
        id: 'alder',
        body: { ...alder, nominalWallMm: 4.7625 },
        typed: wall,
      });
      expect(made.body).toEqual({ ...alder, nominalWallMm: 4.7625 });
      const to = { kind: 'family', id: 'alder' } as const;
      const same = await reviseEntry(shop.db, as('AB', 'again'), {
        ...to,
        fromRevision: 1,
        body: made.body,
        typed: pad,
      });
      expect(same.revision).toBe(1);
      const body = { ...made.body, padThicknessMm: 6.35 };
      await reviseEntry(shop.db, as('AB', 'measured'), { ...to, fromRevision: 1, body, typed: pad });
      await reviseEntry(shop.db, as('AB', 'by a script'), {
        ...to,
        fromRevision: 2,
        body: { ...body, note: 'x' },
      });
      await retireEntry(shop.db, as('AB', 'no more'), { ...to, fromRevision: 3 });
      expect([...(await typedIn(shop.db, 'family', 'alder'))]).toEqual([
        [1, wall],
        [2, pad],
      ]);
    });

    test('what was typed for the criteria is kept from the first save on', async () => {
      const typed = { minimumWallMm: { text: '0.169', bareUnit: 'in' } };
      await saveCriteria(shop.db, as('AB'), { fromRevision: 0, body: criteria, typed });
      await saveCriteria(shop.db, as('AB', 'why not'), {
        fromRevision: 1,
        body: { ...criteria, typicalCutMm: 0.254 },
        typed: { typicalCutMm: { text: '.010 in', bareUnit: null } },
      });
      expect([...(await typedIn(shop.db, 'criteria', 'shop')).keys()]).toEqual([1, 2]);
    });

    test('a name in use is refused, whatever its letter case', async () => {
      await add('Alder 11 plain');
      expect(await refusalOf(add('ALDER  11 Plain'))).toEqual({
        code: 'name-taken',
        path: 'name',
        sentence:
          'The catalog already has a cover type named "Alder 11 plain". Use another name, or change that one.',
      });
    });

    test.each([
      ['an id that is used', 'id-taken', () => add('Two', 'alder')],
      ['an id with a blank', 'bad-id', () => add('Two', 'al der')],
      ['a name of blanks', 'name-needed', () => add('   ')],
      ['a name with a line in it', 'name-needed', () => add('a\nb')],
      [
        'a length that is no number',
        'not-a-number',
        () =>
          addEntry(shop.db, as('AB'), {
            kind: 'family',
            body: { ...alder, name: 'Two', nominalWallMm: Number.NaN },
          }),
      ],
      [
        'nobody',
        'who-needed',
        () => addEntry(shop.db, as('  '), { kind: 'family', body: { ...alder, name: 'Two' } }),
      ],
      [
        'a long nobody',
        'who-too-long',
        () => addEntry(shop.db, as('ABCDEFGHI'), { kind: 'family', body: { ...alder, name: 'Two' } }),
      ],
      [
        'a NUL',
        'bad-text',
        () => addEntry(shop.db, as('AB'), { kind: 'family', body: { ...alder, name: 'Two', note: 'a\0b' } }),
      ],
    ])('an entry with %s is refused, and nothing is kept', async (_, code, attempt) => {
      await add('Alder 11 plain', 'alder');
      expect((await refusalOf(attempt())).code).toBe(code);
      expect((await listEntries(shop.db, 'family', { retired: true })).length).toBe(1);
    });
  });

  describe('changing', () => {
    const thicker = { ...alder, nominalWallMm: 5.2 };
    const revise = (who: string, fromRevision: number, body = thicker, why?: string) =>
      reviseEntry(shop.db, as(who), {
        kind: 'family',
        id: 'alder',
        fromRevision,
        body,
        why: why ?? 'measured three new ones',
      });

    beforeEach(() => add(alder.name, 'alder'));

    test('a change of an entry is a new revision, and the old one stays readable', async () => {
      const next = await revise('CD', 1);
      expect([next.revision, next.who, next.why, next.body.nominalWallMm]).toEqual([
        2,
        'CD',
        'measured three new ones',
        5.2,
      ]);
      expect((await getEntry(shop.db, 'family', 'alder', 1))?.body.nominalWallMm).toBe(5);
      expect((await entryHistory(shop.db, 'family', 'alder')).map((e) => e.who)).toEqual(['AB', 'CD']);
      expect(await getEntry(shop.db, 'family', 'alder', 3)).toBeNull();
    });

    test('an edit begun before another is answered with both versions, and nothing is written', async () => {
      await revise('CD', 1);
      const error = await errorOf(revise('EF', 1, { ...alder, note: 'mine' }));
      expect(error).toBeInstanceOf(StaleEdit);
      expect(error).toMatchObject({
        code: 'stale',
        section: 'family',
        currentRevision: 2,
        theirs: { revision: 2, who: 'CD', body: thicker },
        message:
          'CD changed the cover type "Alder 11 plain" while you had it open (you started from revision 1; it is now 2). Nothing was saved. Compare both and save again.',
      });
      expect((await getEntry(shop.db, 'family', 'alder'))?.revision).toBe(2);
    });

    test('a change sent twice is one revision', async () => {
      await revise('CD', 1);
      const { nominalWallMm, ...rest } = thicker;
      expect((await revise('CD', 1, { nominalWallMm, ...rest })).revision).toBe(2);
    });

    test('a change needs a reason, a revision that exists and an entry that exists', async () => {
      expect((await refusalOf(revise('CD', 1, thicker, ' '))).code).toBe('why-needed');
      for (const from of [-1, 2, 1.5, Number.NaN])
        expect((await refusalOf(revise('CD', from))).code).toBe('bad-revision');
      const nowhere = reviseEntry(shop.db, as('CD'), {
        kind: 'stud',
        id: 'alder',
        fromRevision: 1,
        body: {} as never,
        why: 'x',
      });
      expect((await refusalOf(nowhere)).code).toBe('not-found');
      expect((await getEntry(shop.db, 'family', 'alder'))?.revision).toBe(1);
    });

    test('a change of the name cannot make it one in use', async () => {
      await add('Birch', 'birch');
      expect((await refusalOf(revise('CD', 1, { ...alder, name: 'birch' }))).code).toBe('name-taken');
      await revise('CD', 1, { ...alder, name: 'Alder 12' });
      expect((await listEntries(shop.db, 'family')).map((e) => e.name)).toEqual(['Alder 12', 'Birch']);
    });
  });

  describe('retiring', () => {
    const edit = (fromRevision: number) =>
      ({ kind: 'family', id: 'alder', fromRevision, why: 'none left' }) as const;
    beforeEach(() => add(alder.name, 'alder'));

    test('a retired entry leaves the list, is kept, and can come back', async () => {
      const retired = await retireEntry(shop.db, as('AB'), edit(1));
      expect([retired.revision, retired.retired, retired.why]).toEqual([2, true, 'none left']);
      expect(await listEntries(shop.db, 'family')).toEqual([]);
      expect(await listEntries(shop.db, 'family', { retired: true })).toEqual([retired]);
      expect(await getEntry(shop.db, 'family', 'alder')).toEqual(retired);
      expect((await reinstateEntry(shop.db, as('AB'), edit(2))).retired).toBe(false);
      expect((await listEntries(shop.db, 'family')).length).toBe(1);
      expect((await entryHistory(shop.db, 'family', 'alder')).map((e) => e.retired)).toEqual([
        false,
        true,
        false,
      ]);
    });

    test('a retired entry frees its name, and cannot come back once that is used again', async () => {
      await retireEntry(shop.db, as('AB'), edit(1));
      await add(alder.name);
      expect((await refusalOf(reinstateEntry(shop.db, as('AB'), edit(2)))).code).toBe('name-taken');
    });

    test('the shop’s criteria cannot be retired', async () => {
      await saveCriteria(shop.db, as('AB'), { fromRevision: 0, body: criteria });
      const attempt = retireEntry(shop.db, as('AB'), {
        kind: 'criteria',
        id: 'shop',
        fromRevision: 1,
        why: 'x',
      });
      expect((await refusalOf(attempt)).code).toBe('criteria-stay');
    });
  });

  describe("the shop's criteria", () => {
    test('the shop’s criteria begin without any limit', async () => {
      expect(await currentCriteria(shop.db)).toEqual({
        revision: 0,
        at: null,
        who: null,
        body: {
          shopName: 'The shop',
          minimumWallMm: null,
          minimumWallFormula: null,
          cleanUpAllowanceMm: 0.05,
          faceRunoutLimitMm: null,
          confidence: 0.95,
          typicalCutMm: null,
          protrusionThreads: 1,
          startThreads: 2,
          lengthUnit: 'mm',
          decimalSign: 'point',
          lathe: null,
          balance: null,
          bending: null,
          heat: null,
        },
      });
    });

    test('a change of the criteria keeps who, when and why', async () => {
      const save = (who: string, fromRevision: number, minimumWallMm: number, why?: string) =>
        saveCriteria(shop.db, as(who), {
          fromRevision,
          body: { ...criteria, minimumWallMm },
          ...(why ? { why } : {}),
        });
      await save('AB', 0, 4.3);
      expect((await refusalOf(save('CD', 1, 4.1))).code).toBe('why-needed');
      await save('CD', 1, 4.1, 'two winters without a return');
      expect(await currentCriteria(shop.db)).toMatchObject({
        revision: 2,
        who: 'CD',
        body: { minimumWallMm: 4.1 },
      });
      expect(
        (await entryHistory(shop.db, 'criteria', 'shop')).map((e) => [e.who, e.body.minimumWallMm]),
      ).toEqual([
        ['AB', 4.3],
        ['CD', 4.1],
      ]);
    });

    test('two people saving the first criteria do not overwrite one another', async () => {
      await saveCriteria(shop.db, as('AB'), { fromRevision: 0, body: criteria });
      const second = saveCriteria(shop.db, as('CD'), {
        fromRevision: 0,
        body: { ...criteria, shopName: 'Other' },
        why: 'x',
      });
      expect(await errorOf(second)).toMatchObject({ code: 'stale', theirs: { who: 'AB' } });
      expect((await currentCriteria(shop.db)).body.shopName).toBe('Heron Lane Rebuilds');
    });
  });
});
