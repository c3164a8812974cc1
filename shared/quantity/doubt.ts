import { MINUS } from '../words/print.ts';
import { asTyped, lengthText, type Meant, slipped, type TypedLength } from './slip.ts';

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

/** The question, with the value probably meant where there is one, else with what to do. */
export function asking(
  what: string,
  meant: Meant | null,
  otherwise = 'Measure again, or confirm it.',
): Doubt {
  const then = meant === null ? otherwise : `Did you mean ${meant.typed.replace(/^-/, MINUS)}?`;
  return { question: `${what} ${then}`, meantMm: meant?.mm ?? null, meantTyped: meant?.typed ?? null };
}

/**
 * Asks about a value that is far from what is expected: a slipped decimal (10, 100 or 1000 times, or a part), or
 * inches taken for millimeters or the other way round. null when the value is between half and one and a half
 * times what is expected, or when nothing is expected. It never changes a value: the person confirms or corrects.
 */
export function doubt(asked: DoubtAsked): Doubt | null {
  const { valueMm, expectedMm, unit, decimalSign } = asked;
  if (!(expectedMm > 0) || !Number.isFinite(valueMm)) return null;
  const share = (mm: number) => mm / expectedMm;
  const fits = (mm: number) => share(mm) >= LEAST_SHARE && share(mm) <= MOST_SHARE;
  if (fits(valueMm)) return null;
  const off = ({ mm }: Meant) => Math.abs(Math.log(share(mm)));
  const likely = slipped(asked)
    .filter(({ mm }) => fits(mm))
    .sort((a, b) => off(a) - off(b))[0];
  if (likely) return asking(`${asTyped(asked)}?`, likely);
  const about = lengthText(expectedMm, unit, decimalSign);
  return asking(`${asTyped(asked)}? About ${about} is expected here.`, null);
}
