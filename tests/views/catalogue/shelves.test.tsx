import { describe, expect, it } from 'vitest';
import { demoFamilies } from '../../../data/demo/families.ts';
import type { Entry, Family } from '../../../shared/words/catalogue.ts';
import { halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import { type ShelfWith, shelfShown, sortAsked } from '../../../views/pages/catalogue/shelves.tsx';

const HOW: ShelfWith = { unit: 'in', shopMinimumMm: (family) => family.shopMinimumWallMm ?? 4 };

const entry = (name: string, body: Partial<Family>): Entry<'family'> =>
  ({
    id: name,
    name,
    retired: false,
    body: { ...demoFamilies[0]!.family, ...body, name },
  }) as Entry<'family'>;

const shown = (entries: readonly Entry<'family'>[], text: string, sort: string | undefined) =>
  shelfShown('family', entries, { text, sort: sortAsked(sort)?.sort ?? null }, HOW).map(({ name }) => name);

describe('a shelf of the catalog', () => {
  const ENTRIES = [
    entry('thin', { nominalWallMm: 4.5, makerMinimumWallMm: null, shopMinimumWallMm: null }),
    entry('Thick', { nominalWallMm: 6, makerMinimumWallMm: 5, shopMinimumWallMm: 4.4 }),
    entry('own', {
      nominalWallMm: 5,
      makerMinimumWallMm: null,
      shopMinimumWallMm: 3.9,
      note: 'Beside the LATHE',
    }),
  ];

  it('stands as it is kept until a column is asked for, then by its figures up or down', () => {
    expect(shown(ENTRIES, '', undefined)).toEqual(['thin', 'Thick', 'own']);
    expect(shown(ENTRIES, '', 'family.wall')).toEqual(['thin', 'own', 'Thick']);
    expect(shown(ENTRIES, '', '-family.wall')).toEqual(['Thick', 'own', 'thin']);
    // The larger of maker and shop counts; without one of its own the shop’s general minimum does.
    expect(shown(ENTRIES, '', 'family.minimum')).toEqual(['own', 'thin', 'Thick']);
    expect(shown(ENTRIES, '', 'family.name')).toEqual(['own', 'Thick', 'thin']);
  });

  it('puts what is not given last, whichever way it is sorted', () => {
    const without = shelfShown(
      'family',
      [entry('none', { makerMinimumWallMm: null, shopMinimumWallMm: null }), ENTRIES[1]!],
      { text: '', sort: { by: 'minimum', down: false } },
      { unit: 'in', shopMinimumMm: (family) => family.shopMinimumWallMm },
    );
    expect(without.map(({ name }) => name)).toEqual(['Thick', 'none']);
  });

  it('finds every word in name, note or a figure as it is shown', () => {
    expect(shown(ENTRIES, 'lathe', undefined)).toEqual(['own']);
    expect(shown(ENTRIES, '0.236', undefined)).toEqual(['Thick']);
    expect(shown(ENTRIES, 'thick own', undefined)).toEqual([]);
  });

  it.each(['', 'wall', 'family.', 'family.what', 'criteria.name', '--family.wall', 'family.wall;'])(
    'is not sorted by %j',
    (typed) => {
      expect(sortAsked(typed)).toBeNull();
    },
  );
});

describe('the half section of a cover type', () => {
  it('has the diameters and heights of the type, halved from the axis', () => {
    const { family: body } = demoFamilies.find(
      ({ family }) => family.padDiameterMm !== null && family.rimDiameterMm !== null,
    )!;
    const section = halfSectionOf(body);
    expect(section.track).toEqual([body.trackInnerDiameterMm / 2, body.trackOuterDiameterMm / 2]);
    expect(section.rimMm).toBe(body.rimDiameterMm! / 2);
    expect(section.pad.toMm - section.pad.fromMm).toBeCloseTo(body.padDiameterMm!, 9);
    expect((section.pad.toMm + section.pad.fromMm) / 2).toBeCloseTo(body.studCircleDiameterMm / 2, 9);
    expect(section.pad.topMm - section.wallMm).toBeCloseTo(body.padThicknessMm!, 9);
  });
});
