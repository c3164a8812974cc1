import type { Formula } from '../../../shared/words/formula.ts';

interface Piece {
  /** `Valid`, `Source`, `Example`; '' before the first of these. */
  readonly label: string;
  readonly text: string;
  readonly formula: boolean;
}

const LABEL = /^(Valid|Source(?: of the formula)?|Example|Formulas, symbols, sources):\s*/;
/** A line that ends short of this was ended on purpose; longer ones only ran out of room. */
const FULL = 98;
/** Three blanks or more set a formula apart from the words before it. */
const APART = / {3,}/;
const LONGEST_FORMULA = 130;

const indentOf = (line: string) => line.length - line.trimStart().length;

/**
 * The comment’s own words, laid out for a page: lines that only ran out of room are joined, a formula and each of
 * validity, source and example begin a line of their own. Not a word is added or left out.
 */
export function formulaPieces(text: string): Piece[] {
  const paragraphs: string[] = [];
  let before = '';
  for (const raw of text.split('\n')) {
    const line = raw.trim();
    if (line !== '') {
      const [first, ...rest] = line.split(APART).filter(Boolean);
      const runsOn = before.length >= FULL && indentOf(before) === indentOf(raw);
      if (runsOn && !LABEL.test(first!)) paragraphs.push(`${paragraphs.pop()} ${first}`);
      else paragraphs.push(first!);
      paragraphs.push(...rest);
    }
    before = raw;
  }
  return paragraphs.map((paragraph) => {
    const label = LABEL.exec(paragraph);
    const words = paragraph.slice(label?.[0].length ?? 0);
    return {
      label: label?.[1] ?? '',
      text: words,
      formula:
        label === null && /[=≤≥∫]/.test(words) && !/[.:]$/.test(words) && words.length <= LONGEST_FORMULA,
    };
  });
}

/** What a calculation says of itself, in the words that stand above it in the code. */
export function FormulaText({ formula }: { formula: Formula }) {
  return (
    <div class="formula-text">
      {formulaPieces(formula.text).map((piece) => (
        <p class={piece.formula ? 'formula-line' : undefined}>
          {piece.label !== '' && <b>{piece.label}: </b>}
          {piece.text}
        </p>
      ))}
    </div>
  );
}
