import { type DecimalSign, plainNumber, withSign } from './plainNumber.ts';
import { numberOf, plus, times } from './ratio.ts';
import { quoted, tidy } from './tidy.ts';
import {
  exampleOf,
  KINDS,
  type Kind,
  UNITS,
  type UnitName,
  type UnitRow,
  unitNamed,
  unitsInWords,
} from './units.ts';

export interface TypedQuantity {
  /** Names the field in a refusal: "Wall at station 3". */
  readonly field: string;
  readonly typed: string;
  readonly kind: Kind;
  /** The unit a bare number takes: what the person chose for the field. */
  readonly unit: UnitName;
  readonly decimalSign: DecimalSign;
}

export interface Quantity {
  readonly ok: true;
  /** In the unit of KINDS[kind].keptIn: mm, N·m, MPa, rpm, deg … */
  readonly value: number;
  /** The text as typed, without blanks at its ends. */
  readonly typed: string;
  /** The unit it was read in. */
  readonly unit: UnitName;
  /** The unit as typed; null when the number stood bare. */
  readonly unitTyped: string | null;
}

export interface QuantityRefusal {
  readonly ok: false;
  /** One sentence or two: the field, what was typed, what is accepted. */
  readonly message: string;
  /** What was probably meant, ready for the box. */
  readonly meant?: string;
}

const LONGEST = 40;
/** The denominators on a steel rule; 3/15 in is a slip. */
const INCH_PARTS = [1n, 2n, 4n, 8n, 16n, 32n, 64n, 128n];

function unitOf(text: string, asked: TypedQuantity): UnitRow | string {
  const chosen = UNITS.find((row) => row.kind === asked.kind && row.name === asked.unit);
  const wanted = KINDS[asked.kind].name;
  if (!chosen) throw new Error(`"${asked.unit}" is no unit of ${wanted}.`);
  if (text === '') return chosen;
  const found = unitNamed(text);
  if (found?.kind === asked.kind) return found;
  const units = unitsInWords(asked.kind);
  const use = units === '' ? 'type the number without a unit' : `use ${units}`;
  if (!found) return `${quoted(text)} is not a unit for ${wanted}; ${use}.`;
  return `${found.name} is a unit of ${KINDS[found.kind].name.replace(/^an? /, '')}, and this is ${wanted}; ${use}.`;
}

/**
 * What a person typed into a box, as a number in the program's own unit. Exact: 12 in is 304.8 mm. Takes `0.187`,
 * `.187`, `3/16`, `1 3/16`, `1-3/16`, a sign in front, and a unit of the field's kind after; a bare number takes
 * the chosen unit. No thousands separators, no powers of ten, no fractions of a millimeter. Whether the value
 * makes sense (not below zero, not thicker than …) is for the schema; whether it slipped a decimal, for `doubt`.
 */
export function readQuantity(asked: TypedQuantity): Quantity | QuantityRefusal {
  const { field, kind, decimalSign } = asked;
  const typed = asked.typed.trim();
  const example = withSign(exampleOf(kind, asked.unit), decimalSign);
  const refuse = (why: string, meant?: string): QuantityRefusal => {
    const message = `${field}: ${why}`;
    return meant === undefined ? { ok: false, message } : { ok: false, message, meant };
  };

  if (typed === '') return refuse(`nothing was typed. Type ${KINDS[kind].name}, such as ${example}.`);
  if (typed.length > LONGEST)
    return refuse(`${quoted(typed)} is too long. Type ${KINDS[kind].name}, such as ${example}.`);
  const notPlain = `${quoted(typed)} is not a plain number. Type ${KINDS[kind].name}, such as ${example}.`;
  const text = tidy(typed);
  const split = /^([+-]?[\d.,/ -]*)(.*)$/.exec(text);
  const numberText = (split?.[1] ?? '').trim();
  const unitText = (split?.[2] ?? '').trim();
  if (!/\d/.test(numberText)) return refuse(notPlain);

  const unit = unitOf(unitText, asked);
  if (typeof unit === 'string') {
    // 0x10, 1e3, 4.9.in2 …: digits after letters are no unit.
    return /^(e[+-]?\d|x)/i.test(unitText)
      ? refuse(notPlain)
      : refuse(`${quoted(typed)} cannot be used. ${unit}`);
  }
  const number = plainNumber(numberText, decimalSign);
  const asUnit = unitText === '' ? '' : ` ${unitText}`;
  if (!number.ok) {
    if (number.meant === undefined) {
      return number.why === 'is not a plain number'
        ? refuse(notPlain)
        : refuse(`${quoted(typed)} ${number.why}. Type ${KINDS[kind].name}, such as ${example}.`);
    }
    const meant = `${number.meant}${asUnit}`;
    return refuse(`${quoted(typed)} ${number.why}. Did you mean ${meant}?`, meant);
  }
  if (number.fraction && !unit.fractions) {
    if (kind !== 'length')
      return refuse(`${quoted(typed)} is a fraction. Type ${KINDS[kind].name}, such as ${example}.`);
    const meant = `${numberText} in`;
    return refuse(
      `${quoted(typed)} is a fraction of ${unit.name}; only inches are read in fractions. Did you mean ${meant}?`,
      meant,
    );
  }
  if (number.fraction && kind === 'length' && !INCH_PARTS.includes(number.ratio.den)) {
    return refuse(
      `${quoted(typed)} has ${number.ratio.den} under the line; a fraction of an inch has 2, 4, 8, 16, 32, 64 or 128. Type a decimal, such as ${withSign('0.187 in', decimalSign)}.`,
    );
  }
  if (kind === 'count' && number.ratio.num % number.ratio.den !== 0n) {
    return refuse(`${quoted(typed)} is not a whole number. Type a count, such as ${example}.`);
  }
  const inKept = times(number.ratio, unit.factor);
  const value = numberOf(unit.zero ? plus(inKept, unit.zero) : inKept);
  return { ok: true, value, typed, unit: unit.name, unitTyped: unitText === '' ? null : unitText };
}
