import * as z from 'zod';
import { quoted } from '../quantity/tidy.ts';
import { listInWords } from '../words/print.ts';
import { placeInPath } from './placeInPath.ts';

/** Nothing of a cover or a stack is longer; keeps every sum and square finite. */
const LONGEST_MM = 10_000;

/** A field that is wrong in itself is not compared with others: one fault, one sentence. */
const abort = true;

interface Sent {
  readonly path?: readonly PropertyKey[] | undefined;
  readonly input?: unknown;
}

/** What was sent instead of what was wanted: `the text "4.9"`, "a list". */
function sentAs(input: unknown): string {
  if (typeof input === 'string') return `the text ${quoted(input)}`;
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'boolean') return `${input}`;
  if (typeof input === 'number') return Number.isFinite(input) ? `the number ${input}` : 'no finite number';
  return 'an object';
}

function subject(name: string, sent: Sent): string {
  return `${name}${placeInPath(sent.path ?? [])}`;
}

function missing(input: unknown): boolean {
  return input === undefined || input === null;
}

export interface Bounds {
  readonly least?: number;
  /** The least value itself is not allowed. */
  readonly open?: boolean;
  readonly most?: number;
}

function boundsInWords({ least, open = false, most }: Bounds, unit: string): string {
  const of = unit === '' ? '' : ` ${unit}`;
  const parts = [
    least === undefined ? [] : [`${open ? 'more than' : 'at least'} ${least}${of}`],
    most === undefined ? [] : [`at most ${most}${of}`],
  ];
  return parts.flat().join(' and ');
}

/**
 * A number of one unit within bounds. NaN and infinities are refused; nothing is read out of text. `advice` says what to
 * do about one that is out of bounds, where the bounds alone do not.
 */
export function quantity(name: string, unit: string, bounds: Bounds, advice?: string) {
  const of = unit === '' ? '' : ` ${unit}`;
  const wanted = unit === '' ? 'a plain number' : `a plain number of ${unit}`;
  const error = (sent: Sent): string => {
    const what = subject(name, sent);
    if (missing(sent.input)) return `${what} is missing; give ${wanted}.`;
    if (typeof sent.input !== 'number') return `${what} was sent as ${sentAs(sent.input)}; send ${wanted}.`;
    if (!Number.isFinite(sent.input)) return `${what} is not a finite number; send ${wanted}.`;
    const sentence = `${what} is ${sent.input}${of}; it must be ${boundsInWords(bounds, unit)}.`;
    return advice === undefined ? sentence : `${sentence} ${advice}`;
  };
  let schema = z.number({ error });
  const { least, most, open = false } = bounds;
  if (least !== undefined)
    schema = open ? schema.gt(least, { error, abort }) : schema.min(least, { error, abort });
  if (most !== undefined) schema = schema.max(most, { error, abort });
  return schema.describe(unit === '' ? name : `${name}, ${unit}.`);
}

/** A length above zero. */
export function size(name: string) {
  return quantity(name, 'mm', { least: 0, open: true, most: LONGEST_MM });
}

/**
 * Where something lies on a cover, from its axis. Closer than this is no place on a face: the angle means nothing there
 * (this program's own bound).
 */
export function radius(name: string) {
  return quantity(name, 'mm', { least: 1, most: LONGEST_MM });
}

/** A length of zero or more. */
export function extent(name: string) {
  return quantity(name, 'mm', { least: 0, most: LONGEST_MM });
}

/** A length of either sign. */
export function height(name: string) {
  return quantity(name, 'mm', { least: -LONGEST_MM, most: LONGEST_MM });
}

/** Degrees, clockwise looking at the clutch face, 0° behind stud 1; one turn back and two on are understood. */
export function angle(name: string) {
  return quantity(name, 'degrees', { least: -360, most: 720 });
}

/** A whole number. */
export function count(name: string, least: number, most: number) {
  const error = (sent: Sent): string => {
    const what = subject(name, sent);
    if (missing(sent.input)) return `${what} is missing; give a whole number from ${least} to ${most}.`;
    const given = Number.isFinite(sent.input) ? `is ${sent.input}` : `was sent as ${sentAs(sent.input)}`;
    return `${what} ${given}; it must be a whole number from ${least} to ${most}.`;
  };
  return z.int({ error }).min(least, { error, abort }).max(most, { error, abort }).describe(name);
}

