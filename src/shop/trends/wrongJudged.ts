import type { Verdict } from '../../../shared/words/cover.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import type { Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { FOLLOWS } from '../../../shared/words/verdicts.ts';
import type { RestedOn, Wrong } from '../../../shared/words/wrong.ts';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { jobsResting } from '../../records/trends/wrong.ts';
import { jobInput } from '../jobInput.ts';
import { jobUnder } from '../jobUnder.ts';
import { judged, numbersOf } from '../work/apart.ts';
import { breath } from '../work/breath.ts';

/** More than these are not judged at once; closing some brings up others. */
const MOST_JUDGED = 100;

/** The jobs that rested on it, those to be looked at first before the others, and closed ones at the end. */
export async function restedOn(db: Db, wrong: Wrong, writing: UnitAndZone): Promise<readonly RestedOn[]> {
  const resting = await jobsResting(db, wrong, writing.timeZone);
  const jobs: RestedOn[] = [];
  let looked = 0;
  for (const one of resting) {
    const judge = one.closed === null && looked < MOST_JUDGED;
    const job = judge ? await getJob(db, one.jobId) : null;
    if (judge) looked += 1;
    jobs.push({
      ...one,
      before: job?.sections.decision?.body.check.verdict ?? null,
      waits: one.closed === null && !judge,
      now: job && (await judgedAgain(db, job, wrong, writing)),
    });
    await breath();
  }
  return jobs.sort((a, b) => weight(a) - weight(b));
}

/** Under the limits, the calculation and the cover type of today; null where what was wrong is in its readings or its studs. */
async function judgedAgain(db: Db, job: Job, { what }: Wrong, writing: UnitAndZone): Promise<Verdict | null> {
  if (what === 'gauge' || what === 'stack' || what === 'stud' || what === 'stud-calc') return null;
  const under = await jobUnder(db, job, writing);
  const right = what === 'family' ? await withTypeOfToday(db, job) : job;
  const { input } = jobInput(right, under.criteria, under.atHand, writing.timeZone, under.masterChecks);
  if (input === null || input.stations.length === 0) return null;
  try {
    return (await judged(await numbersOf(input), writing.lengthUnit)).verdict;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

async function withTypeOfToday(db: Db, job: Job): Promise<Job> {
  const { received } = job.sections;
  const entry = received && (await getEntry(db, 'family', received.body.familyId));
  if (!entry) return job;
  const body = { ...received.body, family: entry.body, familyRevision: entry.revision };
  return { ...job, sections: { ...job.sections, received: { ...received, body } } };
}

/** The worst first: released and now to be replaced, released and not known, released and otherwise, then what is still here. */
function weight({ closed, waits, stage, outcome, before, now }: RestedOn): number {
  if (closed !== null) return 9;
  if (waits) return 8;
  const used = outcome === 'face' || outcome === 'face-and-ring';
  const worse = used && now === 'replace';
  const differs = before !== null && now !== null && FOLLOWS[before] !== FOLLOWS[now];
  const out = stage === 'signed' && used ? 0 : 4;
  if (worse) return out;
  if (now === null) return out + 1;
  return differs ? out + 2 : out + 3;
}
