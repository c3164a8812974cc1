import { sql } from 'kysely';
import type { Db } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';

export type Row = Readonly<Record<string, string | number | null>>;
type Table = keyof Tables;

/** Tables that are exported, in the order their rows refer to one another. */
const EXPORTED = {
  entry: ['kind', 'id'],
  entry_revision: ['kind', 'id', 'revision'],
  job: ['id'],
  job_revision: ['job_id', 'revision'],
  job_sent: ['id'],
  reading: ['job_id', 'revision', 'place'],
  photo: ['job_id', 'revision'],
  ring_closed: ['job_id', 'revision'],
  printed_part: ['hash'],
  printed: ['job_id', 'revision', 'paper'],
  slip: ['number'],
  slip_count: ['slip_number', 'place'],
  slip_job: ['job_id'],
  master_check: ['id'],
  master_check_withdrawn: ['check_id'],
  shelf_change: ['job_id', 'place'],
  copy_away: ['number'],
  study: ['number'],
  study_reading: ['study_number', 'nth'],
  study_reading_withdrawn: ['reading_id'],
  study_stopped: ['study_number'],
  cost_revision: ['revision'],
  wrong: ['number'],
  wrong_closed: ['wrong_number', 'job_id'],
  wrong_slip_closed: ['wrong_number', 'slip_number'],
  person: ['id'],
  person_revision: ['person_id', 'revision'],
} as const satisfies Partial<Record<Table, readonly string[]>>;
export type ExportedTable = keyof typeof EXPORTED;
export const EXPORTED_TABLES = Object.keys(EXPORTED) as ExportedTable[];

/** Tables that are not exported, and why. */
export const STAYS: Readonly<Record<Exclude<Table, ExportedTable>, string>> = {
  schema_migration: 'kept by the program for itself',
  person_password: 'a secret, even as a hash',
  job_trend: 'made anew from the jobs',
  job_rests: 'made anew from the jobs',
  session: 'belongs to one machine',
  api_token: 'a secret, even as a hash',
};

const AT_A_TIME = 500;

/** The rows of a table, always in the same order, their fields in the order of the alphabet. */
export async function* rowsOf(db: Db, table: ExportedTable): AsyncGenerator<Row> {
  const order = sql.join(EXPORTED[table].map((column) => sql.ref(column)));
  for (let from = 0; ; from += AT_A_TIME) {
    const { rows } =
      await sql<Row>`select * from ${sql.table(table)} order by ${order} limit ${AT_A_TIME} offset ${from}`.execute(
        db,
      );
    for (const row of rows) yield sorted(row);
    if (rows.length < AT_A_TIME) return;
  }
}

/** How many rows there are to export. */
export async function rowsIn(db: Db): Promise<number> {
  let sum = 0;
  for (const table of EXPORTED_TABLES) {
    const { rows } = await sql<{ n: number }>`select count(*) as n from ${sql.table(table)}`.execute(db);
    sum += Number(rows[0]?.n);
  }
  return sum;
}

function sorted(row: Row): Row {
  return Object.fromEntries(Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1)));
}
