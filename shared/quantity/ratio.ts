/** An exact ratio of whole numbers. What people type is kept as one until the very end, so nothing drifts. */
export interface Ratio {
  readonly num: bigint;
  readonly den: bigint;
}

const DIGITS = 40n;

/** `0.0254`, `645.16` or `12` as an exact ratio. Only digits and one point; used for constants and tidy text. */
export function ratioOf(decimal: string): Ratio {
  const [whole = '', part = ''] = decimal.split('.');
  return { num: BigInt(`${whole}${part}`), den: 10n ** BigInt(part.length) };
}

export function times(a: Ratio, b: Ratio): Ratio {
  return { num: a.num * b.num, den: a.den * b.den };
}

export function plus(a: Ratio, b: Ratio): Ratio {
  return { num: a.num * b.den + b.num * a.den, den: a.den * b.den };
}

/** The double nearest to the ratio: 12 × 25.4 is 304.8, not 304.79999999999995. */
export function numberOf({ num, den }: Ratio): number {
  return Number(`${(num * 10n ** DIGITS) / den}e-${DIGITS}`);
}
