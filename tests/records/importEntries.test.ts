import { afterEach, beforeEach, expect, test } from 'vitest';
import { addEntry, listEntries, reviseEntry } from '../../src/records/catalogue.ts';
import type { Shop } from '../../src/records/database/database.ts';
import { type EntryGiven, entriesMark, importEntries } from '../../src/records/importEntries.ts';
import { errorOf } from './refusals.ts';
import { alder, as } from './samples.ts';
import { onEachDatabase } from './shops.ts';

onEachDatabase((engine) => {
  let shop: Shop;
  beforeEach(async () => {
    shop = await engine.openEmpty();
    await addEntry(shop.db, as('BL'), { kind: 'family', id: 'alder', body: alder });
  });
  afterEach(() => shop.close());

  const changed: EntryGiven<'family'> = {
    ...{ id: 'alder', fromRevision: 1, body: { ...alder, note: 'from a list' }, typed: null, retired: false },
  };
  const added = (name: string): EntryGiven<'family'> => ({
    ...{ id: null, fromRevision: 0, body: { ...alder, name }, typed: null, retired: false },
  });
  const keep = (mark: string, entries: readonly EntryGiven<'family'>[], step?: () => void) =>
    importEntries(shop.db, as('AK', 'a list'), { kind: 'family', mark, entries, ...(step && { step }) });
  const names = async () =>
    (await listEntries(shop.db, 'family')).map(({ name, revision }) => [name, revision]);

  test('a list is kept whole: what is new, and what changes as a revision', async () => {
    await keep(await entriesMark(shop.db, 'family'), [changed, added('Birch'), added('Birch two')]);
    expect(await names()).toEqual([
      [alder.name, 2],
      ['Birch', 1],
      ['Birch two', 1],
    ]);
  });

  test('nothing of it is kept where an entry was changed since it was looked at', async () => {
    const mark = await entriesMark(shop.db, 'family');
    const body = { ...alder, note: 'measured' };
    await reviseEntry(shop.db, as('BL', 'measured'), { kind: 'family', id: 'alder', fromRevision: 1, body });
    expect(await errorOf(keep(mark, [added('Birch')]))).toMatchObject({ code: 'stale' });
    expect(await names()).toEqual([[alder.name, 2]]);
  });

  test('nothing of it is kept where it is stopped, or two would have one name', async () => {
    const mark = await entriesMark(shop.db, 'family');
    const stop = () => {
      throw new Error('stopped');
    };
    expect(await errorOf(keep(mark, [changed, added('Birch')], stop))).toMatchObject({ message: 'stopped' });
    expect(await errorOf(keep(mark, [added('Birch'), added('birch')]))).toMatchObject({ code: 'name-taken' });
    expect(await names()).toEqual([[alder.name, 1]]);
  });
});
