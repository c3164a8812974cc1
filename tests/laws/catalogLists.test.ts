import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoFamilies } from '../../data/demo/families.ts';
import { demoGauges } from '../../data/demo/gauges.ts';
import { demoLathes } from '../../data/demo/lathes.ts';
import { demoLinings } from '../../data/demo/linings.ts';
import { demoNuts, demoWashers } from '../../data/demo/nuts.ts';
import { demoStacks } from '../../data/demo/stacks.ts';
import { demoSteels } from '../../data/demo/steels.ts';
import { demoStuds } from '../../data/demo/studs.ts';
import type { Entry, EntryBodies } from '../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { CATALOGUE_KINDS, type CatalogueKind } from '../../shared/words/terms.ts';
import { unseen } from '../../src/progress.ts';
import { bodyColumns, listColumns } from '../../src/web/catalogue/entryColumns.ts';
import { readCsv } from '../../src/web/catalogue/import/csvFile.ts';
import { readHeads } from '../../src/web/catalogue/import/heads.ts';
import { type RowRead, readRow } from '../../src/web/catalogue/import/readRow.ts';
import { csvOf } from '../../src/web/request/csv.ts';

const BODIES: { readonly [K in CatalogueKind]: readonly EntryBodies[K][] } = {
  family: demoFamilies.map(({ family }) => family),
  stud: demoStuds.map(({ entry }) => entry),
  stack: demoStacks.map(({ entry }) => entry),
  nut: demoNuts.map(({ entry }) => entry),
  washer: demoWashers.map(({ entry }) => entry),
  gauge: demoGauges.map(({ gauge }) => gauge),
  steel: demoSteels.map(({ steel }) => steel),
  lining: demoLinings.map(({ lining }) => lining),
  lathe: demoLathes.map(({ lathe }) => lathe),
};

/** Letters, signs and line ends that spreadsheets and CSV make something of. */
const NASTY = fc
  .array(
    fc.oneof(
      fc.constantFrom('=', '+', '-', '@', "'", '"', ',', ';', '\n', '\r\n', '\t', '＝', '#N/A', '="x"'),
      fc.constantFrom('wall', 'é', '錆', '😀', ' ', '1/2', '0', '3-8', 'TRUE'),
    ),
    { maxLength: 6 },
  )
  .map((parts) => parts.join(''));

/** A body with every figure another and every free text a nasty one: no form need take it. */
function shaken<T>(body: T): fc.Arbitrary<T> {
  return fc.infiniteStream(fc.tuple(fc.double({ min: 0.5, max: 2, noNaN: true }), NASTY)).map((stream) => {
    const next = () => stream.next().value;
    const shake = (value: unknown, key: string): unknown => {
      if (typeof value === 'number') return value * next()[0];
      if (Array.isArray(value)) return value.map((one) => shake(one, key));
      if (typeof value === 'string' && (key === 'note' || key === 'name' || /source|by$/i.test(key)))
        return next()[0] > 1 ? next()[1] : value + next()[1];
      if (typeof value !== 'object' || value === null) return value;
      return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, shake(one, name)]));
    };
    return shake(body, '') as T;
  });
}

function entryOf<K extends CatalogueKind>(
  kind: K,
  body: EntryBodies[K],
  i: number,
  retired = false,
): Entry<K> {
  const at = '2026-11-24T12:00:00.000Z';
  return { kind, id: `entry-${i}`, revision: 3, at, who: 'AK', why: '', name: body.name, retired, body };
}

async function readBack<K extends CatalogueKind>(
  kind: K,
  unit: LengthUnit,
  entries: readonly Entry<K>[],
  there: readonly Entry<K>[],
): Promise<RowRead<K>[]> {
  const csv = csvOf(listColumns(kind, unit, entries), entries);
  const table = await readCsv(Buffer.from(csv), unseen);
  // Whoever reads it works in the other unit: the headings say which it is.
  const heads = readHeads(kind, table, { lengthUnit: unit === 'in' ? 'mm' : 'in', decimalSign: 'comma' });
  const byId = new Map(there.map((one) => [one.id, one]));
  const atHand = {
    steel: demoSteels.map(({ id, steel }) => ({ ...entryOf('steel', steel, 0), id, revision: 1 })),
    lining: demoLinings.map(({ id, lining }) => ({ ...entryOf('lining', lining, 0), id, revision: 1 })),
  };
  const how = { kind, heads, today: '2026-01-05', byId, atHand, named: () => undefined };
  return table.rows.map((row) => readRow(row, {}, how));
}

describe.each(CATALOGUE_KINDS)('a list of the shelf %s', (kind) => {
  it.each(['mm', 'in'] as const)(
    'in %s comes in again as it went out, whatever the figures and texts',
    async (unit) => {
      const one = fc.tuple(fc.constantFrom(...BODIES[kind]).chain(shaken), fc.boolean());
      await fc.assert(
        fc.asyncProperty(fc.array(one, { minLength: 1, maxLength: 4 }), async (bodies) => {
          const entries = bodies.map(([body, retired], i) => entryOf(kind, body, i, retired));
          const rows = await readBack(kind, unit, entries, entries);
          expect(rows.map(({ is }) => is)).toEqual(entries.map(() => 'unchanged'));
        }),
        { numRuns: 20 },
      );
    },
  );

  it('comes into an empty shop with the same bodies', async () => {
    const entries = BODIES[kind].map((body, i) => entryOf(kind, body, i));
    const rows = await readBack(kind, 'mm', entries, []);
    for (const [i, row] of rows.entries()) {
      if (row.is !== 'added') throw new Error(JSON.stringify(row));
      expect(given(row.body)).toEqual(given(BODIES[kind][i]));
    }
  });

  it('changes nothing but the cell that was changed', async () => {
    const entries = BODIES[kind].map((body, i) => entryOf(kind, body, i));
    const name = 'Renamed, "once"';
    const sent = entries.map((one, i) => (i === 1 ? { ...one, body: { ...one.body, name } } : one));
    const rows = await readBack(kind, 'in', sent, entries);
    const changed = rows.flatMap((row) => (row.is === 'changed' ? [row] : []));
    expect(rows.filter(({ is }) => is !== 'unchanged')).toHaveLength(1);
    expect(given(changed[0]?.body)).toEqual(given({ ...BODIES[kind][1], name }));
  });

  it('has no two columns of one name', () => {
    const names = bodyColumns(kind, 'in').map(({ label }) => label.toLowerCase());
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
  });
});

/** Null, left out and empty say the same. */
function given(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(given);
  if (typeof value !== 'object' || value === null) return value;
  const some = Object.entries(value).filter(([, one]) => one !== null && one !== undefined && one !== '');
  return Object.fromEntries(some.map(([key, one]) => [key, given(one)]));
}
