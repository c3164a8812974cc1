import type { Usual } from '../../../shared/quantity/figureDoubt.ts';
import type { AnyField, PartField, QuantityField } from '../../../shared/words/fields/field.ts';

/** What figures of one field are at all, so that a slip is asked about. Nothing is judged by it. */
export interface FigureExpected extends Usual {
  /** Why a slip of ten, or of N·m and lb·ft, can't be told from it. */
  readonly notTold?: string;
}

/** A figure of which nothing is expected, with the reason. */
interface AnyFigure {
  readonly any: string;
}

export type AnyExpected = FigureExpected | AnyFigure;
type Figure = QuantityField | Extract<AnyField, { kind: 'lengths' }>;
type FigureKeys<F> = {
  [Key in keyof F]: F[Key] extends { readonly kind: Figure['kind'] } ? Key : never;
}[keyof F];
type PartKeys<F> = { [Key in keyof F]: F[Key] extends PartField ? Key : never }[keyof F];

/** Every figure of a body: the compiler names one that is forgotten. */
export type Expected<F> = { readonly [Key in FigureKeys<F>]: AnyExpected };

/** The same with the figures of its parts. */
export type ExpectedWhole<F> = Expected<F> & {
  readonly [Key in PartKeys<F>]: F[Key] extends { readonly fields: infer Part } ? ExpectedWhole<Part> : never;
};

export const WHOLE: AnyExpected = { any: 'a whole number within bounds: ten times, or a part, is refused' };

/** A length of about this size, between half and one and a half times it. */
export function about(mm: number): FigureExpected {
  return { least: mm / 2, most: 1.5 * mm };
}

/** Small lengths of any size, of which only the wrong unit can be told, with the reason. */
export function ofAnySize(least: number, most: number, notTold: string): FigureExpected {
  return { least, most, anyDecimal: true, notTold };
}
