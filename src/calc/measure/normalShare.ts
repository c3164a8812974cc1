/** Where the series and the continued fraction are both good to the last digits. */
const SERIES_UP_TO = 3;

/**
 * Share of a normal distribution below z.   Φ(z) = ∫₋∞ᶻ φ,  φ(z) = e^(−z²/2)/√(2π)
 *
 * z in standard deviations.
 *   |z| ≤ 3: Φ = ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …);  beyond: Φ(−z) = φ(z)/(z + 1/(z + 2/(z + 3/(z + …))))
 * Valid: any z; to 1e-15.   Source: Abramowitz & Stegun, 26.2.11 and 26.2.14
 * Example: JCGM 106:2012 table, z 1.645 → 0.95 (tests/published/conformance.test.ts)
 */
export function normalShare(z: number): number {
  const size = Math.abs(z);
  if (size > 39) return z > 0 ? 1 : 0;
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI);
  if (size <= SERIES_UP_TO) {
    let [term, sum] = [z, z];
    for (let k = 3; Math.abs(term) > 1e-18; k += 2) {
      term *= (z * z) / k;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  let fraction = size;
  for (let k = termsFor(size); k > 0; k--) fraction = size + k / fraction;
  return z > 0 ? 1 - density / fraction : density / fraction;
}

/** Terms of the continued fraction that change its last digit: fewer the farther out, found against 4,000 terms. */
function termsFor(size: number): number {
  return Math.ceil(8 + 380 / (size * size));
}
