import { conformanceProbability } from './conformanceProbability.ts';

const NEAR_ENOUGH_MM = 1e-5;

/**
 * The least margin of the thinnest place with which one could be sure of all, were every other place as much thicker
 * than it as it now is.   least x ≥ 0 with P(mᵢ − min m + x) ≥ p
 *
 * P conformance probability, which grows with x · mᵢ margin: value less limit [mm] · p confidence.
 * Valid: 0 < p < 1; to 1e-5 mm; 0 where readings are exact, for a margin of 0 passes then.
 * Source: JCGM 106:2012, guard band found from the probability instead of from one place's U (first principles)
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
  const sure = (marginMm: number) =>
    conformanceProbability({
      marginsMm: marginsMm.map((margin) => margin - least + marginMm),
      commonMm,
      ownMm,
    }) >= confidence;
  if (sure(0)) return 0;
  let [low, high] = [0, 2 * Math.hypot(commonMm, Math.max(...ownMm))];
  while (!sure(high)) [low, high] = [high, 2 * high];
  while (high - low > NEAR_ENOUGH_MM) {
    const middle = (low + high) / 2;
    if (sure(middle)) high = middle;
    else low = middle;
  }
  return high;
}