export function yesNo(name: string) {
  return z.boolean({ error: (sent) => `${subject(name, sent)} must be true or false.` }).describe(name);
}

export function choice<const T extends readonly [string, ...string[]]>(name: string, choices: T) {
  const words = listInWords(choices.map((one) => `"${one}"`)).replace(/ and (?=[^ ]*$)/, ' or ');
  return z
    .enum(choices, {
      error: (sent) =>
        missing(sent.input)
          ? `${subject(name, sent)} is missing; it is ${words}.`
          : `${subject(name, sent)} was sent as ${sentAs(sent.input)}; it is ${words}.`,
    })
    .describe(name);
}

// Control characters, half surrogates, and the marks that turn the direction of text round.
const UNPRINTABLE = /[\p{Cs}\u202a-\u202e\u2066-\u2069]|(?!\n)\p{Cc}/u;

interface TextRules {
  readonly most: number;
  readonly least?: number;
  /** Line breaks are kept, as \n. */
  readonly lines?: boolean;
}

/** Text as a person writes it: outer blanks taken off, a length limit, no control characters. */
export function text(name: string, { most, least = 0, lines = false }: TextRules) {
  const error = (sent: Sent): string => {
    const what = subject(name, sent);
    if (missing(sent.input)) return `${what} is missing; give it as text.`;
    if (typeof sent.input !== 'string') return `${what} was sent as ${sentAs(sent.input)}; send text.`;
    if (sent.input.trim().length < least) return `${what} is empty. Enter it.`;
    return `${what} has ${sent.input.trim().length} characters; at most ${most} are kept.`;
  };
  return z
    .string({ error })
    .overwrite((value) => value.replaceAll('\r\n', '\n').trim())
    .min(least, { error, abort })
    .max(most, { error, abort })
    .refine((value) => !UNPRINTABLE.test(lines ? value : value.replaceAll('\n', '\0')), {
      abort,
      error: (sent) => `${subject(name, sent)} has a control character in it; take it out.`,
    })
    .describe(name);
}

/** A day of the calendar that exists: 2026-02-30 is refused. */
export function day(name: string) {
  return text(name, { least: 10, most: 10 }).refine(
    (value) => {
      const date = /^\d{4}-\d\d-\d\d$/.test(value) ? new Date(`${value}T00:00:00Z`) : new Date(Number.NaN);
      return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(value);
    },
    { error: `${name} must be a day of the calendar, written as in 2026-11-24.` },
  );
}

/** Left out, or null: null. */
export function orNull<T extends z.ZodType>(schema: T) {
  return schema.nullish().transform((value) => (value ?? null) as z.output<T> | null);
}

/** Left out, or null: the value given here. */
export function orElse<T extends z.ZodType>(schema: T, otherwise: z.output<T>) {
  return schema.nullish().transform((value) => (value ?? otherwise) as z.output<T>);
}

/** An object that knows its fields. One it does not know is an error, never dropped in silence. */
export function strict<Shape extends z.core.$ZodLooseShape>(name: string, shape: Shape) {
  const known = Object.keys(shape).join(', ');
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') return `Known here are ${known}.`;
      return missing(issue.input)
        ? `${subject(name, issue)} is missing; give an object with the fields ${known}.`
        : `${subject(name, issue)} was sent as ${sentAs(issue.input)}; send an object with the fields ${known}.`;
    },
  });
}

interface ListRules {
  readonly most: number;
  readonly least?: number;
  /** The sentence for an empty list. */
  readonly empty?: string;
}

/** A list with a limit. One that is too long is refused before anything in it is looked at. */
export function list<Item extends z.ZodType>(
  name: string,
  item: Item,
  { most, least = 0, empty }: ListRules,
) {
  const error = (sent: Sent): string => {
    if (Array.isArray(sent.input))
      return empty ?? `${subject(name, sent)} is an empty list; give at least one.`;
    return missing(sent.input)
      ? `${subject(name, sent)}: the list is missing.`
      : `${subject(name, sent)}: ${sentAs(sent.input)} was sent; send a list.`;
  };
  return z.preprocess((sent, ctx) => {
    if (!Array.isArray(sent) || sent.length <= most) return sent;
    const message = `${name}: ${sent.length} were sent; at most ${most} can be taken at once.`;
    ctx.addIssue({ code: 'custom', message });
    return z.NEVER;
  }, z.array(item, { error }).min(least, { error, abort }).max(most));
}
