import type { Bending } from '../../shared/words/bending.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Job } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { Db } from '../records/database/database.ts';
import { type CurrentCriteria, criteriaAt, currentCriteria } from '../records/shopCriteria.ts';
import { verifyJob } from './jobAnswer.ts';

/** The criteria a job is worked out under: today's for the job as it stands, those of that day for an earlier state. */
export async function criteriaFor(db: Db, job: Job, asItWas: number | null): Promise<CurrentCriteria> {
  return asItWas === null ? currentCriteria(db) : criteriaAt(db, job.changedAt);
}

/** The answer kept with the decision, while that stands. */
export function keptCheck(job: Job): CoverCheck | null {
  return job.outcome === null ? null : (job.sections.decision?.body.check ?? null);
}

/** How it bends, as it was kept with the decision, while that stands. */
export function keptBending(job: Job): Bending | null {
  return job.outcome === null ? null : (job.sections.decision?.body.bending ?? null);
}

/** What was measured after the cut: as it was found at signing where the signature stands, else as found now. */
export function verifiedOf(job: Job, criteria: ShopCriteria, unit: LengthUnit): readonly Finding[] {
  const signed = job.stage === 'signed' ? job.sections.signature?.body.verified : undefined;
  return signed ?? verifyJob(job, criteria, unit);
}
