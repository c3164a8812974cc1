import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { USUAL_WEIGHT, type WhatStops } from '../../../shared/words/whatStops.ts';

/**
 * What the shop chose otherwise than it usually is, of what stops and what warns: the cover check, what is found after the
 * cut and the inspection list all weigh by it (src/calc/judge/weigh.ts). null where it chose nothing.
 */
export function chosenWeights({ whatStops }: Pick<ShopCriteria, 'whatStops'>): Partial<WhatStops> | null {
  const ids = Object.keys(USUAL_WEIGHT) as (keyof WhatStops)[];
  const chosen = ids.filter((id) => (whatStops?.[id] ?? USUAL_WEIGHT[id]) !== USUAL_WEIGHT[id]);
  return chosen.length === 0 ? null : Object.fromEntries(chosen.map((id) => [id, whatStops![id]]));
}
