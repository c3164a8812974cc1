import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverCheckInput, GaugeAtHand } from '../../shared/words/cover.ts';
import type { UnitAndZone } from '../../shared/words/day.ts';
import type { MasterCheck } from '../../shared/words/gauges/masterChecks.ts';
import type { ListForJob } from '../../shared/words/inspection.ts';
import type { Job } from '../../shared/words/job.ts';
import { type Fault, Refusal } from '../../shared/words/refusal.ts';
import { COVER_CALC_VERSION, checkWhatIsThere } from '../calc/cover/checkCover.ts';
import type { CoverNumbers } from '../calc/cover/coverNumbers.ts';
import { missingOf } from '../calc/job/jobStage.ts';
import { PLATE_CALC_VERSION } from '../calc/plate/bendCover.ts';
import { type BendingTold, bendingFor, lasts, toldAsKept, weldOf } from './bending/bendings.ts';
import { jobInput } from './jobInput.ts';
import { type JobRest, restOfJob } from './jobRest.ts';
import { Remembered } from './remembered.ts';
import { apart, isLarge, judged, numbersOf } from './work/apart.ts';
import type { Asker } from './work/workPool.ts';

/** What a job is worked out under, beside its own records. */
export interface JobUnder {
  readonly criteria: ShopCriteria;
  /** The gauges the shop has for walls. */
  readonly atHand: readonly GaugeAtHand[];
  /** Of the gauges the job was measured with. */
  readonly masterChecks: readonly MasterCheck[];
  /** The inspection lists for its cover type, as they are now; left out where nobody asks about them. */
  readonly lists?: readonly ListForJob[];
  /** Unit of the sentences, and the zone of the shop's days. */
  readonly writing: UnitAndZone;
  /** Nothing of the bending is worked out that was not kept with the decision. */
  readonly bendingAsKept?: boolean;
}

/** A job worked out once: page, sheet, JSON, decision and signature all read here. */
export interface JobAnswer extends JobRest {
  readonly input: CoverCheckInput | null;
  /** What the readings that stand say now; null while there are none, or where they cannot be used. */
  readonly check: CoverCheck | null;
  readonly faults: readonly Fault[];
  /** How it bends, as kept while the decision stands; null while there is nothing to reckon from. */
  readonly bending: BendingTold | null;
}

const remembered = new Remembered<JobAnswer>(100);
const workedOut = new Remembered<CoverNumbers>(100);
const VERSIONS = [COVER_CALC_VERSION, PLATE_CALC_VERSION];

/**
 * A job's answer, worked out once and remembered for as long as nothing it rests on changes. `anew`: as if nothing had
 * been decided, which is what a decision is made on. Throws NotWanted once the asker is gone.
 */
export async function jobAnswer(
  job: Job,
  under: JobUnder,
  { anew = false, asker }: { readonly anew?: boolean; readonly asker?: Asker | undefined } = {},
): Promise<JobAnswer> {
  const asked = anew && job.outcome !== null ? { ...job, outcome: null } : job;
  const { criteria, atHand, masterChecks, lists = [], writing, bendingAsKept = false } = under;
  const { lengthUnit, timeZone } = writing;
  const of = Remembered.keyOf(asked);
  const key = Remembered.key([
    of,
    criteria,
    atHand,
    masterChecks,
    lists,
    lengthUnit,
    timeZone,
    bendingAsKept,
    VERSIONS,
  ]);
  const found = remembered.get(key);
  if (found !== undefined) return found;
  const answer = await workOut(asked, under, asker);
  if (answer.bending === null || lasts(answer.bending)) remembered.set(key, answer);
  return answer;
}

/** More readings than a cover is measured at by hand: what rests on them is worked out beside the requests. */
const MOST_READINGS_AT_ONCE = 150;

async function workOut(job: Job, under: JobUnder, asker: Asker | undefined): Promise<JobAnswer> {
  const { criteria, lists = [], writing } = under;
  const { numbers, ...said } = await checked(job, under, asker);
  const known = [job, { criteria, lists }, writing.lengthUnit, numbers, said.check] as const;
  const large = job.readings.length > MOST_READINGS_AT_ONCE || (said.input !== null && isLarge(said.input));
  const rest = large ? await apart('rest', [...known], asker) : restOfJob(...known);
  return { ...rest, ...said };
}

/** A signature changes no reading: the paper that is kept with it has the numbers it was signed on. */
async function numbersOnce(input: CoverCheckInput, asker: Asker | undefined): Promise<CoverNumbers> {
  const key = Remembered.key([input, COVER_CALC_VERSION]);
  const known = workedOut.get(key) ?? (await numbersOf(input, asker));
  workedOut.set(key, known);
  return known;
}

/** What the readings say; where the shop has set a limit on bending, with what is found on that. */
async function checked(
  job: Job,
  { criteria, atHand, masterChecks, writing, bendingAsKept = false }: JobUnder,
  asker: Asker | undefined,
): Promise<Pick<JobAnswer, 'input' | 'check' | 'faults' | 'bending'> & { numbers: CoverNumbers | null }> {
  const { input, faults } = jobInput(job, criteria, atHand, writing.timeZone, masterChecks);
  const unit = writing.lengthUnit;
  const kept = job.outcome === null ? null : (job.sections.decision?.body.bending ?? null);
  const family = job.sections.received?.body.family ?? null;
  const asKept = kept && toldAsKept(kept, family, criteria, unit);
  const none = { input: null, numbers: null, check: null, bending: asKept };
  if (input === null) return { ...none, faults };
  try {
    if (input.stations.length === 0)
      return { ...none, input, check: checkWhatIsThere(input, unit), faults: [] };
    const numbers = await numbersOnce(input, asker);
    const bare = await judged(numbers, unit, [], asker);
    const further = { family, criteria, check: bare, unit, welded: weldOf(job), asker };
    const bending = asKept ?? (bendingAsKept ? null : await bendingFor(further));
    const found = bending?.findings ?? [];
    const check = found.length === 0 ? bare : await judged(numbers, unit, found, asker);
    return { input, numbers, check, faults: [], bending };
  } catch (error) {
    if (error instanceof Refusal) return { ...none, faults: error.faults };
    throw error;
  }
}

/** Where a job stands after a change, and what still keeps it from being signed. */
export function whereItStands(job: Job) {
  const { number, revision, stage, outcome } = job;
  return { number, revision, stage, outcome, missing: missingOf(job) };
}
