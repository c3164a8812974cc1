import type { DecimalSign } from '../../../shared/quantity/plainNumber.ts';
import { quoted } from '../../../shared/quantity/tidy.ts';
import {
  FormulaFault,
  type Keyword,
  type Name,
  type Place,
  type Sign,
  type Token,
  tokensOf,
} from './formulaTokens.ts';

/** A part of a formula. `power` of length: 0 a plain number, 1 a length, 2 an area. */
export type Part = Place & { readonly power: number } & (
    | { readonly kind: 'number'; readonly value: number }
    | {
        readonly kind: 'length';
        readonly value: number;
        readonly unit: 'mm' | 'in';
        readonly fraction: boolean;
      }
    | { readonly kind: 'name'; readonly name: Name }
    | {
        readonly kind: 'sum' | 'term';
        readonly sign: '+' | '-' | '*' | '/';
        readonly left: Part;
        readonly right: Part;
      }
    | { readonly kind: 'share'; readonly percent: number; readonly of: Part }
    | { readonly kind: 'choice'; readonly of: 'min' | 'max'; readonly parts: readonly Part[] }
    | { readonly kind: 'brackets'; readonly inner: Part }
    | {
        readonly kind: 'if';
        readonly sign: Compared;
        readonly left: Part;
        readonly right: Part;
        readonly then: Part;
        readonly otherwise: Part;
      }
  );

const COMPARED = ['<', '<=', '>', '>=', '='] as const;
export type Compared = (typeof COMPARED)[number];

export const MOST_CHARACTERS = 200;
const MOST_LEVELS = 10;
const POWER_OF: Readonly<Record<Name, 0 | 1>> = {
  'new wall': 1,
  'stud count': 0,
  'bolt circle': 1,
  'friction surface inside': 1,
  'friction surface outside': 1,
};

/**
 * A limit of the shop, taken apart by this grammar and no other; nothing is worked out here.
 *
 *     limit = sum | "if" sum ("<"|"<="|">"|">="|"=") sum "then" limit "else" limit
 *     sum   = term {("+"|"-") term}      term = atom {("*"|"/") atom}
 *     atom  = number [unit] | number "%" "of" atom | name | ("min"|"max") "(" limit {";" limit} ")" | "(" limit ")"
 *
 * Throws a FormulaFault where the text is not one, is no length, or adds or compares what cannot be.
 */
export function parsed(text: string, sign: DecimalSign): Part {
  const reader = new Reader(text, sign);
  const whole = reader.limit();
  reader.end();
  if (whole.power !== 1) {
    throw new FormulaFault(
      `${reader.quote(whole)} gives ${powerWord(whole.power)}, and a minimum wall is a length. ${LENGTHS_HAVE_UNITS}`,
      whole,
    );
  }
  return whole;
}

function powerWord(power: number): string {
  if (power === 0) return 'a plain number';
  if (power === 1) return 'a length';
  return power === 2 ? 'an area' : 'neither a number nor a length';
}

const LENGTHS_HAVE_UNITS = 'Write the unit behind the figure, or a name such as new wall.';

class Reader {
  readonly #text: string;
  readonly #sign: DecimalSign;
  readonly #tokens: readonly Token[];
  #next = 0;
  #levels = 0;

  constructor(text: string, sign: DecimalSign) {
    this.#text = text;
    this.#sign = sign;
    this.#tokens = tokensOf(text, sign);
  }

  quote({ from, to }: Place): string {
    return quoted(this.#text.slice(from, to));
  }

  end(): void {
    if (this.#token.kind !== 'end') throw this.#unexpected('+, −, ×, ÷ or the end of the formula');
  }

  limit(): Part {
    const begin = this.#token;
    if (!this.#take('if')) return this.#sum();
    return this.#deeper(begin, () => {
      const left = this.#sum();
      const sign = COMPARED.find((one) => this.#take(one));
      if (sign === undefined) throw this.#unexpected('<, <=, >, >= or =');
      const right = this.#sum();
      this.#alike(left, right, 'compares');
      this.#must('then', 'then');
      const then = this.limit();
      this.#must('else', 'else');
      const otherwise = this.limit();
      this.#alike(then, otherwise, 'chooses between');
      return {
        kind: 'if',
        sign,
        left,
        right,
        then,
        otherwise,
        power: then.power,
        ...reach(begin, otherwise),
      };
    });
  }

  #sum(): Part {
    let left = this.#term();
    for (let sign = this.#oneOf('+', '-'); sign !== null; sign = this.#oneOf('+', '-')) {
      const right = this.#term();
      this.#alike(left, right, sign === '+' ? 'adds' : 'takes away');
      left = { kind: 'sum', sign, left, right, power: left.power, ...reach(left, right) };
    }
    return left;
  }

  #term(): Part {
    let left = this.#atom();
    for (let sign = this.#oneOf('*', '/'); sign !== null; sign = this.#oneOf('*', '/')) {
      const right = this.#atom();
      const power = sign === '*' ? left.power + right.power : left.power - right.power;
      left = { kind: 'term', sign, left, right, power, ...reach(left, right) };
    }
    return left;
  }

