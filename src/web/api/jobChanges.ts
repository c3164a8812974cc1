import { addReadingsSchema, receiveJobSchema } from '../../../shared/schemas/jobCalls.ts';
import { dayIn } from '../../../shared/words/day.ts';
import type { DoubtedReading } from '../../../shared/words/finding.ts';
import type { Job, NewReading } from '../../../shared/words/job.ts';
import { turned } from '../../../shared/words/places.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Ctx } from '../../records/database/writing.ts';
import { createJob, jobSentAs } from '../../records/jobs/createJob.ts';
import { allReadings } from '../../records/jobs/history.ts';
import { addReadings } from '../../records/jobs/readings.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { whereItStands } from '../../shop/jobAnswer.ts';
import { receivedFrom } from '../../shop/jobEdits.ts';
import { placesRead } from '../../shop/placesOfJob.ts';
import { sentDoubt } from '../../shop/readingsSent.ts';
import { breathEvery } from '../../shop/work/breath.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import { type JobAnswered, type JobAsked, type JobNeeds, ok } from './call.ts';

export async function receiveCover(needs: JobNeeds, { body }: JobAsked): Promise<JobAnswered> {
  const { id, number, who, received, confirmed } = readBody(receiveJobSchema, body);
  const { db } = needs;
  const made = id === null ? null : await jobSentAs(db, id);
  try {
    const job = await createJob(db, ctxOf(needs, who), {
      ...(id !== null && { sentId: id }),
      ...(number !== null && { number }),
      received: await receivedFrom(db, received, dayAsked(needs, confirmed), RECEIVED),
    });
    return { status: made === null ? 201 : 200, body: whereItStands(made ?? job) };
  } catch (error) {
    if (!(error instanceof Refusal) || error.code !== 'sent-otherwise') throw error;
    throw new ApiError(409, error.code, error.message, error.faults);
  }
}

/** Where in a request that receives a cover its family stands, and the day that may have to be confirmed. */
export const RECEIVED = {
  family: 'received.familyId',
  confirm: 'received.receivedOn',
  comeback: 'received.comebackOf',
};

export function dayAsked({ now, timeZone }: JobNeeds, confirmed: readonly string[], standing?: string) {
  return {
    today: dayIn(timeZone, now()),
    confirmed: confirmed.includes(RECEIVED.confirm),
    standing,
  };
}

export async function takeReadings(needs: JobNeeds, { named, body }: JobAsked): Promise<JobAnswered> {
  const { who, why, readings, confirmed } = readBody(addReadingsSchema, body);
  const { db } = needs;
  const job = await jobNamed(db, named);
  const sentIds = new Set(readings.map(({ id }) => id));
  const sentBefore = (await allReadings(db, job.id)).filter(({ id }) => sentIds.has(id));
  const known = new Map(sentBefore.map((reading) => [reading.id, reading]));
  const doubts: DoubtedReading[] = [];
  const weigh = (sent: NewReading, i: number): NewReading => {
    const reading = { ...sent, angleDeg: turned(sent.angleDeg) };
    const before = known.get(reading.id);
    // One sent before keeps what was made of it then.
    if (before) return { ...reading, doubtful: before.doubtful, confirmed: before.confirmed ?? null };
    const path = `readings.${i}.valueMm`;
    const doubt = sentDoubt(job, reading, readings);
    const lifted = confirmed.includes(path) || confirmed.includes(`readings.${i}`);
    if (doubt !== null && !lifted) {
      const { question, meantMm: probablyMm } = doubt;
      doubts.push({ path, valueMm: reading.valueMm ?? 0, probablyMm, question });
    }
    const doubtful = sent.doubtful || (doubt !== null && !lifted);
    return { ...reading, doubtful, confirmed: doubt !== null && lifted };
  };
  const weighed: NewReading[] = [];
  for (const [i, sent] of readings.entries()) {
    weighed.push(weigh(sent, i));
    await breathEvery(i);
  }
  try {
    const done = await addReadings(db, ctxOf(needs, who, why), { jobId: job.id, readings: weighed });
    return ok({ ...whereItStands(done.job), added: done.added, already: done.already, doubts });
  } catch (error) {
    const late =
      error instanceof Refusal && (error.code === 'nothing-to-replace' || error.code === 'reading-differs');
    throw late ? bothReadings(error, await jobNamed(db, named), weighed) : error;
  }
}

/** A correction that came too late: what stands at its place, and it. */
function bothReadings(error: Refusal, now: Job, sent: readonly NewReading[]): ApiError {
  const yours = sent[Number(/^readings\.(\d+)\./.exec(error.faults[0]?.path ?? '')?.[1])];
  const theirs = yours ? placesRead(now, yours.pass).readAt(yours.kind, yours) : [];
  return new ApiError(409, 'stale', error.message, error.faults, { theirs, yours: yours ?? null });
}

export function ctxOf(needs: JobNeeds, who: string, why = ''): Ctx {
  return { who, why, now: needs.now };
}
