import { integral } from './integral.ts';
import { normalShare } from './normalShare.ts';

/** Beyond this many standard deviations the normal density adds nothing to the sixth decimal. */
const FARTHEST = 8.5;
const NOTHING = 1e-16;
const TOLERANCE_MM = 1e-9;

/**
 * Probability that every place is at or above its limit, with one error common to all and one of each place's own.
 *   P = ∫ φ(x) Π Φ((mᵢ − u_c·x)/uᵢ) dx
 *
 * mᵢ margin: value less limit [mm] · u_c common standard uncertainty [mm] · uᵢ each place's own [mm].
 * uᵢ all 0: Φ(min mᵢ/u_c). u_c 0: Π Φ(mᵢ/uᵢ). Both 0: 1 if no margin is negative, else 0.
 * Valid: normal errors; to 1e-6. The range is split at min mᵢ/u_c, where the product falls, and the rule adapts:
 * fixed nodes miss the fall when uᵢ is small beside u_c.
 * Source: JCGM 106:2012 (one place); the common error integrated out, first principles
 * Example: margins 0.02, 0.03, 0.05, both errors 0.01 → 0.91150 (tests/calc/measure/conformanceProbability.test.ts)
 */
export function conformanceProbability({
  marginsMm,
  commonMm,
  ownMm,
}: {
  readonly marginsMm: readonly number[];
  readonly commonMm: number;
  readonly ownMm: readonly number[];
}): number {
  const places = alike(marginsMm, ownMm);
  const share = (shiftMm: number) => {
    let product = 1;
    for (const { marginMm, uMm, count } of places) {
      const left = marginMm - shiftMm;
      // For speed with hundreds of stations: skip those far above their limit, and stop once the product is zero.
      if (left > FARTHEST * uMm) continue;
      const one = uMm > 0 ? normalShare(left / uMm) : left >= -TOLERANCE_MM ? 1 : 0;
      product *= one ** count;
      if (product < NOTHING) return 0;
    }
    return product;
  };
  if (commonMm === 0) return share(0);
  if (marginsMm.length === 1) return normalShare(marginsMm[0]! / Math.hypot(commonMm, ownMm[0]!));

  const sharp = places.filter((place) => place.uMm === 0).map((place) => place.marginMm / commonMm);
  const end = Math.min(FARTHEST, ...sharp);
  if (places.every((place) => place.uMm === 0)) return normalShare(Math.min(...sharp));
  const fall = Math.min(...marginsMm) / commonMm;
  const width = Math.max(...ownMm) / commonMm;
  const edges = [-FARTHEST, fall - 8 * width, fall - width, fall, fall + width, fall + 8 * width, end]
    .map((edge) => Math.min(end, Math.max(-FARTHEST, edge)))
    .sort((a, b) => a - b);
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  return Math.min(
    1,
    integral((x) => density(x) * share(commonMm * x), edges, 1e-9),
  );
}

/** Places with the same margin and the same error counted once, the thinnest first: hundreds of stations stay quick. */
function alike(marginsMm: readonly number[], ownMm: readonly number[]) {
  const groups = new Map<string, { marginMm: number; uMm: number; count: number }>();
  for (const [i, marginMm] of marginsMm.entries()) {
    const uMm = ownMm[i]!;
    const key = `${marginMm} ${uMm}`;
    const group = groups.get(key);
    if (group) group.count++;
    else groups.set(key, { marginMm, uMm, count: 1 });
  }
  return [...groups.values()].sort((a, b) => a.marginMm - b.marginMm);
}
