import { setTimeout as pause } from 'node:timers/promises';
import { timesNew } from '../../../shared/words/bending/thanNew.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, GaugeAtHand } from '../../../shared/words/cover.ts';
import { isMeasured } from '../../../shared/words/cover.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import type { Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type {
  BandCompared,
  JudgedTwice,
  OtherLimit,
  PeaksCounted,
} from '../../../shared/words/trends/otherLimit.ts';
import { BIN_NM } from '../../../shared/words/trends/trendsShown.ts';
import { FOLLOWS } from '../../../shared/words/verdicts.ts';
import { wilsonInterval } from '../../calc/measure/wilsonInterval.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { getJob } from '../../records/jobs/readJob.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { measuredJobs, peaksKept, trendFigures } from '../../records/trends/trendFigures.ts';
import { bendingFor } from '../bending/bendings.ts';
import { gaugesAtHand } from '../gauges.ts';
import { jobInput } from '../jobInput.ts';
import { apart } from '../work/apart.ts';
import { breath } from '../work/breath.ts';
import { type Asker, WorkBusy } from '../work/workPool.ts';
import type { Answered } from './judgedUnderBoth.ts';

/** Handed over together: about as many are judged in a tenth of a second. */
const AT_A_TIME = 10;
/** Bending takes too long for more. */
const MOST_BENT = 40;
/** Nobody waits for it: what people ask goes before. */
const ASKER: Asker = { caller: 'another limit', lane: 'scripts' };
const NM_PER_MM = 1e6;

type Step = (what: string, done: number, of: number) => void;

interface Asked {
  readonly job: Job;
  readonly now: CoverCheckInput;
  readonly then: CoverCheckInput;
}

/**
 * Every cover that was measured, judged again from its readings under the shop's limits of today and under a minimum
 * wall that is `byMm` more. The maker's figures stay. How a cover bends is left out of the verdict, as it is of a check
 * that is asked for by itself.
 */
export async function underOtherLimit(
  db: Db,
  byMm: number,
  { lengthUnit, timeZone }: UnitAndZone,
  at: string,
  step: Step,
): Promise<OtherLimit> {
  const { body: criteria, revision } = await currentCriteria(db);
  const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
  const ids = await measuredJobs(db);
  const sums = { judged: 0, left: 0, makers: 0 };
  const changed: { job: Job; one: JudgedTwice; check: CoverCheck }[] = [];
  for (let from = 0; from < ids.length; from += AT_A_TIME) {
    step('Judging covers', from, ids.length);
    const batch: Asked[] = [];
    for (const id of ids.slice(from, from + AT_A_TIME)) {
      const job = await getJob(db, id);
      await breath();
      const asked = job && askedOf(job, criteria, atHand, timeZone, byMm);
      if (asked) batch.push(asked);
      else sums.left += 1;
    }
    const answers = await judgedApart(batch);
    for (const [i, answer] of answers.entries()) {
      const { job } = batch[i]!;
      if (answer === null) {
        sums.left += 1;
        continue;
      }
      sums.judged += 1;
      if (answer.makers) sums.makers += 1;
      if (answer.before === answer.after.verdict) continue;
      changed.push({ job, one: judgedTwice(job, answer), check: answer.after });
    }
  }
  const saved = changed.filter(({ one }) => isSaved(one));
  const bent: JudgedTwice[] = [];
  for (const [i, { job, one, check }] of saved.entries()) {
    if (i < MOST_BENT && criteria.bending) {
      step('Bending of the covers saved', i, Math.min(saved.length, MOST_BENT));
      bent.push({ ...one, peakOverNew: await peakOf(job, check, criteria, lengthUnit) });
    } else bent.push(one);
  }
  const rest = changed.map(({ one }) => one).filter((one) => !isSaved(one));
  const kept = await peaksKept(db);
  return {
    byMm,
    criteriaRevision: revision,
    at,
    ...sums,
    saved: bent,
    lost: rest.filter(isLost),
    otherwise: rest.filter((one) => !isLost(one)),
    bands: await bandsOf(db, bent, BIN_NM[lengthUnit].leftNm),
    peaks: {
      saved: peaksOf(bent),
      ...kept,
      notWorkedOut: bent.filter(({ peakOverNew }) => peakOverNew === null).length,
    },
  };
}

/** Waits for its turn while scripts ask for much. */
async function judgedApart(batch: readonly Asked[]): Promise<readonly (Answered | null)[]> {
  const pairs = batch.map(({ now, then }) => [now, then] as const);
  for (;;) {
    try {
      return await apart('judgedTwice', [pairs], ASKER);
    } catch (error) {
      // On a busy machine fewer at a time are in time; one cover that is not by itself is left out.
      if (error instanceof Refusal) return batch.length === 1 ? [null] : judgedInHalves(batch);
      if (!(error instanceof WorkBusy)) throw error;
      await pause(1000 * error.retryAfterS);
    }
  }
}

