import { type Ratio, ratioOf } from './ratio.ts';

export type DecimalSign = 'point' | 'comma';

export type PlainNumber =
  | { readonly ok: true; readonly ratio: Ratio; readonly fraction: boolean }
  | { readonly ok: false; readonly why: string; readonly meant?: string };

const SIGN = { point: '.', comma: ',' } as const;
const NOT_PLAIN = 'is not a plain number';

/** Swaps point and comma, so that one set of patterns serves both settings. */
function swapped(text: string): string {
  return text.replace(/[.,]/g, (sign) => (sign === '.' ? ',' : '.'));
}

/** Text without unit, where `.` is the decimal sign. */
function readWithPoint(text: string): PlainNumber {
  const parts = /^([+-]?)(.*)$/.exec(text);
  const sign = parts?.[1] === '-' ? -1n : 1n;
  const digits = (parts?.[2] ?? '').trim();
  if (/^(\d+|\d*\.\d+)$/.test(digits)) {
    const { num, den } = ratioOf(digits);
    return { ok: true, ratio: { num: sign * num, den }, fraction: false };
  }
  const fraction = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(digits);
  if (fraction) {
    const [whole, over, under] = [fraction[1], fraction[2] ?? '', fraction[3] ?? ''];
    const den = BigInt(under);
    if (den === 0n) return { ok: false, why: 'divides by zero' };
    if (whole !== undefined && BigInt(over) >= den) {
      return { ok: false, why: 'has a fraction of one or more after a whole number' };
    }
    return {
      ok: true,
      ratio: { num: sign * (BigInt(whole ?? '0') * den + BigInt(over)), den },
      fraction: true,
    };
  }
  if (/^\d+\.$/.test(digits))
    return { ok: false, why: 'ends in a decimal point or comma; digits are missing' };
  if (/^\d*,\d+$/.test(digits)) {
    return {
      ok: false,
      why: 'has a comma',
      meant: `${parts?.[1]}${digits.replace(',', '.').replace(/^\./, '0.')}`,
    };
  }
  if (/^\d{1,3}( \d{3})+(\.\d+)?$/.test(digits) || /^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) {
    return {
      ok: false,
      why: 'has a thousands separator',
      meant: `${parts?.[1]}${digits.replace(/[, ]/g, '')}`,
    };
  }
  if (/^\d{1,3}(\.\d{3})+(,\d+)?$/.test(digits)) {
    const meant = digits.replaceAll('.', '').replace(',', '.');
    return { ok: false, why: 'has a thousands separator', meant: `${parts?.[1]}${meant}` };
  }
  return { ok: false, why: NOT_PLAIN };
}

/**
 * A number as people write it, without its unit: `0.187`, `.187`, `3/16`, `1 3/16`, `1-3/16`, with a sign in
 * front. Exact. Anything else is refused with the reason, and with what was probably meant where that is plain.
 * `text` is tidy already: single spaces, `-` for every minus, `/` for every stroke.
 */
export function plainNumber(text: string, decimalSign: DecimalSign): PlainNumber {
  if (decimalSign === 'point') {
    const read = readWithPoint(text);
    return !read.ok && read.why === 'has a comma'
      ? { ...read, why: `has a comma, and this shop writes decimals with a point` }
      : read;
  }
  const read = readWithPoint(swapped(text));
  if (read.ok) return read;
  const why =
    read.why === 'has a comma' ? 'has a point, and this shop writes decimals with a comma' : read.why;
  return read.meant === undefined ? { ok: false, why } : { ok: false, why, meant: swapped(read.meant) };
}

/** The same text with the shop's decimal sign, for examples in sentences. */
export function withSign(text: string, decimalSign: DecimalSign): string {
  return text.replace('.', SIGN[decimalSign]);
}
