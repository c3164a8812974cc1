import { type DecimalSign, plainNumber } from '../../../shared/quantity/plainNumber.ts';
import { numberOf } from '../../../shared/quantity/ratio.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import { quoted } from '../../../shared/quantity/tidy.ts';
import { unitNamed } from '../../../shared/quantity/units.ts';

/** Where a part of a formula stands in its text. */
export interface Place {
  readonly from: number;
  readonly to: number;
}

/** What a formula may name of a cover. */
const NAMES = [
  'new wall',
  'stud count',
  'bolt circle',
  'friction surface inside',
  'friction surface outside',
] as const;
export type Name = (typeof NAMES)[number];

const KEYWORDS = ['if', 'then', 'else', 'min', 'max', 'of'] as const;
const SIGNS = ['<=', '>=', '<', '>', '=', '+', '-', '*', '/', '(', ')', ';', '%'] as const;
/** Written otherwise, and the same. */
const SAME: Readonly<Record<string, Sign>> = { '−': '-', '×': '*', '÷': '/' };
export type Keyword = (typeof KEYWORDS)[number];
export type Sign = (typeof SIGNS)[number];

/** A part of a formula that is not taken apart further. A length is in mm; both commas and semicolons part arguments. */
export type Token = Place &
  (
    | { readonly kind: 'number'; readonly value: number }
    | {
        readonly kind: 'length';
        readonly value: number;
        readonly unit: 'mm' | 'in';
        readonly fraction: boolean;
      }
    | { readonly kind: 'name'; readonly name: Name }
    | { readonly kind: 'sign'; readonly sign: Sign | Keyword }
    | { readonly kind: 'end' }
  );

/** A formula that cannot be used: what is wrong, and where. */
export class FormulaFault extends Error {
  readonly place: Place;

  constructor(message: string, place: Place) {
    super(message);
    this.place = place;
  }
}

