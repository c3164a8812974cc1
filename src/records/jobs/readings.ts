import type { Job, NewReading, Pass, Reading, ReadingKind } from '../../../shared/words/job.ts';
import { currentReadings } from '../../calc/job/jobStage.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { type Ctx, printable, refuseNul, signed } from '../database/writing.ts';
import { readingsOf } from './readingRows.ts';
import { getJob, jobRow, noJob } from './readJob.ts';
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
    const job = await getJob(trx, batch.jobId);
    if (!row || !job) throw noJob(batch.jobId);
    const known: (Reading | NewReading)[] = [...(await readingsOf(trx, row.id, row.revision))];
    const fresh: NewReading[] = [];
    const already: string[] = [];
    for (const [i, reading] of batch.readings.entries()) {
      const same = known.find((k) => k.id === reading.id);
      if (same) {
        if (!sameContent(same, reading)) throw differs(i, reading);
        already.push(reading.id);
        continue;
      }
      if (await isOfAnotherJob(trx, reading.id)) throw differs(i, reading);
      if (reading.replaces !== null) refuseIdleReplacement(i, reading.replaces, known);
      refuseAfterWithoutCut(job, reading, i);
      known.push(reading);
      fresh.push(reading);
    }
    if (fresh.length === 0) return { job, added: [], already };
    refuseClosed(job);
    refuseUnexplained(job, by);
    const added = fresh.map((r) => r.id);
    const body = JSON.stringify({ readings: added });
    return { job: await addToJob(trx, by, row, { what: 'reading', body, readings: fresh }), added, already };
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

async function isOfAnotherJob(db: Db, id: string): Promise<boolean> {
  const row = await db.selectFrom('reading').select('job_id').where('id', '=', id).executeTakeFirst();
  return row !== undefined;
}

function differs(i: number, reading: NewReading): Error {
  return refuse(
    'reading-differs',
    `readings.${i}.id`,
    `The reading ${printable(reading.id)} ("${printable(reading.typed)}") is already recorded with other values. A reading is never changed: send the correction as a new reading that replaces it.`,
  );
}

function refuseIdleReplacement(i: number, replaces: string, known: readonly (Reading | NewReading)[]): void {
  if (currentReadings(known).some((r) => r.id === replaces)) return;
  const was = known.find((r) => r.id === replaces);
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
