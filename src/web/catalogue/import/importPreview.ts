import type { Writing } from '../../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../../shared/words/catalogue.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../../shared/words/terms.ts';
import type { Step } from '../../../progress.ts';
import { listEntries } from '../../../records/catalogue.ts';
import type { Db } from '../../../records/database/database.ts';
import { readAtOnce } from '../../../records/database/database.ts';
import { key } from '../../../records/database/writing.ts';
import { isFitId } from '../../../records/entryNames.ts';
import { type EntryGiven, entriesMark } from '../../../records/importEntries.ts';
import { breathEvery } from '../../../shop/work/breath.ts';
import type { Fields } from '../../request/typed.ts';
import { atHandFor } from '../chosen.ts';
import type { CsvTable } from './csvFile.ts';
import { columnLetter, type HeadsRead, readHeads } from './heads.ts';
import { type RowRead, readRow } from './readRow.ts';

/** A file against the catalog as it was at one moment: what keeping it would change. */
export interface Preview<K extends CatalogueKind = CatalogueKind> {
  readonly kind: K;
  readonly mark: string;
  readonly heads: HeadsRead<K>;
  readonly rows: readonly RowRead<K>[];
}

export interface PreviewOf<K extends CatalogueKind> {
  readonly kind: K;
  readonly table: CsvTable;
  readonly writing: Writing;
  readonly today: string;
  /** What was asked about and is right, by row and box. */
  readonly confirmed: ReadonlyMap<number, Fields>;
}

/** Reads every row against the catalog. Throws CsvUnreadable where the headings say nothing. */
export async function previewOf<K extends CatalogueKind>(
  db: Db,
  { kind, table, writing, today, confirmed }: PreviewOf<K>,
  step: Step,
): Promise<Preview<K>> {
  const { entries, mark, atHand } = await readAtOnce(db, async (trx) => ({
    entries: await listEntries(trx, kind, { retired: true }),
    mark: await entriesMark(trx, kind),
    atHand: await atHandFor(trx, kind),
  }));
  const heads = readHeads(kind, table, writing);
  const inUse = new Map(entries.flatMap((one) => (one.retired ? [] : [[key(one.name), one] as const])));
  const byId = new Map(entries.map((one) => [one.id, one]));
  const named = (name: string) => inUse.get(key(name));
  const rows: RowRead<K>[] = [];
  for (const [i, row] of table.rows.entries()) {
    rows.push(readRow(row, confirmed.get(row.row) ?? {}, { kind, heads, today, byId, atHand, named }));
    step('Checking rows', i + 1, table.rows.length);
    await breathEvery(i);
  }
  return { kind, mark, heads, rows: withoutClashes(rows, entries, { kind, heads, table }) };
}

/** Rows that name one entry twice, or would give two entries in use one name, are refused. */
function withoutClashes<K extends CatalogueKind>(
  rows: readonly RowRead<K>[],
  entries: readonly Entry<K>[],
  { kind, heads, table }: { readonly kind: K; readonly heads: HeadsRead<K>; readonly table: CsvTable },
): RowRead<K>[] {
  const of = (row: RowRead<K>) =>
    row.is === 'added' ? (row.id ?? `row ${row.row}`) : row.is === 'refused' ? null : row.entry.id;
  const firstOf = new Map<string, number>();
  const nameAfter = new Map(entries.map(({ id, name, retired }) => [id, { name, retired, row: 0 }]));
  for (const row of rows) {
    const id = of(row);
    if (id === null) continue;
    if (!firstOf.has(id)) firstOf.set(id, row.row);
    if (row.is === 'added' || row.is === 'changed')
      nameAfter.set(id, { name: row.body.name, retired: row.retired, row: row.row });
  }
  const holders = new Map<string, { id: string; row: number }[]>();
  for (const [id, { name, retired, row }] of nameAfter)
    if (!retired) holders.set(key(name), [...(holders.get(key(name)) ?? []), { id, row }]);
  const word = ENTRY_WORD[kind].one;
  const nameIndex = heads.columns.find(({ column }) => column.box === 'name')?.index;
  return rows.map((row) => {
    const id = of(row);
    if (id === null) return row;
    const refused = (index: number | undefined, sentence: string): RowRead<K> => ({
      ...{ row: row.row, name: row.name, is: 'refused' },
      faults: [
        {
          column: index === undefined ? null : columnLetter(index),
          head: index === undefined ? null : (table.heads[index] ?? null),
          sentence,
          confirms: null,
        },
      ],
    });
    const first = firstOf.get(id) ?? row.row;
    if (first !== row.row)
      return refused(
        heads.at.id ?? nameIndex,
        `Row ${first} is of the same ${word}. Leave one of the two out.`,
      );
    if (row.is === 'unchanged' || row.is === 'refused') return row;
    if (row.is === 'added' && row.id !== null && !isFitId(row.id))
      return refused(
        heads.at.id,
        `"${row.id.slice(0, 60)}" can't be an id. Use small letters, digits, periods and hyphens, or leave it blank.`,
      );
    if (row.retired) return row;
    const other = holders.get(key(row.body.name))?.find((one) => one.id !== id);
    if (other === undefined) return row;
    return refused(
      nameIndex,
      other.row === 0
        ? `The catalog already has a ${word} named "${row.body.name}". Use another name, or give the id of that one.`
        : `Row ${other.row} has the same name. Use another name.`,
    );
  });
}

/** What is to be kept of a preview that refuses nothing. */
export function entriesGiven<K extends CatalogueKind>({ rows }: Preview<K>): EntryGiven<K>[] {
  return rows.flatMap((row) =>
    row.is === 'added' || row.is === 'changed'
      ? [
          {
            id: row.is === 'added' ? row.id : row.entry.id,
            fromRevision: row.is === 'added' ? 0 : row.entry.revision,
            body: row.body,
            typed: row.typed,
            retired: row.retired,
          },
        ]
      : [],
  );
}