const NAMES_IN_WORDS = NAMES.join(', ');
const WORD = /^[\p{L}_][\p{L}\p{N}_.]*/u;
const NAME = new RegExp(`^(?:${NAMES.join('|').replaceAll(' ', '\\s+')})(?![\\p{L}\\p{N}_])`, 'iu');
/** A fraction of a unit; after a hyphen, a blank or a cut figure as it is printed on a rule. */
const FRACTION = /^(?:\d+(?:-|\s+))?\d+\s*\/\s*\d+(?=\s*[\p{L}"])/u;
const MIXED_BY_HYPHEN = /^\d+-\d/;
const FIGURE = { point: /^(?:\d+\.?\d*|\.\d+)(?:\.\d*)*/, comma: /^(?:\d[\d.,]*|,\d[\d.,]*)/ } as const;
const UNIT = /^\s*(\p{L}+\.?|")/u;

/** The text taken apart, with an end after it. Anything that has no place in any formula is refused here. */
export function tokensOf(text: string, sign: DecimalSign): readonly Token[] {
  const tokens: Token[] = [];
  let from = 0;
  while (from < text.length) {
    const blank = /^\s+/.exec(text.slice(from))?.[0].length ?? 0;
    if (blank > 0) from += blank;
    else {
      const token = tokenAt(text, from, sign, tokens.at(-1));
      tokens.push(token);
      from = token.to;
    }
  }
  return [...tokens, { kind: 'end', from: text.length, to: text.length }];
}

function tokenAt(text: string, from: number, decimalSign: DecimalSign, before: Token | undefined): Token {
  const rest = text.slice(from);
  const name = NAME.exec(rest)?.[0];
  if (name !== undefined) {
    const said = name.toLowerCase().replace(/\s+/g, ' ');
    return { kind: 'name', name: NAMES.find((one) => one === said)!, from, to: from + name.length };
  }
  const number = numberAt(text, from, decimalSign, before);
  if (number !== null) return number;
  const two = SIGNS.find((one) => rest.startsWith(one)) ?? SAME[rest[0]!];
  if (two !== undefined)
    return { kind: 'sign', sign: two, from, to: from + (rest.startsWith(two) ? two.length : 1) };
  if (rest[0] === ',') {
    const place = { from, to: from + 1 };
    if (decimalSign === 'point') return { kind: 'sign', sign: ';', ...place };
    throw new FormulaFault(
      '“,” is the decimal sign here. Part what min( and max( choose from with “;”.',
      place,
    );
  }
  const word = WORD.exec(rest)?.[0];
  const keyword = KEYWORDS.find((one) => one === word?.toLowerCase());
  if (keyword !== undefined) return { kind: 'sign', sign: keyword, from, to: from + word!.length };
  if (word !== undefined) {
    throw new FormulaFault(
      `${quoted(word)} is no word of a formula. It may name ${NAMES_IN_WORDS}; use min( ), max( ), % of and if … then … else.`,
      { from, to: from + word.length },
    );
  }
  const letter = String.fromCodePoint(rest.codePointAt(0)!);
  throw new FormulaFault(
    `${/\p{C}/u.test(letter) ? 'A character that does not show' : quoted(letter)} has no place in a formula. Use numbers, lengths, names, + − × ÷ and brackets.`,
    { from, to: from + letter.length },
  );
}

/** A number, with its unit of length where it has one; null where none begins here. */
function numberAt(
  text: string,
  from: number,
  decimalSign: DecimalSign,
  before: Token | undefined,
): Token | null {
  const rest = text.slice(from);
  const fraction = FRACTION.exec(rest)?.[0];
  if (fraction !== undefined) {
    const unit = unitAfter(rest, fraction.length);
    if (unit !== null) return fractionAt(rest.slice(0, unit.to), from, decimalSign, before);
  }
  const figure = FIGURE[decimalSign].exec(rest)?.[0];
  if (figure === undefined) return null;
  const unit = unitAfter(rest, figure.length);
  const to = unit?.to ?? figure.length;
  const place = { from, to: from + to };
  if (unit !== null) return { ...lengthIn(rest.slice(0, to), place, decimalSign), fraction: false };
  const read = plainNumber(figure, decimalSign);
  if (!read.ok) throw new FormulaFault(`${quoted(figure)} ${read.why}.`, place);
  return { kind: 'number', value: numberOf(read.ratio), ...place };
}

/** Two readings of one text are none: what may be a whole number less a fraction, or divided by a fraction, is asked about. */
function fractionAt(typed: string, from: number, decimalSign: DecimalSign, before: Token | undefined): Token {
  const place = { from, to: from + typed.length };
  const after = before?.kind === 'sign' ? before.sign : null;
  if (MIXED_BY_HYPHEN.test(typed) && (after === '*' || after === '/')) {
    const blank = typed.replace('-', ' ');
    throw new FormulaFault(
      `${quoted(typed)} can be read two ways after ${after === '*' ? '×' : '÷'}. Write ${blank}, or put blanks around the minus and brackets around what belongs together.`,
      place,
    );
  }
  if (after === '/')
    throw new FormulaFault(
      `${quoted(typed)} can be read two ways after ÷. Put brackets around it: (${typed.trim()}).`,
      place,
    );
  return { ...lengthIn(typed, place, decimalSign), fraction: true };
}

/** A unit of length after a number; null where another word, or none, stands there. */
function unitAfter(rest: string, length: number): { readonly to: number } | null {
  const found = UNIT.exec(rest.slice(length));
  const name = found?.[1] ?? '';
  if (unitNamed(name)?.kind !== 'length') return null;
  return { to: length + found![0].length };
}

function lengthIn(typed: string, place: Place, decimalSign: DecimalSign) {
  const read = readQuantity({ field: '', typed, kind: 'length', unit: 'mm', decimalSign });
  if (!read.ok) throw new FormulaFault(read.message.replace(/^: /, ''), place);
  const inches = read.unit === 'in' || read.unit === 'thou';
  return { kind: 'length', value: read.value, unit: inches ? 'in' : 'mm', ...place } as const;
}
