import { BARE_UNIT } from '../../../../shared/quantity/bareUnit.ts';
import type { Writing } from '../../../../shared/quantity/fieldText.ts';
import type { EntryBodies } from '../../../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../../../shared/words/print.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../../shared/words/terms.ts';
import type { BodyColumn } from '../../request/bodyColumns.ts';
import { bodyColumns, ENTRY_HEADS } from '../entryColumns.ts';
import { type CsvTable, CsvUnreadable } from './csvFile.ts';

/** One column of a file, and what of an entry it holds. */
export interface ColumnRead<K extends CatalogueKind> {
  readonly index: number;
  /** As its heading says. */
  readonly head: string;
  readonly column: BodyColumn<EntryBodies[K]>;
  /** The unit of the heading where that is none the shop's lists have; said with each of its figures. */
  readonly ownUnit: string | null;
}

export interface HeadsRead<K extends CatalogueKind> {
  readonly columns: readonly ColumnRead<K>[];
  /** Where the columns stand that are no part of a body; missing where the file has none. */
  readonly at: Readonly<Partial<Record<keyof typeof ENTRY_HEADS, number>>>;
  /** Headings that name nothing of the catalog: what stands under them is not read. */
  readonly unread: readonly string[];
  /** How its figures are written: the unit of bare ones, and the decimal sign. */
  readonly writing: Writing;
}

/** What the columns of a file hold, by their headings. Throws CsvUnreadable where one stands twice or none names a thing. */
export function readHeads<K extends CatalogueKind>(
  kind: K,
  { heads, rows }: CsvTable,
  own: Writing,
): HeadsRead<K> {
  const lengthUnit = unitOfHeads(heads) ?? own.lengthUnit;
  const known = new Map(bodyColumns(kind, lengthUnit).map((column) => [plain(column.label), column]));
  const at: Partial<Record<keyof typeof ENTRY_HEADS, number>> = {};
  const columns: ColumnRead<K>[] = [];
  const unread: string[] = [];
  heads.forEach((head, index) => {
    if (head === '') return;
    const beside = entryHead(head);
    const { label, unit } = known.has(plain(head)) ? { label: head, unit: '' } : parted(head);
    const column = known.get(plain(label));
    const twice = beside ? at[beside] !== undefined : columns.some((one) => one.column.name === column?.name);
    if (twice)
      throw new CsvUnreadable(`The heading "${head}" stands twice. Leave one of the two columns out.`);
    if (beside) at[beside] = index;
    else if (column === undefined) unread.push(head);
    else
      columns.push({
        index,
        head,
        column,
        ownUnit: unit === '' || sameUnit(unit, column.unit) ? null : unit,
      });
  });
  if (columns.length === 0) {
    const example = bodyColumns(kind, lengthUnit).slice(0, 3);
    throw new CsvUnreadable(
      `No heading in the first row names a figure of a ${ENTRY_WORD[kind].one}, such as ${example.map(({ name }) => `"${name}"`).join(', ')}. Download the list as CSV to see all of them.`,
    );
  }
  const decimalSign = signIn(rows, columns) ?? 'point';
  return { columns, at, unread, writing: { lengthUnit, decimalSign } };
}

function entryHead(head: string): keyof typeof ENTRY_HEADS | undefined {
  return (Object.keys(ENTRY_HEADS) as (keyof typeof ENTRY_HEADS)[]).find(
    (key) => plain(ENTRY_HEADS[key]) === plain(head),
  );
}

/** Letter case, blanks and the shape of an apostrophe do not tell two headings apart. */
function plain(head: string): string {
  return head.normalize('NFKC').toLowerCase().replaceAll(/[’‘`]/g, "'").replaceAll(/\s+/g, ' ').trim();
}

const sameUnit = (a: string, b: string) => plain(a).replaceAll('·', '*') === plain(b).replaceAll('·', '*');

/** "new wall (in)" is "new wall" in inches. */
function parted(head: string): { label: string; unit: string } {
  const found = /^(.*\S)\s*\(([^()]*(?:\([^()]*\))?[^()]*)\)$/.exec(head);
  return found ? { label: found[1]!, unit: found[2]!.trim() } : { label: head, unit: '' };
}

/** Whether the headings are of a list in mm or in inches; null where none tells. */
function unitOfHeads(heads: readonly string[]): LengthUnit | null {
  const units = heads.map((head) => parted(head).unit).filter((unit) => unit !== '');
  const count = (unit: LengthUnit) => {
    const own = Object.values(BARE_UNIT).filter(({ mm, in: inch }) => mm !== inch);
    return units.filter((one) => own.some((kind) => sameUnit(kind[unit], one))).length;
  };
  const [mm, inch] = [count('mm'), count('in')];
  return mm === inch ? null : mm > inch ? 'mm' : 'in';
}

/** The decimal sign all figures of the file agree on; null where there is none, or they do not. */
function signIn<K extends CatalogueKind>(
  rows: CsvTable['rows'],
  columns: readonly ColumnRead<K>[],
): Writing['decimalSign'] | null {
  const figures = columns.filter(({ column: { field } }) => !NO_FIGURE.has(field.kind));
  let comma = false;
  for (const { cells } of rows) {
    for (const { index } of figures) {
      const cell = cells[index] ?? '';
      if (/\d\.\d/.test(cell)) return 'point';
      if (/\d,\d/.test(cell)) comma = true;
    }
  }
  return comma ? 'comma' : null;
}

const NO_FIGURE: ReadonlySet<string> = new Set(['text', 'day', 'choice', 'yes-no', 'formula']);

/** "F" of column 6, as a spreadsheet names it. */
export function columnLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnLetter(Math.floor(index / 26) - 1) + letter;
}
