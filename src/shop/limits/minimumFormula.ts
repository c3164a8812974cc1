import { formulaKept } from '../../../shared/quantity/formulaSign.ts';
import type { DecimalSign } from '../../../shared/quantity/plainNumber.ts';
import type { CoverShape } from '../../../shared/words/cover.ts';
import { type LengthUnit, MINUS, MM_PER_UNIT, printNumber } from '../../../shared/words/print.ts';
import { workOut } from './arithmetic.ts';
import { FormulaFault, type Name } from './formulaTokens.ts';
import { MOST_CHARACTERS, type Part, parsed } from './grammar.ts';

/** What a formula may ask of a cover. */
export type Measures = Pick<
  CoverShape,
  'nominalWallMm' | 'studCount' | 'studCircleDiameterMm' | 'trackInnerDiameterMm' | 'trackOuterDiameterMm'
>;

export type FormulaRead =
  | { readonly ok: true; readonly typed: string; readonly kept: string; readonly whole: Part }
  | { readonly ok: false; readonly message: string };

/** A formula as somebody typed it; or one sentence that repeats what is wrong in it, and says what may stand there. */
export function readFormula(typed: string, sign: DecimalSign): FormulaRead {
  const text = typed.trim();
  if (text.length > MOST_CHARACTERS)
    return {
      ok: false,
      message: `The formula has ${text.length} characters; it may have ${MOST_CHARACTERS}.`,
    };
  const tidy = text.replace(/[ \t\r\n\u00a0\u202f]+/g, ' ');
  try {
    return { ok: true, typed: tidy, kept: formulaKept(tidy, sign), whole: parsed(tidy, sign) };
  } catch (error) {
    if (error instanceof FormulaFault) return { ok: false, message: error.message };
    throw error;
  }
}

/** What a formula gives for one cover, and how: `max(0.165 in, 0.85 × 0.190 in) = 0.165 in`. */
export interface FormulaGives {
  /** null where it gives no length above zero for this cover. */
  readonly mm: number | null;
  readonly working: string;
}

/** A kept formula for a cover. One that cannot be read any more gives nothing, and its working says why. */
export function minimumByFormula(kept: string, cover: Measures, unit: LengthUnit): FormulaGives {
  const read = readFormula(kept, 'point');
  if (!read.ok) return { mm: null, working: `the formula cannot be used: ${read.message}` };
  const values: Record<string, number> = {};
  const mm = workOut(expressionOf(read.whole, cover, values), values);
  const told = new Telling(read.kept, cover, unitIn(read.whole) ?? unit);
  const left = read.whole.kind === 'if' ? `(${told.part(read.whole)})` : told.part(read.whole);
  return Number.isFinite(mm) && mm > 0
    ? { mm, working: `${left} = ${told.length(mm)}` }
    : {
        mm: null,
        working: `${left}${Number.isFinite(mm) ? ` = ${told.length(mm)}` : ''} is no length above zero`,
      };
}

const MEASURE: Readonly<Record<Name, keyof Measures>> = {
  'new wall': 'nominalWallMm',
  'stud count': 'studCount',
  'bolt circle': 'studCircleDiameterMm',
  'friction surface inside': 'trackInnerDiameterMm',
  'friction surface outside': 'trackOuterDiameterMm',
};

/** What the arithmetic is handed: signs, brackets, and names made here, one for each number. */
function expressionOf(part: Part, cover: Measures, values: Record<string, number>): string {
  const inner = (one: Part) => expressionOf(one, cover, values);
  const value = (number: number) => {
    const name = `q${Object.keys(values).length}`;
    values[name] = number;
    return name;
  };
  switch (part.kind) {
    case 'number':
    case 'length':
      return value(part.value);
    case 'name':
      return value(cover[MEASURE[part.name]]);
    case 'share':
      return `(${value(part.percent)} / 100 * ${inner(part.of)})`;
    case 'choice':
      return `${part.of}(${part.parts.map(inner).join(', ')})`;
    case 'brackets':
      return `(${inner(part.inner)})`;
    case 'if': {
      const sign = part.sign === '=' ? '==' : part.sign;
      return `((${inner(part.left)} ${sign} ${inner(part.right)}) ? ${inner(part.then)} : ${inner(part.otherwise)})`;
    }
    default:
      return `(${inner(part.left)} ${part.sign} ${inner(part.right)})`;
  }
}

/** The unit of the first length that is written in a formula; null where it has none. */
function unitIn(part: Part): LengthUnit | null {
  switch (part.kind) {
    case 'length':
      return part.unit;
    case 'number':
    case 'name':
      return null;
    case 'share':
      return unitIn(part.of);
    case 'brackets':
      return unitIn(part.inner);
    case 'choice':
      return part.parts.map(unitIn).find((unit) => unit !== null) ?? null;
    case 'if':
      return (
        [part.then, part.otherwise, part.left, part.right].map(unitIn).find((unit) => unit !== null) ?? null
      );
    default:
      return unitIn(part.left) ?? unitIn(part.right);
  }
}

const SHOWN_AS = { '+': '+', '-': MINUS, '*': '×', '/': '÷' } as const;
const DECIMALS = { mm: { least: 2, most: 4 }, in: { least: 3, most: 5 } } as const;

/** A formula with the figures of one cover in place of its names. */
class Telling {
  readonly #text: string;
  readonly #cover: Measures;
  readonly #unit: LengthUnit;

  constructor(text: string, cover: Measures, unit: LengthUnit) {
    this.#text = text;
    this.#cover = cover;
    this.#unit = unit;
  }

  part(part: Part): string {
    switch (part.kind) {
      case 'number':
      case 'length':
        return this.#text.slice(part.from, part.to);
      case 'name': {
        const value = this.#cover[MEASURE[part.name]];
        return part.power === 1 ? this.length(value) : String(value);
      }
      case 'share':
        return `${Number((part.percent / 100).toPrecision(12))} × ${this.part(part.of)}`;
      case 'choice':
        return `${part.of}(${part.parts.map((one) => this.part(one)).join(', ')})`;
      case 'brackets':
        return `(${this.part(part.inner)})`;
      case 'if': {
        const asked = `${this.part(part.left)} ${part.sign} ${this.part(part.right)}`;
        return `if ${asked} then ${this.part(part.then)} else ${this.part(part.otherwise)}`;
      }
      default:
        return `${this.part(part.left)} ${SHOWN_AS[part.sign]} ${this.part(part.right)}`;
    }
  }

  /** With as many decimals as it has, but no fewer than such lengths are written with. */
  length(mm: number): string {
    const value = mm / MM_PER_UNIT[this.#unit];
    const { least, most } = DECIMALS[this.#unit];
    let decimals: number = least;
    while (decimals < most && Math.abs(Number(value.toFixed(decimals)) - value) > 1e-9) decimals += 1;
    return `${printNumber(value, decimals)} ${this.#unit}`;
  }
}
