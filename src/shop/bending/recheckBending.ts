import type { Bending, BendingCase } from '../../../shared/words/bending/bending.ts';
import { STATUS_WORD } from '../../../shared/words/finding.ts';
import type { Decision } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { bendingAnswersOtherwise, type Otherwise } from '../../calc/judge/answersOtherwise.ts';
import { stiffnessFindings } from '../../calc/judge/stiffnessFindings.ts';
import { PLATE_CALC_VERSION } from '../../calc/plate/bendCover.ts';
import { bendingCase } from '../../calc/plate/bendingCases.ts';
import { changedNow, refusedNow } from '../recheck.ts';
import { WorkFailed } from '../work/workPool.ts';
import { bothPistons } from './bendings.ts';

/** Says so when today's calculation would answer otherwise for how it bends; null where it would not, or nothing was kept. */
export async function recheckBending({ bending, check }: Decision, unit: LengthUnit): Promise<string | null> {
  if (!bending) return null;
  const versions = { kept: bending.calcVersion, now: PLATE_CALC_VERSION };
  const otherwise: Otherwise[] = [];
  try {
    const cases: BendingCase[] = [];
    for (const kept of bending.cases) {
      const { id, trackWallMm } = kept;
      const ring = kept.ring?.joinedToPads === true ? kept.ring : null;
      const other = id === 'other' ? bending.other : null;
      const base = other ? other.base : bending.base;
      const heat = other?.heat === undefined ? bending.heat : other.heat;
      const asked = { id, base, trackWallMm, ring };
      const now = bendingCase(asked, await bothPistons(asked), heat);
      cases.push(now);
      otherwise.push(...bendingAnswersOtherwise(kept, now, unit));
    }
    otherwise.unshift(...foundOtherwise(check, { ...bending, cases }));
  } catch (error) {
    if (error instanceof WorkFailed) return null;
    if (!(error instanceof Refusal)) throw error;
    return refusedNow('decision', versions, error.message);
  }
  return otherwise.length === 0 ? null : changedNow('decision', versions, otherwise);
}

/** Where a limit of the shop on bending is found otherwise today. */
function foundOtherwise({ findings }: Decision['check'], bending: Bending): Otherwise[] {
  const now = stiffnessFindings({
    limits: bending.limits,
    bending,
    why: null,
    ringAllowed: findings.some(({ id }) => id === 'stiffness-with-ring'),
    unit: 'mm',
  });
  return now.flatMap(({ id, title, status }) => {
    const kept = findings.find((one) => one.id === id)?.status;
    if (kept === undefined || kept === status) return [];
    return [{ what: title.toLowerCase(), kept: STATUS_WORD[kept], now: STATUS_WORD[status] }];
  });
}
