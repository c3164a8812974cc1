import type { Entry, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { GaugeAtHand } from '../../../shared/words/cover.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import type { Job, RingWelded } from '../../../shared/words/job.ts';
import { checkCover } from '../../calc/cover/checkCover.ts';
import { checkJob, type JobAnswer } from '../jobAnswer.ts';
import { keptBending } from '../jobKept.ts';
import { type BendingAsked, type BendingTold, bendingFor, setBeside } from './bendings.ts';

export interface BentJob {
  readonly answer: JobAnswer;
  /** null while there is nothing to reckon from. */
  readonly told: BendingTold | null;
}

/** What the job's standing readings say, how the cover then bends, and, where the shop has set a limit on that, the verdict with it. */
export async function bentJob(
  job: Job,
  criteria: ShopCriteria,
  writing: UnitAndZone,
  atHand: readonly GaugeAtHand[],
  more: Pick<BendingAsked, 'other' | 'signal'> = {},
): Promise<BentJob> {
  const answer = checkJob(job, criteria, writing, atHand);
  const { input, check } = answer;
  const unit = writing.lengthUnit;
  if (input === null || check === null) return { answer, told: null };
  const family = job.sections.received?.body.family ?? null;
  const told = await bendingFor({ family, criteria, check, unit, welded: weldOf(job), ...more });
  if (told.findings.length === 0) return { answer, told };
  return { answer: { ...answer, check: checkCover(input, unit, told.findings) }, told };
}

/**
 * What the page of a job shows: how it bends as kept while its decision stands, else as it now is.
 */
export async function bendingShown(
  job: Job,
  criteria: ShopCriteria,
  writing: UnitAndZone,
  { atHand, ...more }: Pick<BendingAsked, 'other' | 'signal'> & { readonly atHand: readonly GaugeAtHand[] },
): Promise<{ answer: JobAnswer; bending: Pick<BendingTold, 'bending' | 'why' | 'besideWhy'> | null }> {
  const kept = keptBending(job);
  if (kept !== null) {
    const { other, signal } = more;
    const shown = other ? await setBeside(kept, other, criteria, signal) : { bending: kept, besideWhy: null };
    return { answer: checkJob(job, criteria, writing, atHand), bending: { ...shown, why: null } };
  }
  const { answer, told } = await bentJob(job, criteria, writing, atHand, more);
  return { answer, bending: told };
}

export function weldOf(job: Job): RingWelded | null {
  return job.sections.setup?.body.ringWelded ?? null;
}

/** The family to set beside it, where one was chosen and is there. */
export function besideOf(families: readonly Entry<'family'>[], id: string | undefined) {
  const other = families.find((one) => one.id === id);
  return other ? { id: other.id, family: other.body } : null;
}
