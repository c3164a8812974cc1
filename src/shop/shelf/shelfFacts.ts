import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import type { Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { ShelfAgainst, ShelfFacts } from '../../../shared/words/shelf.ts';
import type { Db } from '../../records/database/database.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { coversOnShelf, type OnShelf } from '../../records/shelf/shelfChanges.ts';
import { inputOnceCut } from '../afterCut.ts';
import { type JobAnswer, jobAnswer } from '../jobAnswer.ts';
import { jobUnder } from '../jobUnder.ts';
import { Remembered } from '../remembered.ts';
import { resurfacedMmOf } from '../studs/forJob.ts';
import { numbersOf } from '../work/apart.ts';
import { breath } from '../work/breath.ts';
import type { Asker } from '../work/workPool.ts';

/** What counts of a job while its cover lies on the shelf, as the job now stands. */
export async function shelfFactsOf(
  db: Db,
  job: Job,
  writing: UnitAndZone,
  asker?: Asker,
): Promise<ShelfFacts> {
  const under = await jobUnder(db, job, writing);
  const answer = await jobAnswer(job, { ...under, bendingAsKept: true }, { asker });
  const studs = job.sections.studs?.body ?? null;
  return {
    jobRevision: job.revision,
    allowanceMm: under.criteria.cleanUpAllowanceMm,
    family: job.sections.received!.body.family,
    ...(await wallsOf(job, answer, asker)),
    signed: job.stage === 'signed',
    studs: studs && { id: studs.studId, stud: studs.stud },
    resurfacedMm: resurfacedMmOf(job),
    crankPilotMm: job.sections.setup?.body.knockOn?.crankPilotMm ?? null,
    against: againstOf(job, answer),
  };
}

const anew = new Remembered<ShelfFacts>(2000);

/** Every cover on the shelf. Where its job or the clean-up allowance changed since, what counts is worked out anew. */
export async function shelfNow(
  db: Db,
  criteria: ShopCriteria,
  writing: UnitAndZone,
  asker?: Asker,
): Promise<readonly OnShelf[]> {
  const covers: OnShelf[] = [];
  for (const cover of await coversOnShelf(db)) {
    const { facts, jobId, jobRevision } = cover;
    const isOld = facts.jobRevision !== jobRevision || facts.allowanceMm !== criteria.cleanUpAllowanceMm;
    if (!isOld) {
      covers.push(cover);
      continue;
    }
    const key = Remembered.key([jobId, jobRevision, cover.place, criteria]);
    const known = anew.get(key) ?? (await factsAnew(db, jobId, writing, asker));
    anew.set(key, known);
    covers.push({ ...cover, facts: known });
    await breath();
  }
  return covers;
}

async function factsAnew(
  db: Db,
  jobId: number,
  writing: UnitAndZone,
  asker: Asker | undefined,
): Promise<ShelfFacts> {
  return shelfFactsOf(db, (await getJob(db, jobId))!, writing, asker);
}

type Walls = Pick<ShelfFacts, 'wallsAre' | 'wallsMm' | 'errors'>;

/** The walls left: measured after the cut, else what the cut made should have left, else what facing would leave. */
async function wallsOf(job: Job, answer: JobAnswer, asker: Asker | undefined): Promise<Walls> {
  const cut = inputOnceCut(job);
  const input: CoverCheckInput | null = cut?.input ?? answer.input;
  const wallsAre = cut === null ? 'to-cut' : cut.measured ? 'measured' : 'cut';
  const none: Walls = { wallsAre, wallsMm: [], errors: null };
  if (input === null || input.stations.length === 0) return none;
  try {
    const { cut: facing, uncertainty } = await numbersOf(input, asker);
    return {
      wallsAre,
      wallsMm: facing.wallsAfterMm,
      errors: uncertainty && { commonMm: uncertainty.commonMm, ownMm: uncertainty.ownMm },
    };
  } catch (error) {
    if (error instanceof Refusal) return none;
    throw error;
  }
}

function againstOf(job: Job, { input, stands }: JobAnswer): ShelfAgainst | null {
  if (job.stage === 'closed') return 'closed';
  if (input?.crackTest === 'found') return 'crack';
  if (input?.inspectionFailures.some(({ final }) => final)) return 'fault';
  if (job.outcome === 'replace') return 'replaced';
  if (stands === null || stands.leastWall === null) return 'not-measured';
  return job.outcome === null && stands.verdict === 'replace' ? 'too-thin' : null;
}
