import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, GaugeAtHand } from '../../shared/words/cover.ts';
import type { UnitAndZone } from '../../shared/words/day.ts';
import { type Job, OPEN_STAGES } from '../../shared/words/job.ts';
import { type LengthUnit, MM_PER_STEP, printLength, wholeSteps } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { VERDICT_WORD } from '../../shared/words/verdicts.ts';
import { checkWhatIsThere } from '../calc/cover/checkCover.ts';
import { listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import { findJobs } from '../records/jobs/findJobs.ts';
import { getJob } from '../records/jobs/readJob.ts';
import { gaugesAtHand } from './gauges.ts';
import { jobInput } from './jobInput.ts';
import { judged, numbersOf } from './work/apart.ts';
import { breath } from './work/breath.ts';

/** An open job whose answer other limits would change. */
export interface AnswerChange {
  readonly number: string;
  readonly coverType: string;
  /** "Face it, 0.0120 in". */
  readonly before: string;
  readonly after: string;
}

/** More open jobs than any shop has on its benches. */
const MOST_JOBS = 200;

/**
 * The open jobs that would be answered otherwise under other limits. A decided job keeps the limits it was decided under.
 * How a cover bends is left out: it takes too long for every job, and each job says it when it is opened.
 */
export async function answersChanged(
  db: Db,
  now: ShopCriteria,
  then: ShopCriteria,
  writing: UnitAndZone,
): Promise<AnswerChange[]> {
  const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
  const { jobs } = await findJobs(db, { stage: OPEN_STAGES, limit: MOST_JOBS });
  const changes: AnswerChange[] = [];
  for (const { id, number } of jobs) {
    const job = await getJob(db, id);
    if (job === null || job.outcome !== null) continue;
    const before = await answerUnder(job, now, atHand, writing);
    const after = await answerUnder(job, then, atHand, writing);
    await breath();
    if (before == null || after == null || before === after) continue;
    const coverType = job.sections.received?.body.family.name ?? '';
    changes.push({ number, coverType, before, after });
  }
  return changes;
}

/** null while nothing is measured. */
async function answerUnder(
  job: Job,
  limits: ShopCriteria,
  atHand: readonly GaugeAtHand[],
  { lengthUnit, timeZone }: UnitAndZone,
): Promise<string | null> {
  const { input, faults } = jobInput(job, limits, atHand, timeZone);
  if (input === null) return faults.length > 0 ? 'cannot be worked out' : null;
  try {
    const check =
      input.stations.length === 0
        ? checkWhatIsThere(input, lengthUnit)
        : await judged(await numbersOf(input), lengthUnit);
    return inFewWords(check, lengthUnit);
  } catch (error) {
    if (error instanceof Refusal) return 'cannot be worked out';
    throw error;
  }
}

function inFewWords({ verdict, cut }: CoverCheck, unit: LengthUnit): string {
  if (cut === null || (verdict !== 'face' && verdict !== 'face-if-sound')) return VERDICT_WORD[verdict];
  const depth = wholeSteps(cut.dialledMm, unit, 'up') * MM_PER_STEP[unit];
  return `${VERDICT_WORD[verdict]}, ${printLength(depth, unit)}`;
}
