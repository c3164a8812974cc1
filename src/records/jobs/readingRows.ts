import { isDeepStrictEqual } from 'node:util';
import type { Selectable } from 'kysely';
import type { Reading } from '../../../shared/words/job.ts';
import type { Db } from '../database/database.ts';
import type { Tables } from '../database/tables.ts';

type ReadingRow = Selectable<Tables['reading']>;

/** Every reading of a job up to a revision, in the order they came. */
export async function readingsOf(db: Db, jobId: number, revision: number): Promise<readonly Reading[]> {
  const kept = keptOf(db);
  const known = kept.get(jobId) ?? NONE;
  const since = known.at(-1)?.revision ?? 0;
  // The same list each time, so that what is worked out from a list is worked out once.
  if (revision === since) return known;
  if (revision < since) return known.filter((one) => one.revision <= revision);
  const rows = await db
    .selectFrom('reading')
    .selectAll()
    .where('job_id', '=', jobId)
    .where('revision', '>', since)
    .where('revision', '<=', revision)
    .orderBy('revision')
    .orderBy('place')
    .execute();
  const all = rows.length === 0 ? known : kept.grown(jobId, known, rows.map(toReading));
  // What a change has written may still be given up.
  if (!db.isTransaction && all.length > 0) kept.keep(jobId, all);
  return all;
}

const NONE: readonly Reading[] = [];

interface Made {
  readonly jobId: number;
  readonly before: readonly Reading[];
  readonly all: readonly Reading[];
}

/** The readings of a job with those that are being added. */
export function withAdded(
  db: Db,
  jobId: number,
  before: readonly Reading[],
  added: readonly Reading[],
): readonly Reading[] {
  if (added.length === 0) return before;
  const all = [...before, ...added];
  keptOf(db).make({ jobId, before, all });
  return all;
}

/** Readings in memory, of all jobs together; about 300 bytes each. */
const MOST_KEPT = 20_000;

/**
 * Readings as they were read, by job, the job asked for longest ago dropped first. They are only ever added, with
 * revisions that follow one another, so what was read up to one of them stays so; only newer ones are asked for again.
 */
class KeptReadings {
  readonly #byJob = new Map<number, readonly Reading[]>();
  /** The list that was made when readings were added last: the same one, once the records say that they hold it. */
  #made: Made | null = null;
  #count = 0;

  get(jobId: number): readonly Reading[] | undefined {
    return this.#byJob.get(jobId);
  }

  keep(jobId: number, readings: readonly Reading[]): void {
    this.#drop(jobId);
    this.#byJob.set(jobId, readings);
    this.#count += readings.length;
    for (const oldest of this.#byJob.keys()) {
      if (this.#count <= MOST_KEPT) return;
      this.#drop(oldest);
    }
  }

  make(made: Made): void {
    this.#made = made;
  }

  grown(jobId: number, known: readonly Reading[], fresh: readonly Reading[]): readonly Reading[] {
    const made = this.#made;
    const same =
      made?.jobId === jobId &&
      made.before === known &&
      isDeepStrictEqual(made.all.slice(known.length), fresh);
    return same ? made.all : [...known, ...fresh];
  }

  #drop(jobId: number): void {
    this.#count -= this.#byJob.get(jobId)?.length ?? 0;
    this.#byJob.delete(jobId);
  }
}

/** By the one thing a database and its transactions share. */
const keptBy = new WeakMap<object, KeptReadings>();

function keptOf(db: Db): KeptReadings {
  const { adapter } = db.getExecutor();
  const kept = keptBy.get(adapter) ?? new KeptReadings();
  keptBy.set(adapter, kept);
  return kept;
}

export function toReading(row: ReadingRow): Reading {
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
