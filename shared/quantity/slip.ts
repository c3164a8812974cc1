import { MINUS } from '../words/print.ts';
import { type DecimalSign, withSign } from './plainNumber.ts';
import { tidy } from './tidy.ts';
import { UNITS, type UnitName } from './units.ts';

const MM_PER_INCH = 25.4;
/** A slipped or forgotten decimal sign, thousandths typed as inches, inches read as millimeters. */
const SLIPS = [10, 100, 1000, 0.1, 0.01, 0.001, MM_PER_INCH, 1 / MM_PER_INCH] as const;

/** What was typed, and the unit it was read in. */
interface Typed {
  readonly typed: string;
  readonly unit: UnitName;
  readonly decimalSign: DecimalSign;
}

/** A length as it was typed. */
export interface TypedLength extends Typed {
  readonly valueMm: number;
}

/** A figure of any kind as it was typed. */
export interface TypedFigure extends Typed {
  /** In the unit its kind is kept in. */
  readonly value: number;
}

/** What may have been meant instead, as a value and as text for the box. */
export interface Meant {
  readonly mm: number;
  readonly typed: string;
}

/** The same of any figure. */
export interface MeantFigure {
  readonly value: number;
  readonly typed: string;
  readonly unit: UnitName;
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
  const number = numberTyped(typed);
  return number === '' ? lengthText(valueMm, unit, decimalSign) : `${number} ${unit}`;
}

/** The same of any figure; a plain number has no unit. */
export function figureAsTyped({ value, typed, unit, decimalSign }: TypedFigure): string {
  const number = numberTyped(typed);
  return number === '' ? figureText(value, unit, decimalSign) : withUnit(number, unit);
}

function numberTyped(typed: string): string {
  const number = /^[+-]?[\d.,/ -]*/.exec(tidy(typed))?.[0].trim() ?? '';
  return number.replace(/^-/, MINUS);
}

function figureText(value: number, unit: UnitName, sign: DecimalSign): string {
  return withUnit(withSign(figure(numberIn(unit, value)), sign), unit);
}

function withUnit(number: string, unit: UnitName): string {
  return unit === '' ? number : `${number} ${unit}`;
}

/** How many of the kept unit one of these is, and what its zero is there. */
function scaleOf(unit: UnitName): { readonly factor: number; readonly zero: number } {
  const { factor, zero } = UNITS.find((row) => row.name === unit)!;
  return {
    factor: Number(factor.num) / Number(factor.den),
    zero: zero ? Number(zero.num) / Number(zero.den) : 0,
  };
}

function numberIn(unit: UnitName, value: number): number {
  const { factor, zero } = scaleOf(unit);
  return (value - zero) / factor;
}

function keptFrom(number: number, unit: UnitName): number {
  const { factor, zero } = scaleOf(unit);
  return number * factor + zero;
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

const DECIMALS = SLIPS.filter((slip) => slip !== MM_PER_INCH && slip !== 1 / MM_PER_INCH);
/** Units of one kind that are taken for one another. */
const TAKEN_FOR: readonly (readonly UnitName[])[] = [
  ['mm', 'in'],
  ['N·m', 'lb·ft', 'lb·in'],
  ['MPa', 'ksi', 'psi'],
  ['m/min', 'ft/min'],
  ['kg', 'lb'],
  ['kg/m³', 'g/cm³', 'lb/in³'],
  ['°C', '°F'],
  ['MPa/mm', 'psi/in'],
  ['W/(m·K)', 'Btu/(h·ft·°F)'],
  ['J/(kg·K)', 'Btu/(lb·°F)'],
];

/** Every figure that a slipped decimal sign may have made into this one. */
export function slippedSign({ value, unit, decimalSign }: TypedFigure): MeantFigure[] {
  const number = numberIn(unit, value);
  return DECIMALS.map((slip) => meantFigure(keptFrom(number / slip, unit), unit, decimalSign));
}

/** The same number in each unit that may be taken for the one it was read in. */
export function slippedUnit({ value, unit, decimalSign }: TypedFigure): MeantFigure[] {
  const others = TAKEN_FOR.find((units) => units.includes(unit))?.filter((one) => one !== unit) ?? [];
  const number = numberIn(unit, value);
  return others.map((other) => meantFigure(keptFrom(number, other), other, decimalSign));
}

/** A length worked over into the unit it already was in. */
export function workedOverTwice({ value, unit, decimalSign }: TypedFigure): MeantFigure[] {
  const other = unit === 'mm' ? 'in' : unit === 'in' ? 'mm' : null;
  return other === null ? [] : [meantFigure(keptFrom(numberIn(other, value), unit), unit, decimalSign)];
}

function meantFigure(value: number, unit: UnitName, sign: DecimalSign): MeantFigure {
  return { value: Number(value.toPrecision(15)), typed: figureText(value, unit, sign), unit };
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
