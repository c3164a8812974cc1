import { stringify } from 'csv-stringify/sync';
import type { Response } from 'express';

export type Cell = string | number | boolean | null;

/** A column: its name, with the unit in it where it has one, and what stands in it. */
export interface Column<Row> {
  readonly name: string;
  readonly of: (row: Row) => Cell;
}

/** What a spreadsheet would run as a formula, in both widths, with the apostrophes that already stand before it. */
const GUARDED = /^'+[=+\-@\t\r＝＋－＠]/;

/**
 * A list as CSV after RFC 4180, in UTF-8 with the mark that spreadsheets know it by. A text that a spreadsheet would
 * run as a formula gets an apostrophe before it; numbers stay numbers, and yes and no are words.
 */
export function csvOf<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const records = rows.map((row) =>
    columns.map(({ of }) => {
      const cell = of(row);
      if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
      // One that has its apostrophe already gets another, so that taking one away gives the text again.
      return typeof cell === 'string' && GUARDED.test(cell) ? `'${cell}` : cell;
    }),
  );
  return stringify([columns.map(({ name }) => name), ...records], {
    bom: true,
    escape_formulas: true,
    record_delimiter: 'windows',
  });
}

/** A text of a list as it was before it was guarded. */
export function unguarded(cell: string): string {
  return GUARDED.test(cell) ? cell.slice(1) : cell;
}

export function sendCsv<Row>(
  res: Response,
  name: string,
  columns: readonly Column<Row>[],
  rows: readonly Row[],
): void {
  const plain = name.normalize('NFKD').replace(/[^\w.-]+/g, '-');
  res.set('Content-Disposition', `attachment; filename="${plain}.csv"`);
  res.type('text/csv').send(csvOf(columns, rows));
}
