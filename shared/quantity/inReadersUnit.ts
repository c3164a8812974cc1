import { BARE_UNIT, kindOf, type TypedKind } from './bareUnit.ts';
import type { Writing } from './fieldText.ts';
import { withSign } from './plainNumber.ts';
import { UNITS } from './units.ts';

const KEPT: Readonly<Record<string, TypedKind>> = {
  mm: 'length',
  'MPa/mm': 'lining-modulus',
  N·m: 'torque',
  kg: 'mass',
  'kg/m³': 'density',
  'm/min': 'cutting-speed',
  '°C': 'temperature',
  'W/(m·K)': 'conductivity',
  'J/(kg·K)': 'specific-heat',
};
/** Pressures of oil are below it, strengths of steel above. */
const LEAST_STRESS_MPA = 20;
const FIGURES = 5;
const FIGURE =
  /(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?) (MPa\/mm|MPa|mm|N·m|kg\/m³|kg|m\/min|°C|W\/\(m·K\)|J\/\(kg·K\))(?![\w/·²³])/g;

/**
 * A sentence of a schema, which speaks in the units that are kept and sent, as the reader of a form has it: its figures in
 * the units of the boxes. Five figures are enough to see what is wrong with one.
 */
export function inReadersUnit(sentence: string, { lengthUnit, decimalSign }: Writing): string {
  if (lengthUnit === 'mm') return sentence;
  return sentence
    .replace(FIGURE, (_, figure: string, unit: string) => {
      const value = Number(figure);
      const kind =
        unit === 'MPa' ? (Math.abs(value) < LEAST_STRESS_MPA ? 'pressure' : 'stress') : KEPT[unit]!;
      const bare = BARE_UNIT[kind].in;
      const row = UNITS.find((one) => one.kind === kindOf(kind) && one.name === bare)!;
      const zero = row.zero ? Number(row.zero.num) / Number(row.zero.den) : 0;
      const inUnit = ((value - zero) * Number(row.factor.den)) / Number(row.factor.num);
      return `${withSign(String(Number(inUnit.toPrecision(FIGURES))), decimalSign)} ${bare}`;
    })
    .replace(/\bin mm\b/g, 'in inches');
}
