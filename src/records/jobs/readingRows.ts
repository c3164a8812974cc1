import type { Selectable } from 'kysely';
import type { Reading } from '../../../shared/words/job.ts';
import type { Db } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';

type ReadingRow = Selectable<Tables['reading']>;

/** Every reading of a job up to a revision, in the order they came. */
export async function readingsOf(db: Db, jobId: number, revision: number): Promise<readonly Reading[]> {
  const rows = await db
    .selectFrom('reading')
    .selectAll()
    .where('job_id', '=', jobId)
    .where('revision', '<=', revision)
    .orderBy('revision')
    .orderBy('place')
    .execute();
  return rows.map(toReading);
}

function toReading(row: ReadingRow): Reading {
  return {
    id: row.id,
    revision: row.revision,
    pass: row.pass,
    kind: row.kind,
    angleDeg: row.angle_deg,
    radiusMm: row.radius_mm,
    valueMm: row.value_mm,
    typed: row.typed,
    gauge: row.gauge,
    doubtful: row.doubtful === 1,
    confirmed: row.confirmed === null ? null : row.confirmed === 1,
    replaces: row.replaces,
    who: row.who,
    at: row.at,
  };
}

export function toReadingRow(jobId: number, place: number, r: Reading): ReadingRow {
  return {
    id: r.id,
    job_id: jobId,
    revision: r.revision,
    place,
    pass: r.pass,
    kind: r.kind,
    angle_deg: r.angleDeg,
    radius_mm: r.radiusMm,
    value_mm: r.valueMm,
    typed: r.typed,
    gauge: r.gauge,
    doubtful: r.doubtful ? 1 : 0,
    confirmed: r.confirmed == null ? null : r.confirmed ? 1 : 0,
    replaces: r.replaces,
    who: r.who,
    at: r.at,
  };
}
