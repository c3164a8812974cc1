import { asking, type Doubt } from '../../../shared/quantity/doubt.ts';
import {
  asTyped,
  lengthText,
  meantBetween,
  meantNear,
  type TypedLength,
} from '../../../shared/quantity/slip.ts';
import type { Job } from '../../../shared/words/job.ts';
import { countingPasses } from '../../../shared/words/passes.ts';

/** A pass this much deeper than what is left of the decided cut is asked about (common practice, no source). */
const DEEPER_MM = 0.02;

/** What is left of the decided cut; null where nothing is decided. Below zero where more was cut. */
export function restOfCut(job: Job): number | null {
  const decision = job.sections.decision?.body;
  if (!decision || decision.decision === 'replace') return null;
  const cutMm = countingPasses(job).reduce((sum, { depthMm }) => sum + depthMm, 0);
  return decision.check.cut.dialledMm - cutMm;
}

/** Asks about a pass of 3.1 where 0.31 is left to cut. null where there is nothing to ask, or nothing decided. */
export function passDoubt(typed: TypedLength, restMm: number | null): Doubt | null {
  if (restMm === null || typed.valueMm <= Math.max(restMm, 0) + DEEPER_MM + 1e-9) return null;
  const left = Math.max(restMm, 0);
  const why =
    left < 1e-9
      ? 'None of the decided cut is left.'
      : `${lengthText(Number(left.toFixed(4)), typed.unit, typed.decimalSign)} of the decided cut is left.`;
  const meant =
    left > DEEPER_MM
      ? (meantNear(typed, left, DEEPER_MM) ?? meantBetween(typed, left / 20, left + DEEPER_MM))
      : null;
  return asking(`${asTyped(typed)}? ${why}`, meant, 'Check it, or confirm it.');
}
