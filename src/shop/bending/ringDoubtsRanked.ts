import type { Bending } from '../../../shared/words/bending/bending.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { stiffnessFindings } from '../../calc/judge/stiffnessFindings.ts';
import { bendingCase } from '../../calc/plate/bendingCases.ts';
import type { Db } from '../../records/database/database.ts';
import { type RingClosed, ringDoubts } from '../../records/jobs/ringDoubts.ts';
import { WorkFailed } from '../work/workPool.ts';
import { bothPistons } from './bendings.ts';

export interface RingDoubt {
  readonly job: Job;
  /** The cover without its ring, as it is worked out today; null where that cannot be. */
  readonly bare: Finding | null;
}

/**
 * Signed jobs that counted on a ring nobody recorded as joined to the pads, the worst first: the farther past its limit
 * the cover is without the ring, the sooner; one that cannot be worked out before all others.
 */
export async function ringDoubtsWorstFirst(
  db: Db,
  unit: LengthUnit,
): Promise<{ readonly open: readonly RingDoubt[]; readonly closed: readonly RingClosed[] }> {
  const { open, closed } = await ringDoubts(db);
  const found: RingDoubt[] = [];
  for (const job of open) found.push({ job, bare: await bareOf(job, unit) });
  return { open: found.sort((a, b) => farPast(b.bare) - farPast(a.bare) || a.job.id - b.job.id), closed };
}

function farPast(bare: Finding | null): number {
  const { value = null, limit = null } = bare ?? {};
  return value === null || limit === null ? Number.POSITIVE_INFINITY : value / limit;
}

async function bareOf(job: Job, unit: LengthUnit): Promise<Finding | null> {
  const bending = job.sections.decision?.body.bending ?? null;
  if (bending === null) return null;
  try {
    const cases = await bareCases(bending);
    const judged = { cases, welded: false, base: bending.base };
    const limits = bending.limits;
    return stiffnessFindings({ limits, bending: judged, why: null, ringAllowed: false, unit })[0] ?? null;
  } catch (error) {
    if (error instanceof Refusal || error instanceof WorkFailed) return null;
    throw error;
  }
}

async function bareCases({ base, cases }: Bending) {
  const asked = cases.filter(({ id }) => id === 'new' || id === 'after');
  return Promise.all(
    asked.map(async ({ id, trackWallMm }) => {
      const one = { id, base, trackWallMm, ring: null };
      return bendingCase(one, await bothPistons(one), null);
    }),
  );
}
