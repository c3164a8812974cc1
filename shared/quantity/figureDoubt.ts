import { MINUS } from '../words/print.ts';
import {
  figureAsTyped,
  type MeantFigure,
  slippedSign,
  slippedUnit,
  type TypedFigure,
  workedOverTwice,
} from './slip.ts';

/** From the least to the most that figures of a field are, in the unit they are kept in. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** What figures of a field are at all, so that a slip is asked about. Nothing is judged by it. */
export interface Usual extends Range {
  /** Asked about only where another unit explains it: tenths and tens of the figure are usual too. */
  readonly anyDecimal?: boolean;
  /** It may be below zero. */
  readonly signed?: boolean;
  /** Where N·m and lb·ft must be told apart, 1.36 from one another: outside this, in no unit of its own, it is asked about. */
  readonly likely?: Range;
}

export interface FigureTyped extends TypedFigure {
  /** No unit was typed: it was read in that of its box. */
  readonly bare: boolean;
}

export interface FigureDoubt {
  /** "35 N·m? Did you mean 35 lb·ft?" */
  readonly question: string;
  /** What was probably meant, in the unit that is kept, and as text for the box. */
  readonly meant: number;
  readonly meantTyped: string;
}

/**
 * Asks about a figure outside what is usual, where a slipped decimal or another unit would bring it inside. null where
 * there is nothing to ask. It never changes a value: the person confirms or corrects.
 */
export function figureDoubt(asked: FigureTyped, usual: Usual): FigureDoubt | null {
  const { likely = usual } = usual;
  if (asked.value < 0 && !usual.signed) return null;
  // 1.25 °F is below zero in °C: no other unit changes the sign of what was meant.
  const inOtherUnit = slippedUnit(asked).filter(({ value }) => value < 0 === asked.value < 0);
  const meant = isWithin(asked.value, usual)
    ? asked.bare && !isWithin(asked.value, likely)
      ? nearest(inOtherUnit, likely)
      : null
    : (nearest([...inOtherUnit, ...(usual.anyDecimal ? [] : slippedSign(asked))], usual) ??
      (usual.anyDecimal ? null : nearest(workedOverTwice(asked), usual)));
  return meant && questionOf(asked, meant);
}

/** Where figures of one form are in different units: the same number in the other unit, where that is usual too. */
export function mixedUnitDoubt(asked: FigureTyped, other: string, usual: Usual): FigureDoubt | null {
  if (!asked.bare || asked.unit === other) return null;
  const meant = slippedUnit(asked).find(({ unit, value }) => unit === other && isWithin(value, usual));
  return meant ? questionOf(asked, meant) : null;
}

function questionOf(asked: FigureTyped, { value, typed }: MeantFigure): FigureDoubt {
  return {
    question: `${figureAsTyped(asked)}? Did you mean ${typed.replace(/^-/, MINUS)}?`,
    meant: value,
    meantTyped: typed,
  };
}

/** Of either sign, and a little more for figures that were rounded. */
function isWithin(value: number, { least, most }: Range): boolean {
  const size = Math.abs(value);
  return size >= least * (1 - 1e-9) && size <= most * (1 + 1e-9);
}

/** Of those inside, the one nearest the middle. */
function nearest(all: readonly MeantFigure[], range: Range): MeantFigure | null {
  const middle = Math.sqrt(range.least * range.most);
  const off = ({ value }: MeantFigure) => Math.abs(Math.log(Math.abs(value) / middle));
  return all.filter(({ value }) => isWithin(value, range)).sort((a, b) => off(a) - off(b))[0] ?? null;
}
