import { Readable } from 'node:stream';
import { CsvError, parse } from 'csv-parse';
import type { Step } from '../../../progress.ts';
import { breath } from '../../../shop/work/breath.ts';

/** A shop's catalog is a few hundred lines of a few hundred signs each. */
export const MOST_CSV_BYTES = 8 * 1024 * 1024;
const MOST_ROWS = 20_000;
const MOST_COLUMNS = 200;
const MOST_IN_ROW = 100_000;

/** One row as a spreadsheet counts it: the heads are row 1. */
export interface CsvRow {
  readonly row: number;
  readonly cells: readonly string[];
}

export interface CsvTable {
  readonly heads: readonly string[];
  readonly rows: readonly CsvRow[];
}

/** The file is no list that can be read; the sentence says what to do. */
export class CsvUnreadable extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'CsvUnreadable';
  }
}

const SAVE_AS = 'Save the sheet as “CSV UTF-8” and send that file.';

/** The rows of a CSV file, its parts told as they are read. Throws CsvUnreadable. */
export async function readCsv(bytes: Buffer, step: Step): Promise<CsvTable> {
  const text = textOf(bytes);
  const told = /^sep=(.)\r?\n/i.exec(text);
  const body = told === null ? text : text.slice(told[0].length);
  const rows: CsvRow[] = [];
  const parser = Readable.from(inPieces(body)).pipe(
    parse({
      delimiter: told?.[1] ?? delimiterOf(body),
      relax_column_count: true,
      max_record_size: MOST_IN_ROW,
    }),
  );
  const head = told === null ? 1 : 2;
  let row = head;
  try {
    for await (const cells of parser as AsyncIterable<string[]>) {
      if (row === head) refuseHeads(cells);
      else if (cells.some((cell) => cell.trim() !== '')) refuseWide(cells, row);
      rows.push({ row, cells });
      row += 1;
      if (rows.length > MOST_ROWS + 1)
        throw new CsvUnreadable(`The file has more than ${MOST_ROWS} rows. Send it in parts.`);
      if (rows.length % 500 === 0) {
        step('Reading the file', Math.min(parser.info.bytes, body.length), body.length);
        await breath();
      }
    }
  } catch (error) {
    if (error instanceof CsvError) throw new CsvUnreadable(sentenceOf(error, row));
    throw error;
  }
  const [heads, ...rest] = rows;
  if (heads === undefined) throw new CsvUnreadable('The file is empty. Send one with a row of headings.');
  return {
    heads: heads.cells.map((cell) => cell.trim()),
    rows: rest.filter(({ cells }) => cells.some((cell) => cell.trim() !== '')),
  };
}

function refuseHeads(cells: readonly string[]): void {
  if (cells.every((cell) => cell.trim() === ''))
    throw new CsvUnreadable('The first row is empty. It must hold the headings of the columns.');
  if (cells.length > MOST_COLUMNS)
    throw new CsvUnreadable(`The file has more than ${MOST_COLUMNS} columns. Leave out those not needed.`);
}

function refuseWide(cells: readonly string[], row: number): void {
  if (cells.length > MOST_COLUMNS)
    throw new CsvUnreadable(`Row ${row} has more than ${MOST_COLUMNS} cells. Correct it in the file.`);
}

/** Spreadsheets and text in another coding are told apart by their first bytes, or by what is no UTF-8. */
function textOf(bytes: Buffer): string {
  if (
    bytes.subarray(0, 2).toString('latin1') === 'PK' ||
    bytes.readUInt32BE?.call(padded(bytes), 0) === 0xd0cf11e0
  )
    throw new CsvUnreadable(`This is a spreadsheet or a packed file, not CSV. ${SAVE_AS}`);
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    if (text.includes('\0')) throw new CsvUnreadable(`This is not a text file. ${SAVE_AS}`);
    return text;
  } catch (error) {
    if (error instanceof CsvUnreadable) throw error;
    throw new CsvUnreadable(`The letters of this file are not coded as UTF-8. ${SAVE_AS}`);
  }
}

function padded(bytes: Buffer): Buffer {
  return bytes.length < 4 ? Buffer.concat([bytes, Buffer.alloc(4)]) : bytes;
}

/** What stands most often between the headings, outside quotes. */
function delimiterOf(text: string): string {
  const line = /^(?:"[^"]*"|[^"\r\n])*/.exec(text)?.[0].replaceAll(/"[^"]*"/g, '') ?? '';
  const count = (sign: string) => line.split(sign).length;
  return [',', ';', '\t'].sort((a, b) => count(b) - count(a))[0]!;
}

const PIECE = 64 * 1024;

function* inPieces(text: string): Generator<string> {
  for (let from = 0; from < text.length; from += PIECE) yield text.slice(from, from + PIECE);
}

function sentenceOf(error: CsvError, row: number): string {
  if (error.code === 'CSV_QUOTE_NOT_CLOSED')
    return 'A quotation mark that opens in the file is never closed. Correct it in the file.';
  if (error.code === 'CSV_MAX_RECORD_SIZE')
    return `Row ${row} is too long to be one row; a quotation mark may be missing. Correct it in the file.`;
  return `Row ${row} has a quotation mark where none can be. Correct it in the file.`;
}
