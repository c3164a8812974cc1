/** One contribution to a combined uncertainty. `degreesOfFreedom` null: infinite. */
export interface Contribution {
  readonly name: string;
  readonly standardUncertaintyMm: number;
  readonly degreesOfFreedom: number | null;
}

/**
 * Effective degrees of freedom of a combined uncertainty.   ν_eff = u_c⁴ / Σ (uᵢ⁴/νᵢ)
 *
 * uᵢ contributions [any one unit] · νᵢ their degrees of freedom · u_c² = Σ uᵢ².
 * Valid: independent contributions. null is infinite: no contribution with finite ν counts.
 * Source: JCGM 100:2008, G.4.1, equation G.2b (Welch–Satterthwaite)
 * Example: JCGM 100 H.1: 25, 9.7, 2.9, 16.6 nm with ν 18, 25.6, 50, 2 → 16.7 (tests/published/gum.test.ts)
 */
export function effectiveDegreesOfFreedom(contributions: readonly Contribution[]): number | null {
  const combined = combinedUncertainty(contributions);
  let sum = 0;
  for (const { standardUncertaintyMm: u, degreesOfFreedom: nu } of contributions) {
    // Shares of the whole, so that micrometers to the fourth power do not underflow.
    if (nu !== null && u > 0) sum += (u / combined) ** 4 / nu;
  }
  return sum > 0 ? 1 / sum : null;
}

/** Combined standard uncertainty of independent contributions.   u_c = √(Σ uᵢ²)   JCGM 100:2008, 5.1.2 */
export function combinedUncertainty(contributions: readonly Contribution[]): number {
  return Math.hypot(...contributions.map((one) => one.standardUncertaintyMm));
}
