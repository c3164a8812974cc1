import { type DecimalSign, withSign } from './plainNumber.ts';
import { tidy } from './tidy.ts';
import { UNITS, type UnitName } from './units.ts';

export interface DoubtAsked {
  readonly valueMm: number;
  /** The value expected here, such as the family's nominal wall. */
  readonly expectedMm: number;
  readonly typed: string;
  /** The unit it was read in. */
  readonly unit: UnitName;
  readonly decimalSign: DecimalSign;
}

export interface Doubt {
  /** "0.0187 in? Did you mean 0.187 in?" */
  readonly question: string;
  /** What was probably meant; null when no usual slip explains the value. */
  readonly meantMm: number | null;
  /** The same as text for the box. */
  readonly meantTyped: string | null;
}

/** A worn, faced or oversize wall stays within these shares of what is expected; outside, a person confirms. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 1.5;
const MM_PER_INCH = 25.4;
/** A slipped or forgotten decimal sign, thousandths typed as inches, inches read as millimetres. */
const SLIPS = [10, 100, 1000, 0.1, 0.01, 0.001, MM_PER_INCH, 1 / MM_PER_INCH];

/** Six figures at most, no trailing zeros: what a gauge could have shown. */
function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** `4.92 mm`, for a sentence. */
export function lengthText(mm: number, unit: UnitName, sign: DecimalSign): string {
  const factor = UNITS.find((row) => row.name === unit && row.kind === 'length')?.factor;
  const size = factor ? Number(factor.num) / Number(factor.den) : 1;
  return `${withSign(figure(mm / size), sign)} ${factor ? unit : 'mm'}`;
}

/** `0.01870 in` → `0.0187 in` as typed, fractions included. */
function asTyped(asked: DoubtAsked): string {
  const number = /^[+-]?[\d.,/ -]*/.exec(tidy(asked.typed))?.[0].trim() ?? '';
  return number === '' ? lengthText(asked.valueMm, asked.unit, asked.decimalSign) : `${number} ${asked.unit}`;
}

/** The other unit, for a figure that was read in the wrong one. */
function otherUnit(slip: number): UnitName {
  return slip > 1 ? 'mm' : 'in';
}

/**
 * Asks about a value that is far from what is expected: a slipped decimal (10, 100 or 1000 times, or a part), or
 * inches taken for millimetres or the other way round. null when the value is between half and one and a half
 * times what is expected, or when nothing is expected. It never changes a value: the person confirms or corrects.
 */
export function doubt(asked: DoubtAsked): Doubt | null {
  const { valueMm, expectedMm, unit, decimalSign } = asked;
  if (!(expectedMm > 0) || !Number.isFinite(valueMm)) return null;
  const share = valueMm / expectedMm;
  if (share >= LEAST_SHARE && share <= MOST_SHARE) return null;

  const likely = SLIPS.map((slip) => ({ slip, share: share / slip }))
    .filter((one) => one.share >= LEAST_SHARE && one.share <= MOST_SHARE)
    .sort((a, b) => Math.abs(Math.log(a.share)) - Math.abs(Math.log(b.share)))[0];
  if (!likely) {
    const about = lengthText(expectedMm, unit, decimalSign);
    return {
      question: `${asTyped(asked)}? About ${about} is expected here. Measure again, or confirm it.`,
      meantMm: null,
      meantTyped: null,
    };
  }
  const wrongUnit = likely.slip === MM_PER_INCH || likely.slip === 1 / MM_PER_INCH;
  const meantMm = Number((valueMm / likely.slip).toPrecision(15));
  const meantTyped = lengthText(meantMm, wrongUnit ? otherUnit(likely.slip) : unit, decimalSign);
  return { question: `${asTyped(asked)}? Did you mean ${meantTyped}?`, meantMm, meantTyped };
}
