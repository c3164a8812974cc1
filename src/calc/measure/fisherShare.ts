import { integral } from './integral.ts';

/**
 * Share of Fisher's F distribution above a ratio of two mean squares: how often chance alone gives so large a ratio.
 *   P(F > f) = ∫₀^θ g / ∫₀^(π/2) g,  g(x) = sin^(ν₂−1) x · cos^(ν₁−1) x,  sin² θ = ν₂ / (ν₂ + ν₁ f)
 *
 * f ratio [1] · ν₁ degrees of freedom above the line · ν₂ below. The beta density with x = sin² put in: both integrals
 * are of a smooth bell, and no gamma function is needed.
 * Valid: f ≥ 0; ν₁ and ν₂ at least 1, up to 100,000.   Source: Abramowitz and Stegun, 26.6.2 and 26.5.1, from memory
 * Example: f 3.71, ν 3 and 10 → 0.05 (tests/published/gaugeStudy.test.ts)
 */
export function fisherShare(f: number, [above, below]: readonly [number, number]): number {
  const theta = Math.atan2(Math.sqrt(below), Math.sqrt(above * f));
  // Where the bell is highest; both powers are taken against its height, so that neither underflows.
  const top = Math.atan2(Math.sqrt(below - 1), Math.sqrt(above - 1));
  const bell = (x: number) =>
    power(Math.sin(x) / Math.sin(top), below - 1) * power(Math.cos(x) / Math.cos(top), above - 1);
  const wide = 4 / Math.sqrt(above + below);
  const over = (end: number) => {
    const stops = [top - wide, top, top + wide].filter((x) => x > 0 && x < end);
    return integral(bell, [0, ...stops, end], 1e-12);
  };
  return Math.min(1, over(theta) / over(Math.PI / 2));
}

/** x^0 is 1, also where x is 0/0. */
function power(x: number, exponent: number): number {
  return exponent === 0 ? 1 : x ** exponent;
}
