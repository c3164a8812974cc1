import { MINUS } from '../words/print.ts';
import { BARE_UNIT, kindOf, type TypedKind } from './bareUnit.ts';
import { type DecimalSign, withSign } from './plainNumber.ts';
import { numberOf, plus, type Ratio, ratioOf, times } from './ratio.ts';
import { readQuantity } from './readQuantity.ts';
import { KINDS, UNITS, type UnitName, type UnitRow } from './units.ts';

/** With more decimals than these another unit is tried. */
const FEW_DECIMALS = 6;
/** As many as any number needs to be told from every other. */
const ALL_DECIMALS = 25;

/** The value as an exact ratio; `1e-7` has its exponent taken out. */
function exact(value: number): Ratio {
  const [digits = '', exponent = '0'] = String(Math.abs(value)).split('e');
  const size = ratioOf(digits);
  const num = value < 0 ? -size.num : size.num;
  const power = 10n ** BigInt(Math.abs(Number(exponent)));
  return Number(exponent) < 0 ? { num, den: size.den * power } : { num: num * power, den: size.den };
}

/** How many of a unit a kept value is. */
function inUnitOf(kept: Ratio, { factor, zero }: UnitRow): Ratio {
  const fromZero = zero ? plus(kept, { num: -zero.num, den: zero.den }) : kept;
  return times(fromZero, { num: factor.den, den: factor.num });
}

/** `num / den` with so many decimals, rounded half up. */
function decimals({ num, den }: Ratio, count: number): string {
  const scaled = (num * 10n ** BigInt(count) * 2n + den) / (den * 2n);
  const digits = String(scaled).padStart(count + 1, '0');
  return count === 0 ? digits : `${digits.slice(0, -count)}.${digits.slice(-count)}`;
}

/** In one unit with the fewest decimals that read back to the very same number; null where none of so many do. */
function written(
  value: number,
  kind: TypedKind,
  unit: UnitName,
  sign: DecimalSign,
  most: number,
): string | null {
  const asked = kindOf(kind);
  const row = UNITS.find((one) => one.kind === asked && one.name === unit);
  if (!row || !Number.isFinite(value)) return null;
  const inUnit = inUnitOf(exact(value), row);
  const size = { num: inUnit.num < 0n ? -inUnit.num : inUnit.num, den: inUnit.den };
  for (let count = 0; count <= most; count++) {
    const typed = withSign(`${inUnit.num < 0n ? '-' : ''}${decimals(size, count)}`, sign);
    const read = readQuantity({ field: '', typed, kind: asked, unit, decimalSign: sign });
    if (read.ok && read.value === value) return typed;
  }
  return null;
}

/**
 * A stored quantity as text for a box that will be read again: the inverse of `readQuantity`. Bare in the unit of the
 * box if that reads back to the very same number with a few decimals, else with the unit in which it does. Nothing is
 * rounded away. Not for showing a result (that is `printLength` and its like).
 */
export function writeQuantity(value: number, kind: TypedKind, bare: UnitName, sign: DecimalSign): string {
  const kept = kind === 'share' ? '%' : KINDS[kindOf(kind)].keptIn;
  const { mm, in: inch } = BARE_UNIT[kind];
  for (const unit of new Set<UnitName>([bare, kept, mm, inch])) {
    const text = written(value, kind, unit, sign, FEW_DECIMALS);
    if (text !== null) return unit === bare ? text : `${text} ${unit}`;
  }
  const whole = written(value, kind, kept, sign, ALL_DECIMALS) ?? withSign(String(value), sign);
  return bare === kept ? whole : `${whole} ${kept}`;
}

/**
 * The same with its unit, for telling, always in the unit asked for: `4.7625 mm`, `37 N·m`. A length that has no end in
 * that unit has six figures, finer than any gauge: `0.181339 in`; others have nine.
 */
export function tellQuantity(
  value: number,
  kind: TypedKind,
  bare: UnitName,
  sign: DecimalSign,
  most = kind === 'length' ? LENGTH_FIGURES : MOST_FIGURES,
): string {
  const figure = written(value, kind, bare, sign, FEW_DECIMALS) ?? figures(value, kind, bare, sign, most);
  const text = figure.replace(/^-/, MINUS);
  return bare === '' ? text : `${text} ${bare}`;
}

const MOST_FIGURES = 9;
const LENGTH_FIGURES = 6;

/** How many of a unit a kept value is, to the last digit a number has. */
export function inUnit(value: number, kind: TypedKind, unit: UnitName): number {
  const row = UNITS.find((one) => one.kind === kindOf(kind) && one.name === unit);
  return row ? numberOf(inUnitOf(exact(value), row)) : value;
}

function figures(value: number, kind: TypedKind, unit: UnitName, sign: DecimalSign, most: number): string {
  return withSign(String(Number(inUnit(value, kind, unit).toPrecision(most))), sign);
}

/** A stored length for its box: bare in the person’s unit, or with `mm`. */
export function writeLength(mm: number, unit: 'mm' | 'in', decimalSign: DecimalSign): string {
  return writeQuantity(mm, 'length', BARE_UNIT.length[unit], decimalSign);
}

/** A stored length as it was typed where that still reads to the very same number, else as its box would have it. */
export function writeAsTyped(mm: number, typed: string, unit: 'mm' | 'in', decimalSign: DecimalSign): string {
  const read = readQuantity({ field: '', typed, kind: 'length', unit, decimalSign });
  return read.ok && read.value === mm ? typed : writeLength(mm, unit, decimalSign);
}
