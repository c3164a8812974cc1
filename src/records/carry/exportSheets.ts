import { type Options, stringify } from 'csv-stringify';
import type { ExportedTable, Row } from './exportTables.ts';

/** Tables for people and their spreadsheets; what each cell holds is in the lines beside them too, exactly. */
export const SHEETS: Readonly<
  Record<string, { readonly table: ExportedTable; readonly columns: readonly string[] }>
> = {
  'jobs.csv': {
    table: 'job',
    columns: [
      'number',
      'stage',
      'outcome',
      'family_name',
      'customer_reference',
      'received_on',
      'revision',
      'created_at',
      'changed_at',
      'demo',
    ],
  },
  'readings.csv': {
    table: 'reading',
    columns: [
      'job_number',
      'revision',
      'pass',
      'kind',
      'angle_deg',
      'radius_mm',
      'value_mm',
      'typed',
      'gauge',
      'doubtful',
      'confirmed',
      'id',
      'replaces',
      'who',
      'at',
    ],
  },
  'revisions.csv': {
    table: 'job_revision',
    columns: ['job_number', 'revision', 'at', 'who', 'why', 'what', 'body'],
  },
  'photos.csv': {
    table: 'photo',
    columns: [
      'job_number',
      'revision',
      'spot',
      'angle_deg',
      'radius_mm',
      'item',
      'note',
      'who',
      'at',
      'kind',
      'width',
      'height',
      'bytes',
      'file',
      'hash',
      'id',
    ],
  },
  'catalogue.csv': {
    table: 'entry_revision',
    columns: ['kind', 'id', 'revision', 'at', 'who', 'why', 'retired', 'body', 'typed'],
  },
  'slips.csv': {
    table: 'slip',
    columns: [
      'number',
      'at',
      'who',
      'customer_reference',
      'stack_name',
      'stud_name',
      'fits',
      'calc_version',
      'asked',
      'answered',
    ],
  },
  'slip-stock.csv': {
    table: 'slip_count',
    columns: ['slip_number', 'place', 'what', 'at', 'who', 'why', 'body'],
  },
  'master-checks.csv': {
    table: 'master_check',
    columns: [
      'id',
      'gauge_id',
      'day',
      'at',
      'who',
      'master_mm',
      'master_typed',
      'reading_mm',
      'reading_typed',
      'confirmed',
      'due_on',
    ],
  },
  'master-checks-withdrawn.csv': {
    table: 'master_check_withdrawn',
    columns: ['check_id', 'at', 'who', 'why'],
  },
  'studies.csv': { table: 'study', columns: ['number', 'gauge_id', 'day', 'at', 'who', 'body'] },
  'study-readings.csv': {
    table: 'study_reading',
    columns: ['id', 'study_number', 'nth', 'place', 'at', 'who', 'value_mm', 'typed', 'confirmed'],
  },
  'study-readings-withdrawn.csv': {
    table: 'study_reading_withdrawn',
    columns: ['reading_id', 'at', 'who', 'why'],
  },
  'studies-stopped.csv': { table: 'study_stopped', columns: ['study_number', 'at', 'who', 'why'] },
  'people.csv': { table: 'person', columns: ['name', 'initials', 'role', 'retired'] },
};

/** A cell that begins like a formula is made text by a ' before it; a number stays one, below zero too. */
const SAFE: Options = {
  escape_formulas: true,
  cast: { number: (value) => ({ value: String(value), escape_formulas: false }) },
  record_delimiter: '\r\n',
  bom: true,
};

export function csvOf(columns: readonly string[]) {
  return stringify({ ...SAFE, header: true, columns: [...columns] });
}

/** What a cell says instead of an id or a hash. */
export interface Told {
  readonly numbers: ReadonlyMap<number, string>;
  readonly names: Readonly<Record<string, string>>;
}

export function cellsOf(row: Row, columns: readonly string[], { numbers, names }: Told) {
  return columns.map((column) => {
    if (column === 'job_number') return numbers.get(Number(row.job_id));
    return column === 'file' ? names[String(row.hash)] : row[column];
  });
}
