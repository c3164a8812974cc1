import { asking, type Doubt } from '../../../shared/quantity/doubt.ts';
import {
  asTyped,
  lengthText,
  meantBetween,
  meantNear,
  type TypedLength,
} from '../../../shared/quantity/slip.ts';
import type { CutMade, Job } from '../../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../../shared/words/passes.ts';

/** A pass this much deeper than what is left of the decided cut is asked about (common practice, no source). */
const DEEPER_MM = 0.02;

/** What is left of the decided cut; null where nothing is decided. Below zero where more was cut. */
export function restOfCut(job: Job): number | null {
  const wholeMm = decidedCut(job);
  if (wholeMm === null) return null;
  return wholeMm - countingPasses(job).reduce((sum, { depthMm }) => sum + depthMm, 0);
}

function decidedCut({ sections }: Job): number | null {
  const decision = sections.decision?.body;
  return !decision || decision.decision === 'replace' ? null : (decision.check.cut?.dialledMm ?? null);
}

/** Asks about a pass of 3.1 where 0.31 is left to cut. null where there is nothing to ask, or nothing decided. */
export function passDoubt(typed: TypedLength, restMm: number | null): Doubt | null {
  if (restMm === null || typed.valueMm <= Math.max(restMm, 0) + DEEPER_MM + 1e-9) return null;
  const left = Math.max(restMm, 0);
  const why =
    left < 1e-9
      ? 'The whole decided cut is made already.'
      : `${lengthText(Number(left.toFixed(4)), typed.unit, typed.decimalSign)} of the decided cut is left.`;
  const meant =
    left > DEEPER_MM
      ? (meantNear(typed, left, DEEPER_MM) ?? meantBetween(typed, left / 20, left + DEEPER_MM))
      : null;
  return asking(`${asTyped(typed)}? ${why}`, meant, 'Check it, or confirm it.');
}

/** What is left of the decided cut beside all passes but this one; null where nothing is decided. */
export function restBesidePass(job: Job, index: number): number | null {
  const wholeMm = decidedCut(job);
  const before = passesBeforeRing(job);
  if (wholeMm === null || index < before) return null;
  const others = (job.sections.cuts?.body.cuts ?? []).filter((_, i) => i >= before && i !== index);
  return wholeMm - others.reduce((sum, { depthMm }) => sum + depthMm, 0);
}

/** Asks about the passes that a list adds, or changes, against those the job has; the list is in mm, as JSON sends it. */
export function passesDoubted(
  job: Job,
  cuts: readonly CutMade[],
): readonly { readonly index: number; readonly doubt: Doubt }[] {
  const kept = job.sections.cuts?.body.cuts ?? [];
  const wholeMm = decidedCut(job);
  if (wholeMm === null) return [];
  const counted = cuts.map(({ depthMm }, i) => (i < passesBeforeRing(job) ? 0 : depthMm));
  return cuts.flatMap(({ depthMm: valueMm, typed }, index) => {
    if (valueMm === kept[index]?.depthMm) return [];
    const others = index < kept.length ? counted.filter((_, i) => i !== index) : counted.slice(0, index);
    const restMm = wholeMm - others.reduce((sum, mm) => sum + mm, 0);
    const asTyped = typed === '' ? String(valueMm) : typed;
    const doubt = passDoubt({ valueMm, typed: asTyped, unit: 'mm', decimalSign: 'point' }, restMm);
    return doubt === null ? [] : [{ index, doubt }];
  });
}
