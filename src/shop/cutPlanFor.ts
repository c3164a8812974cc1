import type { LatheSettings } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverShape, CutPlanAnswer } from '../../shared/words/cover.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { cutPlan } from '../calc/cover/cutting/cutPlan.ts';

/** The passes of a cut on a lathe; null where none is described, or nothing is to be cut. */
export function cutPlanFor(
  check: CoverCheck | null,
  cover: Pick<CoverShape, 'trackInnerDiameterMm' | 'trackOuterDiameterMm'> | null,
  lathe: LatheSettings | null | undefined,
): CutPlanAnswer | null {
  const totalCutMm = check?.cut?.dialledMm ?? 0;
  if (cover === null || !lathe || !(totalCutMm > 0)) return null;
  const { trackInnerDiameterMm, trackOuterDiameterMm } = cover;
  try {
    return cutPlan({ ...lathe, totalCutMm, trackInnerDiameterMm, trackOuterDiameterMm });
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
