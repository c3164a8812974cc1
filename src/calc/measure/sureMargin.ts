import { conformanceProbability } from './conformanceProbability.ts';

const NEAR_ENOUGH_MM = 1e-5;

/**
 * The least margin of the thinnest place with which one could be sure of all, were every other place as much thicker
 * than it as it now is.   least x ≥ 0 with P(mᵢ − min m + x) ≥ p
 *
 * P conformance probability, which grows with x · mᵢ margin: value less limit [mm] · p confidence.
 * The root is found where a straight line through both ends crosses p; an end that stays twice counts half.
 * Valid: 0 < p < 1; to 1e-5 mm; 0 where readings are exact, for a margin of 0 passes then.
 * Source: JCGM 106:2012, guard band found from the probability instead of from one place's U (first principles);
 * root by the Illinois rule (Dowell and Jarratt, 1971), from memory
 * Example: one place, u 0.01, p 0.95 → 0.01645, Φ(1.645) = 0.95 (tests/calc/measure/sureMargin.test.ts)
 */
export function sureMargin({
  marginsMm,
  commonMm,
  ownMm,
  confidence,
}: {
  readonly marginsMm: readonly number[];
  readonly commonMm: number;
  readonly ownMm: readonly number[];
  readonly confidence: number;
}): number {
  const least = Math.min(...marginsMm);
  const over = (marginMm: number) =>
    conformanceProbability({
      marginsMm: marginsMm.map((margin) => margin - least + marginMm),
      commonMm,
      ownMm,
    }) - confidence;
  let [low, under] = [0, over(0)];
  if (under >= 0) return 0;
  let high = 2 * Math.hypot(commonMm, Math.max(...ownMm));
  let above = over(high);
  while (above < 0) {
    [low, under] = [high, above];
    high *= 2;
    above = over(high);
  }
  let last = 0;
  while (high - low > NEAR_ENOUGH_MM) {
    const straight = (low * above - high * under) / (above - under);
    const next = Math.min(high - NEAR_ENOUGH_MM / 2, Math.max(low + NEAR_ENOUGH_MM / 2, straight));
    const found = over(next);
    if (found >= 0) {
      [high, above] = [next, found];
      if (last > 0) under /= 2;
    } else {
      [low, under] = [next, found];
      if (last < 0) above /= 2;
    }
    last = found;
  }
  return high;
}
