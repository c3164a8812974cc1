import { MINUS } from '../words/print.ts';
import { type DecimalSign, withSign } from './plainNumber.ts';
import { tidy } from './tidy.ts';
import { UNITS, type UnitName } from './units.ts';

const MM_PER_INCH = 25.4;
/** A slipped or forgotten decimal sign, thousandths typed as inches, inches read as millimeters. */
const SLIPS = [10, 100, 1000, 0.1, 0.01, 0.001, MM_PER_INCH, 1 / MM_PER_INCH] as const;

/** A length as it was typed, and the unit it was read in. */
export interface TypedLength {
  readonly valueMm: number;
  readonly typed: string;
  readonly unit: UnitName;
  readonly decimalSign: DecimalSign;
}

/** What may have been meant instead, as a value and as text for the box. */
export interface Meant {
  readonly mm: number;
  readonly typed: string;
}

/** Six figures at most, no trailing zeros: what a gauge could have shown. */
function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}

function factorOf(unit: UnitName): number | null {
  const factor = UNITS.find((row) => row.name === unit && row.kind === 'length')?.factor;
  return factor ? Number(factor.num) / Number(factor.den) : null;
}

/** `4.92 mm`, for a sentence. */
export function lengthText(mm: number, unit: UnitName, sign: DecimalSign): string {
  const factor = factorOf(unit);
  return `${withSign(figure(mm / (factor ?? 1)), sign)} ${factor === null ? 'mm' : unit}`;
}

/** `0.01870 in` as it was typed, fractions included. */
export function asTyped({ valueMm, typed, unit, decimalSign }: TypedLength): string {
  const number = /^[+-]?[\d.,/ -]*/.exec(tidy(typed))?.[0].trim() ?? '';
  return number === '' ? lengthText(valueMm, unit, decimalSign) : `${number.replace(/^-/, MINUS)} ${unit}`;
}

function meantAs(mm: number, unit: UnitName, sign: DecimalSign): Meant {
  return { mm: Number(mm.toPrecision(15)), typed: lengthText(mm, unit, sign) };
}

/** Every length that a slipped decimal sign or the other unit may have made into this one. */
export function slipped({ valueMm, unit, decimalSign }: TypedLength): Meant[] {
  return SLIPS.map((slip) => {
    const isUnit = slip === MM_PER_INCH || slip === 1 / MM_PER_INCH;
    return meantAs(valueMm / slip, isUnit ? (slip > 1 ? 'mm' : 'in') : unit, decimalSign);
  });
}

/** 4.698 for 4.968: two figures that stand side by side. */
function swapped({ typed, unit, decimalSign }: TypedLength): number[] {
  const [number = ''] = /^[+-]?[\d.,]*/.exec(tidy(typed)) ?? [];
  const places = [...number].flatMap((letter, i) => (/\d/.test(letter) ? [i] : []));
  const factor = factorOf(unit) ?? 1;
  return places.slice(1).flatMap((place, i) => {
    const before = places[i]!;
    const letters = [...number];
    [letters[before], letters[place]] = [letters[place]!, letters[before]!];
    const text = letters.join('');
    const value = Number(decimalSign === 'comma' ? text.replace(',', '.') : text) * factor;
    return text === number || !Number.isFinite(value) ? [] : [value];
  });
}

/** What may have been meant, a sign or two figures swapped included, nearest to the value expected; else null. */
export function meantNear(asked: TypedLength, expectedMm: number, reachMm: number): Meant | null {
  const off = ({ mm }: Meant) => Math.abs(mm - expectedMm);
  const { valueMm, unit, decimalSign } = asked;
  const near = [
    ...(valueMm === 0 ? [] : [meantAs(-valueMm, unit, decimalSign)]),
    ...slipped(asked),
    ...slipped({ ...asked, valueMm: -valueMm }),
    ...swapped(asked).map((mm) => meantAs(mm, unit, decimalSign)),
  ].filter((one) => off(one) <= reachMm);
  return near.sort((a, b) => off(a) - off(b))[0] ?? null;
}

/** The first usual slip of the decimal sign or the unit that leads to between two lengths; else null. */
export function meantBetween(asked: TypedLength, leastMm: number, mostMm: number): Meant | null {
  return slipped(asked).find(({ mm }) => mm >= leastMm && mm <= mostMm) ?? null;
}
