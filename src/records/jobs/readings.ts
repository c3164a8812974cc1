import type { Job, NewReading, Pass, Reading, ReadingKind } from '../../../shared/words/job.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { type Ctx, printable, refuseNul, signed } from '../database/writing.ts';
import { jobRow, noJob, partsOf, toJob } from './readJob.ts';
import { addToJob, refuseUnexplained } from './reviseJob.ts';
import { refuseAfterWithoutCut, refuseClosed } from './rules.ts';

const KINDS: readonly ReadingKind[] = ['wall', 'face', 'mark'];
const PASSES: readonly Pass[] = ['before', 'after'];
const LONGEST_MM = 10_000;

export interface Added {
  readonly job: Job;
  readonly added: readonly string[];
  /** Sent before, with the same content: nothing was done. */
  readonly already: readonly string[];
}

/** Adds readings to a job, all or none, as one revision. Sending them again is harmless. */
export async function addReadings(
  db: Db,
  ctx: Ctx,
  batch: { readonly jobId: number; readonly readings: readonly NewReading[] },
): Promise<Added> {
  const by = signed(ctx, undefined);
  batch.readings.forEach(refuseUnfit);
  return write(db, async (trx) => {
    const row = await jobRow(trx, batch.jobId);
    if (!row) throw noJob(batch.jobId);
    const parts = await partsOf(trx, row.id, row.revision);
    const job = toJob(row, parts);
    const { fresh, already } = await freshOf(trx, job, parts.readings, batch.readings);
    if (fresh.length === 0) return { job, added: [], already };
    refuseClosed(job);
    refuseUnexplained(job, by);
    refuseTooMany(job, parts.readings.length + fresh.length);
    const added = fresh.map((r) => r.id);
    const change = { what: 'reading', body: JSON.stringify({ readings: added }), readings: fresh } as const;
    return { job: await addToJob(trx, by, row, change, parts), added, already };
  });
}

/** The number of the job that holds a reading; null when none does. */
export async function jobWithReading(db: Db, id: string): Promise<string | null> {
  const row = await db
    .selectFrom('reading')
    .innerJoin('job', 'job.id', 'reading.job_id')
    .select('job.number')
    .where('reading.id', '=', id)
    .executeTakeFirst();
  return row?.number ?? null;
}

/** Whether two readings are equal in every field, as a reading sent twice is. */
export function sameContent(a: NewReading, b: NewReading): boolean {
  return (
    a.pass === b.pass &&
    a.kind === b.kind &&
    a.angleDeg === b.angleDeg &&
    a.radiusMm === b.radiusMm &&
    a.valueMm === b.valueMm &&
    a.typed === b.typed &&
    a.gauge === b.gauge &&
    a.doubtful === b.doubtful &&
    a.replaces === b.replaces
  );
}

/** Which of the readings sent are new to the job, and which it has. Throws Refusal for one that cannot be added. */
async function freshOf(
  db: Db,
  job: Job,
  before: readonly Reading[],
  sent: readonly NewReading[],
): Promise<{ readonly fresh: readonly NewReading[]; readonly already: readonly string[] }> {
  const elsewhere = await ofAnotherJob(db, job.id, sent);
  const sentIds = new Set(sent.map(({ id }) => id));
  const known = new Map<string, NewReading>();
  for (const one of before) if (sentIds.has(one.id)) known.set(one.id, one);
  const fresh: NewReading[] = [];
  const already: string[] = [];
  for (const [i, reading] of sent.entries()) {
    const same = known.get(reading.id);
    if (same) {
      if (!sameContent(same, reading)) throw differs(i, reading);
      already.push(reading.id);
      continue;
    }
    if (elsewhere.has(reading.id)) throw differs(i, reading);
    if (reading.replaces !== null) refuseIdleReplacement(i, reading.replaces, before, fresh);
    refuseAfterWithoutCut(job, reading, i);
    known.set(reading.id, reading);
    fresh.push(reading);
  }
  return { fresh, already };
}

/** A database takes only so many values in one statement. */
const IDS_AT_A_TIME = 500;

