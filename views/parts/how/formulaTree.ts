/** A formula as it is set: what stands side by side, over, above and below. */
export type Term =
  | { readonly is: 'row'; readonly of: readonly Term[] }
  | { readonly is: 'mi' | 'mn' | 'mo' | 'words'; readonly text: string }
  | { readonly is: 'over'; readonly top: Term; readonly bottom: Term }
  | { readonly is: 'root'; readonly of: Term; readonly third: boolean }
  | { readonly is: 'fence'; readonly open: string; readonly close: string; readonly of: Term }
  | { readonly is: 'script'; readonly base: Term; readonly below: Term | null; readonly above: Term | null };

const BELOW = /^[₀-₉₋₊ᵢⱼₖₙ]+∞?/;
const ABOVE = /^[⁰¹²³⁴⁵⁶⁷⁸⁹⁻ⁿᵗᶻ]+/;
const PLAIN: Readonly<Record<string, string>> = Object.fromEntries([
  ...[...'₀₁₂₃₄₅₆₇₈₉'].map((sign, i) => [sign, String(i)]),
  ...[...'⁰¹²³⁴⁵⁶⁷⁸⁹'].map((sign, i) => [sign, String(i)]),
  ...Object.entries({ '₋': '−', '₊': '+', ᵢ: 'i', ⱼ: 'j', ₖ: 'k', ₙ: 'n', '⁻': '−', ⁿ: 'n', ᵗ: 't', ᶻ: 'z' }),
]);
/** Small raised and lowered signs as the signs they are. */
export const plainSigns = (text: string) => [...text].map((sign) => PLAIN[sign] ?? sign).join('');

