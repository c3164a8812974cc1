import type { Formula } from '../../../shared/words/formula.ts';
import { MathLine } from './mathLine.tsx';

interface Piece {
  /** `Valid`, `Source`, `Example`; '' before the first of these. */
  readonly label: string;
  readonly text: string;
  readonly formula: boolean;
}

const LABEL = /^(Valid|Throws|Source(?: of the formula)?|Example|Formulas, symbols, sources):\s*/;
/** A line that ends short of this was ended on purpose; longer ones only ran out of room. */
const FULL = 98;
/** Three blanks or more set a formula apart from the words before it. */
const APART = / {3,}/;
const LONGEST_FORMULA = 130;
/** A path in the program’s source, alone or in brackets; and the file of another calculation, by its name alone. */
const OWN_PATH = /\s*\((?:[^()]*; )?[\w./]*\/[\w.]+\.ts\)|(?:[\w.]+\/)+[\w.]+\.ts/g;
const OWN_FILE = /\b(\w+)\.ts\b/g;

const indentOf = (line: string) => line.length - line.trimStart().length;

/** What a calculation is called where the code’s short name is no word of the screen. */
const SCREEN_NAME: Readonly<Record<string, string>> = {
  answersOtherwise: 'earlier decisions, worked out again',
  bendingBase: 'the cover when new',
  bendingCases: 'the cases shown',
  bestFirst: 'order of the studs',
  conformingPiston: 'most flexible piston',
  cutDialled: 'depth of cut',
  dialledIn: 'indicated in, with shims',
  faceLies: 'ways the face may lie',
  field: 'deflection and pressure anywhere',
  filletClearsChamfer: 'weld fillet at the hole',
  freedoms: 'numbering of the unknowns',
  gapWanted: 'pull-forward gap against its limits',
  gauss: 'Gauss rule',
  gaugeThatSettles: 'gauge that makes it sure',
  hermite: 'Hermite functions',
  holeCircle: 'bolt circle',
  knockOnFindings: 'other dimensions against their limits',
  knockOnLengths: 'other dimensions affected',
  linearProgramme: 'linear program',
  marksHeld: 'heat marks and lining pressure',
  nextPass: 'after each pass',
  normalShare: 'normal distribution',
  padPatch: 'pad as a square',
  padsOverTrack: 'pads over the friction surface',
  reach: 'starting the nut',
  rigidPiston: 'stiffest piston',
  rings: 'rows of stations',
  ringTold: 'weight and room of a stiffening ring',
  sameBut: 'studs alike but for the stud pilot',
  studWanted: 'stud needed',
  sureMargin: 'margin that makes it sure',
  temperColour: 'temper color',
  tiltOverTrack: 'tilt over the friction surface',
  tipClearance: 'stud end clearance',
  toleranceRows: 'tolerances, check by check',
  verifyCut: 'after the cut, checked',
  wallsLeftBy: 'walls the cut should leave',
  whatWouldMend: 'what would make it fit',
  whatWouldSettle: 'readings that make it sure',
  wrongNut: 'nut of another thread',
};

/** `tool plane` of `toolPlane`. */
export const nameInWords = (name: string) =>
  SCREEN_NAME[name] ?? name.replace(/([a-z0-9])([A-Z])/g, '$1 $2').toLowerCase();

/** The comment without the program’s own paths: of use to whoever changes the program, not to whoever reads the page. */
export function withoutFiles(text: string): string {
  return text
    .replace(OWN_PATH, '')
    .replace(OWN_FILE, (_, name: string) => `“${nameInWords(name)}”`)
    .replace(/ +([,.;])/g, '$1');
}

const isFormula = (words: string) =>
  /[=≤≥∫]/.test(words) && !/[.:]$/.test(words) && words.length <= LONGEST_FORMULA;

/**
 * The comment’s own words, laid out for a page: lines that only ran out of room are joined, a formula and each of
 * validity, source and example begin a line of their own. Paths in the source and what a function throws are left out, and
 * so is a line that then says nothing.
 */
export function formulaPieces(text: string): Piece[] {
  const paragraphs: string[] = [];
  let before = '';
  let formulaBefore = false;
  for (const raw of text.split('\n')) {
    const line = raw.trim();
    if (line !== '') {
      const [first, ...rest] = line.split(APART).filter(Boolean);
      const runsOn = !formulaBefore && before.length >= FULL && indentOf(before) === indentOf(raw);
      if (runsOn && !LABEL.test(first!)) paragraphs.push(`${paragraphs.pop()} ${first}`);
      else paragraphs.push(first!);
      paragraphs.push(...rest);
      formulaBefore = rest.length > 0 && isFormula(rest.at(-1)!);
    }
    before = raw;
  }
  return paragraphs.flatMap((paragraph) => {
    const label = LABEL.exec(paragraph);
    const words = withoutFiles(paragraph.slice(label?.[0].length ?? 0)).trim();
    if (words === '' || label?.[1] === 'Throws') return [];
    return {
      label: label?.[1] ?? '',
      text: words,
      formula: label === null && isFormula(words),
    };
  });
}

/** What a calculation finds, for a list of them: the first sentence of its words. */
export function firstSentence(text: string): string {
  const [first] = formulaPieces(text);
  return /^.*?[.:](?= |$)/.exec(first?.text ?? '')?.[0].replace(/:$/, '.') ?? first?.text ?? '';
}

/** What a calculation says of itself, in the words that stand above it in the code. */
export function FormulaText({ formula }: { formula: Formula }) {
  return (
    <div class="formula-text">
      {formulaPieces(formula.text).map((piece) => (
        <p class={piece.formula ? 'formula-line' : undefined}>
          {piece.label !== '' && <b>{piece.label}: </b>}
          {piece.formula ? <MathLine text={piece.text} /> : <WithSymbols text={piece.text} />}
        </p>
      ))}
    </div>
  );
}

/** Words in which `u_c` is set as a symbol. */
function WithSymbols({ text }: { text: string }) {
  return (
    <>
      {text.split(/((?<![\p{L}\d])[\p{L}µ]{1,2}_[\p{L}\d]+)/u).map((part, i) => {
        if (i % 2 === 0) return part;
        const [base, below] = part.split('_');
        return (
          <i>
            {base}
            <sub>{below}</sub>
          </i>
        );
      })}
    </>
  );
}
