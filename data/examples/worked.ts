import type { Answer } from '../../shared/words/answer.ts';
import type { WorkedExample } from '../../shared/words/formula.ts';
import { MINUS } from '../../shared/words/print.ts';

/** Carries a calculation out when it is asked for, and says what went in and what came out. */
export type Example = () => WorkedExample;

/** `given` where the arguments are too long to say. */
export function worked<A extends readonly unknown[]>(
  calculation: (...args: A) => unknown,
  args: A,
  given = args
    .filter((one) => one !== 'mm')
    .map(inWords)
    .join('; '),
): Example {
  return () => ({ given, ...told(calculation(...args)) });
}

/** Something that fills arrays or takes functions: given, and what is said of it, by hand. */
export function shown(given: string, says: () => readonly string[]): Example {
  return () => ({ given, answers: [], says: says() });
}

/** Answers that bring their own working are shown with it; anything else is told. */
function told(found: unknown): Omit<WorkedExample, 'given'> {
  const answers = answersIn(found);
  if (answers.length > 0) return { answers, says: sentencesIn(found) };
  const sentences = sentencesIn(found);
  return { answers: [], says: sentences.length > 0 ? sentences : [inWords(found), ...stepsIn(found)] };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !ArrayBuffer.isView(value);
const isAnswer = (value: unknown): value is Answer =>
  isRecord(value) && 'how' in value && 'symbol' in value && 'value' in value;

/** The answer itself, or those it holds one or two steps down. */
function answersIn(found: unknown): Answer[] {
  if (isAnswer(found)) return [found];
  if (!isRecord(found)) return [];
  const held = Object.values(found).flatMap((value) =>
    isAnswer(value) ? [value] : isRecord(value) ? Object.values(value).filter(isAnswer) : [],
  );
  return held.filter((answer, i) => held.findIndex((other) => other.symbol === answer.symbol) === i);
}

/** The numbers of a working that comes without a result of its own. */
function stepsIn(found: unknown): string[] {
  if (!isRecord(found)) return [];
  const steps = [found.how, found.step].flat().filter(isRecord);
  return steps.flatMap(({ numbers }) => (typeof numbers === 'string' ? [numbers] : []));
}

function sentencesIn(found: unknown): string[] {
  if (Array.isArray(found)) return found.flatMap(sentencesIn);
  if (!isRecord(found)) return [];
  if (typeof found.sentence === 'string') return [found.sentence];
  return 'finding' in found ? sentencesIn(found.finding) : [];
}

const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ['MPaPerMm', 'MPa/mm'],
  ['WPerMK', 'W/(m·K)'],
  ['M2PerS', 'm²/s'],
  ['KgPerM3', 'kg/m³'],
  ['JPerKgK', 'J/(kg·K)'],
  ['WPerM2', 'W/m²'],
  ['MPerMin', 'm/min'],
  ['MmPerS', 'mm/s'],
  ['MmPerN', 'mm/N'],
  ['PerMm', '/mm'],
  ['Nmm', 'N·mm'],
  ['Nm', 'N·m'],
  ['Mm2', 'mm²'],
  ['Mm', 'mm'],
  ['MPa', 'MPa'],
  ['Deg', '°'],
  ['Rad', 'rad'],
  ['Rpm', 'rpm'],
  ['Um', 'µm'],
  ['Inch', 'in'],
  ['Kg', 'kg'],
  ['M', 'm'],
  ['N', 'N'],
  ['S', 's'],
];

/** Short names of the code, as the screen says them. */
const SCREEN: Readonly<Record<string, string>> = {
  'stud circle': 'bolt circle',
  track: 'friction surface',
  boss: 'center',
  ripple: 'waviness',
  dialled: 'depth of cut',
  colour: 'color',
  family: 'cover type',
};

/** `trackOuterDiameterMm: 264` as `friction surface outer diameter 264 mm`. */
function fieldInWords(name: string, value: unknown): string {
  if (name === 'id' || name === 'name') return String(value);
  const [ending, unit] =
    name === 'mmPerN' ? [name, 'mm/N'] : (UNITS.find(([end]) => name.endsWith(end)) ?? ['', '']);
  const words = name
    .slice(0, name.length - ending.length)
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/^young$/, 'E')
    .replace(/^poisson$/, 'ν')
    .replace(/\b(?:stud circle|track|boss|ripple|dialled|colour|family)\b/g, (word) => SCREEN[word] ?? word);
  const said = inWords(value);
  return `${words === '' ? '' : `${words} `}${said}${value === null || unit === '' ? '' : unit === '°' ? '°' : ` ${unit}`}`;
}

const MOST_LISTED = 8;
const WORKING = ['how', 'step', 'answers'];

function inWords(value: unknown): string {
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'number') return figure(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    const all = Array.from(value as unknown as Iterable<unknown>);
    const said = all.slice(0, MOST_LISTED).map((one) => (isRecord(one) ? `(${inWords(one)})` : inWords(one)));
    return said.length === 0
      ? 'none'
      : said.join(', ') + (all.length > MOST_LISTED ? ` … ${all.length} in all` : '');
  }
  if (!isRecord(value)) return String(value);
  return Object.entries(value)
    .filter(([name, one]) => typeof one !== 'function' && !isAnswer(one) && !WORKING.includes(name))
    .map(([name, one]) => fieldInWords(name, one))
    .join(', ');
}

/** Five figures, and no more than it has. */
export function figure(value: number): string {
  const size = Math.abs(value);
  const text =
    size !== 0 && (size < 1e-4 || size >= 1e7)
      ? size
          .toExponential(3)
          .replace(/\.?0+e/, 'e')
          .replace('e+', 'e')
          .replace('e-', `e${MINUS}`)
      : String(Number(size.toPrecision(size >= 1e5 ? 7 : 5)));
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}
