import { CRITERIA } from '../words/fields/criteria.ts';
import { FAMILY } from '../words/fields/family.ts';
import { type AnyFields, entriesOf } from '../words/fields/field.ts';
import { MINUS } from '../words/print.ts';
import { BARE_UNIT, type TypedKind } from './bareUnit.ts';
import type { Writing } from './fieldText.ts';
import { withSign } from './plainNumber.ts';
import { inUnit } from './writeQuantity.ts';

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
  /(−?)(\d+(?:\.\d+)?(?:e[+-]?\d+)?) (MPa\/mm|MPa|mm|N·m|kg\/m³|kg|m\/min|°C|W\/\(m·K\)|J\/\(kg·K\))(?![\w/·²³])/g;

/** What fields say to do about a figure out of bounds, where that names a unit: as sent, and as typed in inches. */
const ADVICE: readonly (readonly [sent: string, inInches: string])[] = [FAMILY, CRITERIA].flatMap(adviceIn);

function adviceIn(fields: AnyFields): [string, string][] {
  return entriesOf(fields).flatMap(([, field]): [string, string][] => {
    if (field.kind === 'part') return adviceIn(field.fields);
    const advice = 'advice' in field ? field.advice : undefined;
    return typeof advice === 'object' ? [[advice.mm, advice.in]] : [];
  });
}

/** Figures below zero with a true minus, as everywhere on screen. */
export const withTrueMinus = (sentence: string): string => sentence.replace(/(?<=^|\s)-(?=\d)/g, MINUS);

/**
 * A sentence of a schema, which speaks in the units that are kept and sent, as the reader of a form has it: its figures in
 * the units of the boxes. Five figures are enough to see what is wrong with one.
 */
export function inReadersUnit(sentence: string, { lengthUnit, decimalSign }: Writing): string {
  const sent = withTrueMinus(sentence);
  if (lengthUnit === 'mm') return sent;
  return ADVICE.reduce((told, [ofSent, inInches]) => told.replace(ofSent, () => inInches), sent)
    .replace(FIGURE, (_, minus: string, figure: string, unit: string) => {
      const value = Number(figure) * (minus === '' ? 1 : -1);
      const kind =
        unit === 'MPa' ? (Math.abs(value) < LEAST_STRESS_MPA ? 'pressure' : 'stress') : KEPT[unit]!;
      const bare = BARE_UNIT[kind].in;
      const told = withSign(String(Number(inUnit(value, kind, bare).toPrecision(FIGURES))), decimalSign);
      return `${told.replace(/^-/, MINUS)} ${bare}`;
    })
    .replace(/\b(in|number of) mm\b/g, '$1 inches');
}
