import type { ShareInterval } from '../../../shared/words/trends/trends.ts';

/** Two-sided 95 %. */
const Z = 1.959963984540054;

/**
 * How far a share may be from the one that was counted: the score interval of a proportion, at 95 %.
 *   (p + z²/2n ± z·√(p(1−p)/n + z²/4n²)) / (1 + z²/n),  p = x/n
 *
 * x counted of n · z 1.95996, two-sided 95 %.
 * Valid: whole x and n, 0 ≤ x ≤ n, n ≥ 1; cases that do not hang together; else a RangeError.
 * Source: Wilson, J. Am. Stat. Assoc. 22 (1927), 209; as method 3 in Newcombe, Statist. Med. 17 (1998), 857
 * Example: 15 of 148 → 0.0624 to 0.1605 (tests/published/shares.test.ts)
 */
export function wilsonInterval(x: number, n: number): ShareInterval {
  if (!Number.isInteger(n) || n < 1 || !Number.isInteger(x) || x < 0 || x > n) {
    throw new RangeError(`${x} of ${n} is no share: count at least one case, and of them none to all.`);
  }
  const share = x / n;
  const z2 = (Z * Z) / n;
  const middle = share + z2 / 2;
  const half = Z * Math.sqrt((share * (1 - share)) / n + z2 / (4 * n));
  return {
    share,
    low: x === 0 ? 0 : (middle - half) / (1 + z2),
    high: x === n ? 1 : (middle + half) / (1 + z2),
  };
}
