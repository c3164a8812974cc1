import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import type { Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { RestedOn, Wrong } from '../../../shared/words/trends/wrong.ts';
import { FOLLOWS } from '../../../shared/words/verdicts.ts';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { coversOnShelf } from '../../records/shelf/shelfChanges.ts';
import { jobsResting, wrongFrom } from '../../records/trends/wrong.ts';
import { afterCut } from '../afterCut.ts';
import { jobInput } from '../jobInput.ts';
import { jobUnder } from '../jobUnder.ts';
import { judged, numbersOf } from '../work/apart.ts';
import { breath } from '../work/breath.ts';
import { readAgain } from './readAgain.ts';

/** More than these are not judged at once; closing some brings up others. */
const MOST_JUDGED = 100;

/** The jobs that rested on it, those to be looked at first before the others, and closed ones at the end. */
export async function restedOn(db: Db, wrong: Wrong, writing: UnitAndZone): Promise<readonly RestedOn[]> {
  const resting = await jobsResting(db, wrong, writing.timeZone);
  const onShelf = new Map((await coversOnShelf(db)).map((one) => [one.jobId, one]));
  const jobs: RestedOn[] = [];
  let looked = 0;
  for (const one of resting) {
    const judge = one.closed === null && looked < MOST_JUDGED;
    const job = judge ? await getJob(db, one.jobId) : null;
    if (judge) looked += 1;
    const lies = onShelf.get(one.jobId);
    jobs.push({
      ...one,
      shelf: lies ? { lies: lies.lies, forJob: lies.forJob } : null,
      before: job?.sections.decision?.body.check.verdict ?? null,
      waits: one.closed === null && !judge,
      ...(job ? await judgedAgain(db, job, wrong, writing) : NOT_JUDGED),
    });
    await breath();
  }
  return jobs.sort((a, b) => weight(a) - weight(b));
}

type Again = Pick<RestedOn, 'now' | 'thinAfter'>;
const NOT_JUDGED: Again = { now: null, thinAfter: null };

/**
 * Under the limits, the calculation and the cover type of today, and with what is right of its gauge. Nothing where what was
 * wrong is in its studs, or where nobody said what is right of the gauge.
 */
async function judgedAgain(db: Db, job: Job, wrong: Wrong, writing: UnitAndZone): Promise<Again> {
  const { what, biasMm, calibrationUMm } = wrong;
  if (what === 'stack' || what === 'stud' || what === 'stud-calc') return NOT_JUDGED;
  if (what === 'gauge' && biasMm === null && calibrationUMm === null) return NOT_JUDGED;
  const under = await jobUnder(db, job, writing);
  const right =
    what === 'family'
      ? await withTypeOfToday(db, job)
      : what === 'gauge'
        ? readAgain(job, { ...wrong, from: wrongFrom(wrong, writing.timeZone) })
        : job;
  const { input } = jobInput(right, under.criteria, under.atHand, writing.timeZone, under.masterChecks);
  if (input === null || input.stations.length === 0) return NOT_JUDGED;
  try {
    const { verdict } = await judged(await numbersOf(input), writing.lengthUnit);
    return { now: verdict, thinAfter: what === 'gauge' ? thinOnceCut(right, under.criteria, writing) : null };
  } catch (error) {
    if (error instanceof Refusal) return NOT_JUDGED;
    throw error;
  }
}

/** What was measured after the cut, where that is below the minimum it was decided under. */
function thinOnceCut(job: Job, criteria: ShopCriteria, { lengthUnit }: UnitAndZone): string | null {
  const { found } = afterCut(job, criteria, lengthUnit);
  return found.find(({ id, status }) => id === 'after-wall' && status === 'fail')?.sentence ?? null;
}

async function withTypeOfToday(db: Db, job: Job): Promise<Job> {
  const { received } = job.sections;
  const entry = received && (await getEntry(db, 'family', received.body.familyId));
  if (!entry) return job;
  const body = { ...received.body, family: entry.body, familyRevision: entry.revision };
  return { ...job, sections: { ...job.sections, received: { ...received, body } } };
}

/**
 * The worst first: released and now too thin or to be replaced, released and not known, released and otherwise; then the
 * same of what is still here, covers kept on the shelf for a job before the others.
 */
function weight({ closed, waits, stage, outcome, before, now, thinAfter, shelf }: RestedOn): number {
  if (closed !== null) return 90;
  if (waits) return 80;
  const used = outcome === 'face' || outcome === 'face-and-ring';
  const worse = used && (now === 'replace' || thinAfter !== null);
  const differs = before !== null && now !== null && FOLLOWS[before] !== FOLLOWS[now];
  const out = stage === 'signed' && used && shelf === null ? 0 : shelf?.forJob != null ? 10 : shelf ? 20 : 30;
  if (worse) return out;
  if (now === null) return out + 1;
  return differs ? out + 2 : out + 3;
}
