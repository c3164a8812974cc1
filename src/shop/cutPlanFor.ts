import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { CoverCheck, CoverShape, CutPlanAnswer } from '../../shared/words/cover.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { cutPlan } from '../calc/cover/cutting/cutPlan.ts';

/** The passes of a cut on the shop's lathe; null where the shop has not described it, or nothing is to be cut. */
export function cutPlanFor(
  check: CoverCheck | null,
  cover: Pick<CoverShape, 'trackInnerDiameterMm' | 'trackOuterDiameterMm'> | null,
  criteria: ShopCriteria,
): CutPlanAnswer | null {
  const lathe = criteria.lathe ?? null;
  const totalCutMm = check?.cut?.dialledMm ?? 0;
  if (cover === null || lathe === null || !(totalCutMm > 0)) return null;
  const { trackInnerDiameterMm, trackOuterDiameterMm } = cover;
  try {
    return cutPlan({ ...lathe, totalCutMm, trackInnerDiameterMm, trackOuterDiameterMm });
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
