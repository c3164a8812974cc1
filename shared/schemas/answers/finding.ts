import * as z from 'zod';
import type { Answer, Step, Unit, Warning } from '../../words/answer.ts';
import type { DoubtedFigure, DoubtedReading, Finding } from '../../words/finding.ts';
import { exactly, named } from './exactly.ts';

export const number = z.number();
export const text = z.string();
export const yes = z.boolean();
export const numberOrNull = number.nullable();
export const textOrNull = text.nullable();
export const numbers = z.array(number);

/** Every unit of a number with working; the record refuses one that is no unit, and asks for each. */
const UNITS: Readonly<Record<Unit, true>> = {
  mm: true,
  'mm²': true,
  deg: true,
  N: true,
  MPa: true,
  N·m: true,
  kg: true,
  g·mm: true,
  µm: true,
  threads: true,
  diameters: true,
  cuts: true,
  rpm: true,
  s: true,
  K: true,
  '%': true,
  '': true,
};

export const step = named(
  'Step',
  exactly<Step>({
    formula: text,
    numbers: text.describe('The formula with its numbers in it.'),
    source: text,
  }),
);

const warning = named('Warning', exactly<Warning>({ code: text, text }));
export const warnings = z.array(warning);

export const answer = named(
  'Answer',
  exactly<Answer & { readonly heavySideDeg?: number | null }>({
    symbol: text,
    value: numberOrNull.describe('null when it cannot be computed; a warning then says why.'),
    unit: z.enum(Object.keys(UNITS) as Unit[]),
    how: z.array(step),
    warnings,
    heavySideDeg: numberOrNull.optional().describe('Only in older records: where the unbalance is heavy.'),
  }),
);
export const answers = z.record(z.string(), answer).describe('Numbers with their working, by name.');

export const doubted = exactly<DoubtedReading>({
  path: text.describe('Where it is in the request: stations.3.wallMm.1.'),
  valueMm: number,
  probablyMm: numberOrNull.describe('null where nothing is likelier.'),
  question: text,
});

/** Beside an answer, what of the question looks like a slip. */
export interface FiguresDoubted {
  readonly doubts: readonly DoubtedFigure[];
}

export const figureDoubts = z
  .array(
    exactly<DoubtedFigure>({
      path: text.describe('Where it is in the request: joint.torqueNm.'),
      value: number,
      probably: number.describe('What was probably meant, in the same unit.'),
      unit: text,
      question: text,
    }),
  )
  .describe('Figures that look like a slip and are not among confirmed.');

const finding = named(
  'Finding',
  exactly<Finding>({
    id: text,
    title: text,
    status: z.enum(['pass', 'caution', 'fail', 'not-checked']),
    value: numberOrNull,
    limit: numberOrNull,
    unit: text,
    sentence: text,
    source: text.describe('Where the limit comes from.'),
    answer: answer.nullable(),
    weight: z
      .enum(['stop', 'send-back', 'caution'])
      .optional()
      .describe('Where the limits choose otherwise than usual: a stop has no way past it.'),
    doubts: z
      .array(doubted)
      .optional()
      .describe('Of doubtful-readings, where a cover is checked: what was asked about and not confirmed.'),
  }),
);
export const findings = z.array(finding);