async function judgedInHalves(batch: readonly Asked[]): Promise<readonly (Answered | null)[]> {
  const half = Math.ceil(batch.length / 2);
  return [...(await judgedApart(batch.slice(0, half))), ...(await judgedApart(batch.slice(half)))];
}

const used = (verdict: JudgedTwice['before']) =>
  FOLLOWS[verdict] === 'face' || FOLLOWS[verdict] === 'face-and-ring';
const isSaved = ({ before, after }: JudgedTwice) => before === 'replace' && used(after);
const isLost = ({ before, after }: JudgedTwice) => used(before) && after === 'replace';

/** null for a cover that no minimum of the shop applies to. */
function askedOf(
  job: Job,
  criteria: ShopCriteria,
  atHand: readonly GaugeAtHand[],
  timeZone: string,
  byMm: number,
): Asked | null {
  const { input } = jobInput(job, criteria, atHand, timeZone);
  const then = input && withMinimumMoved(input, byMm);
  return input && then && { job, now: input, then };
}

/** The same cover under a minimum of the shop that is `byMm` more; null where the shop has none, or nothing would be left of it. */
export function withMinimumMoved(input: CoverCheckInput, byMm: number): CoverCheckInput | null {
  const standing = input.criteria?.minimumWallMm ?? null;
  if (input.criteria === null || standing === null || standing + byMm <= 0) return null;
  // To a nanometer: 0.165 in less 0.005 in is 0.16 in.
  const minimumWallMm = Math.round((standing + byMm) * NM_PER_MM) / NM_PER_MM;
  return { ...input, criteria: { ...input.criteria, minimumWallMm } };
}

function judgedTwice(job: Job, { before, after }: Answered): JudgedTwice {
  return {
    number: job.number,
    coverType: job.sections.received?.body.family.name ?? '',
    before,
    after: after.verdict,
    minimumMm: after.minimumWall?.mm ?? 0,
    leftMm: after.leastWall?.afterMm ?? null,
    confidence: after.conformanceProbability,
    peakOverNew: null,
  };
}

async function peakOf(
  job: Job,
  check: CoverCheck,
  criteria: ShopCriteria,
  unit: UnitAndZone['lengthUnit'],
): Promise<number | null> {
  if (!isMeasured(check)) return null;
  const family = job.sections.received?.body.family ?? null;
  const { bending } = await bendingFor({
    family,
    criteria,
    check,
    unit,
    only: ['new', 'after'],
    asker: ASKER,
  });
  const of = (id: 'new' | 'after') => bending?.cases.find((one) => one.id === id)?.peakOverMean;
  const [fresh, after] = [of('new'), of('after')];
  if (fresh === undefined || after === undefined) return null;
  const times = timesNew(after, fresh);
  return Math.max(times.rigid, times.conforming);
}

function peaksOf(some: readonly JudgedTwice[]): PeaksCounted {
  const peaks = some.flatMap(({ peakOverNew }) => (peakOverNew === null ? [] : [peakOverNew]));
  if (peaks.length === 0) return { n: 0, mean: null, most: null };
  return {
    n: peaks.length,
    mean: peaks.reduce((sum, one) => sum + one, 0) / peaks.length,
    most: Math.max(...peaks),
  };
}

/** The covers saved by the wall they would have kept, beside all that were released with so much. */
async function bandsOf(
  db: Db,
  saved: readonly JudgedTwice[],
  leftNm: number,
): Promise<readonly BandCompared[]> {
  const { byWallLeft } = await trendFigures(db, {}, { wallNm: leftNm, cutNm: leftNm, leftNm });
  const bins = new Map<number, number>();
  for (const { leftMm } of saved) {
    if (leftMm === null) continue;
    const bin = Math.floor(Math.round(leftMm * NM_PER_MM) / leftNm);
    bins.set(bin, (bins.get(bin) ?? 0) + 1);
  }
  return [...bins]
    .sort(([a], [b]) => a - b)
    .map(([bin, n]) => {
      const { released = 0, back = 0 } = byWallLeft.find((one) => one.bin === bin) ?? {};
      return {
        fromMm: (bin * leftNm) / NM_PER_MM,
        toMm: ((bin + 1) * leftNm) / NM_PER_MM,
        saved: n,
        released,
        back,
        interval: released === 0 ? null : wilsonInterval(back, released),
      };
    });
}