  #atom(): Part {
    const token = this.#token;
    if (token.kind === 'number') {
      this.#next += 1;
      return this.#take('%') ? this.#share(token) : { ...token, power: 0 };
    }
    if (token.kind === 'length') {
      this.#next += 1;
      return { ...token, power: 1 };
    }
    if (token.kind === 'name') {
      this.#next += 1;
      return { ...token, power: POWER_OF[token.name] };
    }
    const of = this.#oneOf('min', 'max');
    if (of !== null) return this.#choice(of, token);
    if (this.#take('(')) {
      return this.#deeper(token, () => {
        const inner = this.limit();
        const close = this.#must(')', 'a closing bracket');
        return { kind: 'brackets', inner, power: inner.power, ...reach(token, close) };
      });
    }
    throw this.#unexpected(
      'a length with its unit, a number, a name such as new wall, min(, max( or a bracket',
    );
  }

  #share(number: Token & { readonly kind: 'number' }): Part {
    this.#must('of', 'of and what it is a share of, as in 85 % of new wall');
    return this.#deeper(number, () => {
      const of = this.#atom();
      return { kind: 'share', percent: number.value, of, power: of.power, ...reach(number, of) };
    });
  }

  #choice(of: 'min' | 'max', begin: Token): Part {
    this.#must('(', `a bracket, as in ${of}(a${this.#sign === 'comma' ? ';' : ','} b)`);
    return this.#deeper(begin, () => {
      const first = this.limit();
      const parts = [first];
      while (this.#take(';')) {
        const part = this.limit();
        this.#alike(first, part, 'chooses between');
        parts.push(part);
      }
      const close = this.#must(
        ')',
        `+, −, ×, ÷, ${this.#sign === 'comma' ? '; ' : 'a comma '}or a closing bracket`,
      );
      return { kind: 'choice', of, parts, power: first.power, ...reach(begin, close) };
    });
  }

  get #token(): Token {
    return this.#tokens[this.#next]!;
  }

  #take(sign: Sign | Keyword): boolean {
    const token = this.#token;
    if (token.kind !== 'sign' || token.sign !== sign) return false;
    this.#next += 1;
    return true;
  }

  #oneOf<One extends Sign | Keyword>(...signs: readonly One[]): One | null {
    return signs.find((sign) => this.#take(sign)) ?? null;
  }

  #must(sign: Sign | Keyword, wanted: string): Place {
    const token = this.#token;
    if (!this.#take(sign)) throw this.#unexpected(wanted);
    return token;
  }

  #deeper(at: Place, inner: () => Part): Part {
    if (this.#levels === MOST_LEVELS) {
      throw new FormulaFault(
        `${this.quote({ from: at.from, to: this.#text.length })} lies deeper than ${MOST_LEVELS} brackets and choices. Make the formula simpler.`,
        at,
      );
    }
    this.#levels += 1;
    const part = inner();
    this.#levels -= 1;
    return part;
  }

  #alike(left: Part, right: Part, does: string): void {
    if (left.power === right.power) return;
    const each = (part: Part) => `${this.quote(part)}, ${powerWord(part.power)}`;
    const whole = reach(left, right);
    throw new FormulaFault(
      `${this.quote(whole)} ${does} ${each(left)}, and ${each(right)}. ${LENGTHS_HAVE_UNITS}`,
      whole,
    );
  }

  #unexpected(wanted: string): FormulaFault {
    const token = this.#token;
    if (token.kind === 'end') return new FormulaFault(`The formula ends where ${wanted} must stand.`, token);
    const before = this.#tokens[this.#next - 1];
    const after = before === undefined ? 'At the beginning' : `After ${this.quote(before)}`;
    return new FormulaFault(`${this.quote(token)} cannot stand there. ${after}, use ${wanted}.`, token);
  }
}

function reach({ from }: Place, { to }: Place): Place {
  return { from, to };
}
