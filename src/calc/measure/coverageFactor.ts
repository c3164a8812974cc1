import { integral } from './integral.ts';

/** Beyond this Student's t is the normal distribution to more digits than anyone prints. */
const AS_GOOD_AS_NORMAL = 1e8;
/** Nothing worth counting lies farther out than this many standard deviations. */
const FARTHEST = 39;

/**
 * How many standard uncertainties either side cover a share of what may be true: t_p(ν), two-sided.
 *   p = ∫₀^s g / ∫₀^end g,  g(s) = cos^(ν−1)(s/√ν),  t = √ν·tan(s/√ν)
 *
 * p confidence, 0 to 1 · ν degrees of freedom, fractional allowed, null for infinite. Student's density with
 * t = √ν tan(s/√ν) put in: both integrals are of a smooth bell, and no gamma function is needed.
 * Valid: ν ≥ 1, 0 < p < 1.   Source: JCGM 100:2008, G.3 and Table G.2
 * Example: p 0.99, ν 16 → 2.92 (tests/published/gum.test.ts)
 */
export function coverageFactor(confidence: number, degreesOfFreedom: number | null): number {
  const nu = degreesOfFreedom !== null && degreesOfFreedom < AS_GOOD_AS_NORMAL ? degreesOfFreedom : null;
  // cos x as 1 − 2 sin²(x/2) keeps its digits where ν is large and x small.
  const bell = (s: number) =>
    nu === null
      ? Math.exp((-s * s) / 2)
      : Math.exp((nu - 1) * Math.log1p(-2 * Math.sin(s / Math.sqrt(nu) / 2) ** 2));
  const end = nu === null ? FARTHEST : Math.min(FARTHEST, (Math.sqrt(nu) * Math.PI) / 2);
  const whole = integral(bell, [0, Math.min(4, end), end], 1e-13);

  let [low, high] = [0, end];
  for (let i = 0; i < 80 && high - low > 1e-13 * high; i++) {
    const middle = (low + high) / 2;
    if (integral(bell, [0, Math.min(4, middle), middle], 1e-13) < confidence * whole) low = middle;
    else high = middle;
  }
  const s = (low + high) / 2;
  return nu === null ? s : Math.sqrt(nu) * Math.tan(s / Math.sqrt(nu));
}
