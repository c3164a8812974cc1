import { asTyped, lengthText, type TypedLength } from './slip.ts';
import type { UnitName } from './units.ts';

export interface DoubtAsked extends TypedLength {
  /** The value expected here, such as the new wall of the cover type. */
  readonly expectedMm: number;
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
/** A slipped or forgotten decimal sign, thousandths typed as inches, inches read as millimeters. */
const SLIPS = [10, 100, 1000, 0.1, 0.01, 0.001, MM_PER_INCH, 1 / MM_PER_INCH];

/** The other unit, for a figure that was read in the wrong one. */
function otherUnit(slip: number): UnitName {
  return slip > 1 ? 'mm' : 'in';
}

/**
 * Asks about a value that is far from what is expected: a slipped decimal (10, 100 or 1000 times, or a part), or
 * inches taken for millimeters or the other way round. null when the value is between half and one and a half
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