const FENCES: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}', '⌈': '⌉', '⌊': '⌋' };
const FUNCTIONS = new Set(['max', 'min', 'cos', 'sin', 'tan', 'ln', 'atan2']);
/** A symbol: one letter, a differential, or a capital with what is written small after it. */
const SYMBOL = /^(?:\p{L}|µ|d[\p{L}]|\p{Lu}[\p{L}\d]{0,2}\d?)\u0304?['′]?$/u;
const NUMBER = /^(?:\d+(?:\.\d+)?|[½⅓¼])/;
const NAME = /^(?:(?![ΣΠᵢⱼₖₙᵗᶻⁿ])[\p{L}µ])(?:(?![ΣΠᵢⱼₖₙᵗᶻⁿ])[\p{L}\dµ]|\u0304)*['′]?/u;

/** Reads a formula as it is written in one line. Everything that stands there is set; only brackets of a fraction are left out. */
export function formulaTree(text: string): Term {
  const reader = new Reader(text);
  return reader.row(() => reader.rest === '');
}

class Reader {
  rest: string;
  constructor(text: string) {
    this.rest = text.trim();
  }

  private take(pattern: RegExp): string | null {
    const found = pattern.exec(this.rest)?.[0] ?? null;
    if (found !== null) this.rest = this.rest.slice(found.length);
    return found;
  }

  row(ends: () => boolean): Term {
    const of: Term[] = [];
    while (!ends() && this.rest !== '') {
      if (this.take(/^\s+/) !== null) continue;
      if (this.rest.startsWith('/') && of.length > 0) {
        this.take(/^\/\s*/);
        const top = of.pop()!;
        const bottom = this.primary();
        if (bottom === null) of.push(top, { is: 'mo', text: '/' });
        else of.push({ is: 'over', top: unfenced(top), bottom: unfenced(bottom) });
        continue;
      }
      of.push(this.primary() ?? { is: 'mo', text: this.take(/^./su)! });
    }
    return of.length === 1 ? of[0]! : { is: 'row', of };
  }

  /** What may stand over or under a line, with its scripts; null before an operator. */
  private primary(): Term | null {
    const base = this.fence() ?? this.root() ?? this.number() ?? this.name() ?? this.sum();
    return base === null ? null : this.scripts(base);
  }

  private fence(): Term | null {
    const open = this.rest[0] ?? '';
    const close = open === '|' ? '|' : FENCES[open];
    if (close === undefined || !this.rest.slice(1).includes(close)) return null;
    this.rest = this.rest.slice(1);
    const of = this.row(() => this.rest.startsWith(close));
    this.rest = this.rest.slice(close.length);
    return { is: 'fence', open, close, of };
  }

  private root(): Term | null {
    const sign = this.take(/^[√∛]\s*/);
    if (sign === null) return null;
    const under = this.fence() ?? this.number() ?? this.name();
    const of = under === null ? this.primary() : this.below(under);
    return { is: 'root', of: unfenced(of ?? { is: 'words', text: '' }), third: sign.startsWith('∛') };
  }

  private number(): Term | null {
    const text = this.take(NUMBER);
    return text === null ? null : { is: 'mn', text };
  }

  private sum(): Term | null {
    const text = this.take(/^[ΣΠ∫]/);
    return text === null ? null : { is: 'mo', text };
  }

  /** A symbol, a function, or words: as many as stand there. */
  private name(): Term | null {
    const first = this.take(NAME);
    if (first === null) return null;
    if (FUNCTIONS.has(first) || SYMBOL.test(first)) return { is: 'mi', text: first };
    let text = first;
    for (;;) {
      const next = /^[ -](?!-)/.test(this.rest) ? NAME.exec(this.rest.slice(1))?.[0] : undefined;
      if (next === undefined || FUNCTIONS.has(next) || (SYMBOL.test(next) && next !== 'a')) break;
      if (/^[_₀-₉ᵢ]/.test(this.rest.slice(1 + next.length))) break;
      text += this.rest.slice(0, 1 + next.length);
      this.rest = this.rest.slice(1 + next.length);
    }
    return { is: 'words', text };
  }

  private scripts(base: Term): Term {
    const withBelow = this.below(base);
    const above = this.above();
    if (above === null) return withBelow;
    return withBelow.is === 'script' && withBelow.above === null && withBelow !== base
      ? { ...withBelow, above }
      : { is: 'script', base: withBelow, below: null, above };
  }

  private below(base: Term): Term {
    const small = this.take(BELOW);
    const named =
      small ??
      this.take(/^_(?:[\p{L}\d]|\u0304)+(?:,(?:max|min|nut))?/u)?.slice(1) ??
      this.take(/^,(?:max|min)\b/)?.slice(1);
    if (named === undefined || named === null) return base;
    return { is: 'script', base, below: { is: 'mi', text: plainSigns(named) }, above: null };
  }

  private above(): Term | null {
    const small = this.take(ABOVE);
    if (small !== null) return { is: 'mn', text: plainSigns(small) };
    if (this.take(/^\^/) === null) return null;
    const minus = this.take(/^[−-]/);
    const raised = unfenced(this.fence() ?? this.number() ?? this.name() ?? { is: 'words', text: '' });
    return minus === null ? raised : { is: 'row', of: [{ is: 'mo', text: '−' }, raised] };
  }
}

/** Over and under a line, and under a root, brackets say nothing more. */
function unfenced(set: Term): Term {
  return set.is === 'fence' && set.open !== '|' && set.open !== '⌈' && set.open !== '⌊' ? set.of : set;
}

const BREAKS_BEFORE = new Set(['=', '≤', '≥', '≈', '→', '<', '>', '≠']);
const MAY_BREAK_BEFORE = new Set(['+', '−']);

/** Long brackets are set open, so that a line may end within them; around a fraction they stay as tall as it is. */
function openedUp(term: Term): Term[] {
  if (term.is !== 'fence' || lengthOf(term) < 13 || hasFraction(term)) return [term];
  const inner = term.of.is === 'row' ? term.of.of : [term.of];
  return [{ is: 'mo', text: term.open }, ...inner.flatMap(openedUp), { is: 'mo', text: term.close }];
}

function partsOf(term: Term): readonly Term[] {
  switch (term.is) {
    case 'row':
      return term.of;
    case 'over':
      return [term.top, term.bottom];
    case 'root':
    case 'fence':
      return [term.of];
    case 'script':
      return [term.base, ...(term.below ? [term.below] : []), ...(term.above ? [term.above] : [])];
    default:
      return [];
  }
}

function lengthOf(term: Term): number {
  const own = 'text' in term ? term.text.length : 1;
  return partsOf(term).reduce((sum, part) => sum + lengthOf(part), own);
}

function hasFraction(term: Term): boolean {
  return term.is === 'over' || partsOf(term).some(hasFraction);
}

/** A formula in pieces between which a line may end: at its relations, after its commas, and at sums of a long one. */
export function formulaLines(tree: Term): Term[][] {
  const pieces: Term[][] = [[]];
  const all = (tree.is === 'row' ? tree.of : [tree]).flatMap(openedUp);
  let long = 0;
  all.forEach((one, i) => {
    const sign = one.is === 'mo' ? one.text : '';
    const wordy = one.is === 'words' && one.text.split(' ').length > 3;
    const last = pieces.at(-1)!;
    if (last.length > 0 && (BREAKS_BEFORE.has(sign) || wordy || (long > 5 && MAY_BREAK_BEFORE.has(sign)))) {
      pieces.push([]);
      long = 0;
    }
    pieces.at(-1)!.push(one);
    long += 1;
    if ((sign === ',' || sign === ';' || sign === ':' || wordy) && i < all.length - 1) {
      pieces.push([]);
      long = 0;
    }
  });
  return pieces.filter((piece) => piece.length > 0);
}