async function ofAnotherJob(
  db: Db,
  jobId: number,
  sent: readonly NewReading[],
): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  for (let from = 0; from < sent.length; from += IDS_AT_A_TIME) {
    const ids = sent.slice(from, from + IDS_AT_A_TIME).map(({ id }) => id);
    const rows = await db
      .selectFrom('reading')
      .select('id')
      .where('id', 'in', ids)
      .where('job_id', '<>', jobId)
      .execute();
    for (const { id } of rows) found.add(id);
  }
  return found;
}

/** More than a cover is measured with, corrections and all; every page of the job reads them. */
const MOST_READINGS = 4000;

function refuseTooMany({ number }: Job, count: number): void {
  if (count <= MOST_READINGS) return;
  throw refuse(
    'too-many-readings',
    'readings',
    `Job ${number} would have ${count} readings; it can have at most ${MOST_READINGS}. Nothing was saved. Use another job for more.`,
  );
}

function differs(i: number, reading: NewReading): Error {
  return refuse(
    'reading-differs',
    `readings.${i}.id`,
    `The reading ${printable(reading.id)} ("${printable(reading.typed)}") is already recorded with other values. A reading is never changed: send the correction as a new reading that replaces it.`,
  );
}

function refuseIdleReplacement(
  i: number,
  replaces: string,
  before: readonly NewReading[],
  fresh: readonly NewReading[],
): void {
  const was = [before, fresh].flatMap((some) => some.find((one) => one.id === replaces) ?? [])[0];
  const gone = [before, fresh].some((some) => some.some((one) => one.replaces === replaces));
  if (was !== undefined && was.valueMm !== null && !gone) return;
  const why =
    was === undefined
      ? 'is not a reading of this job'
      : 'was replaced or withdrawn already, perhaps on another tablet';
  throw refuse(
    'nothing-to-replace',
    `readings.${i}.replaces`,
    `The reading ${printable(replaces)} ${why}; reload the job and correct the readings it has now.`,
  );
}

function refuseUnfit(reading: NewReading, i: number): void {
  const unfit = (field: keyof NewReading, message: string) =>
    refuse('bad-reading', `readings.${i}.${field}`, message);
  const { id, pass, kind, angleDeg, radiusMm, valueMm, typed, gauge, doubtful, replaces } = reading;
  if (!/^[\w-]{1,64}$/.test(id)) {
    throw unfit(
      'id',
      `"${printable(id)}" cannot be the id of a reading; use 1 to 64 letters, digits and hyphens.`,
    );
  }
  if (!PASSES.includes(pass))
    throw unfit('pass', `A reading is taken before or after the cut, not "${pass}".`);
  if (!KINDS.includes(kind)) throw unfit('kind', `A reading is of kind wall, face or mark, not "${kind}".`);
  if (!(Math.abs(angleDeg) <= 360)) {
    throw unfit(
      'angleDeg',
      `The angle of the reading is ${angleDeg}°; it must be at least -360° and at most 360°.`,
    );
  }
  if (!(radiusMm >= 1 && radiusMm < LONGEST_MM)) {
    throw unfit(
      'radiusMm',
      `The radius of the reading is ${radiusMm} mm; it must be at least 1 mm and less than 10 m.`,
    );
  }
  if (valueMm === null && replaces === null) {
    throw unfit('valueMm', 'A reading without a value withdraws another; say which.');
  }
  if (valueMm !== null && !(Math.abs(valueMm) < LONGEST_MM)) {
    throw unfit('valueMm', `The reading is ${valueMm} mm; it must be a number below 10 m.`);
  }
  if (valueMm !== null && ((kind === 'wall' && valueMm <= 0) || (kind === 'mark' && valueMm < 0))) {
    throw unfit(
      'valueMm',
      `The ${kind} is ${valueMm} mm; it must be ${kind === 'wall' ? 'more than 0' : '0 or more'}.`,
    );
  }
  if (typeof doubtful !== 'boolean')
    throw unfit('doubtful', 'Whether the reading is doubted must be yes or no.');
  if (replaces === id) throw unfit('replaces', 'A reading cannot replace itself.');
  refuseNul(`readings.${i}.typed`, typed);
  refuseNul(`readings.${i}.gauge`, gauge);
}
