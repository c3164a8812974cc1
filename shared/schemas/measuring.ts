import * as z from 'zod';
import { angle, choice, count, list, orElse, orNull, size, strict, text, yesNo } from './fields.ts';

const MOST_AT_ONCE = 1200;

const id = (what: string) =>
  text(what, { least: 16, most: 64 }).refine((value) => /^[A-Za-z0-9-]+$/.test(value), {
    error: `${what} must be letters, digits or hyphens.`,
  });

/** One reading as the measuring screen keeps it on the tablet: as typed, with all that is needed to read it later. */
export const keptReadingSchema = strict('The reading', {
  id: id('The reading’s id'),
  pass: choice('The pass', ['before', 'after']),
  kind: choice('The kind of reading', ['wall', 'face', 'mark']),
  angleDeg: angle('The angle'),
  radiusMm: size('The radius'),
  typed: text('What was typed', { least: 1, most: 60 }),
  unit: choice('The unit when none is typed', ['mm', 'in']),
  decimalSign: choice('The decimal sign', ['point', 'comma']),
  gauge: text('The gauge', { most: 120 }),
  /** The person was asked about the value and said it is right. */
  confirmed: orElse(yesNo('Whether the reading was confirmed'), false),
  replaces: orNull(id('The id of the reading it replaces')),
  /** The initials of whoever typed it; '' where nobody had said yet, as pages of earlier versions kept it. */
  who: orElse(text('The initials', { most: 40 }), ''),
  /** The revision at which the ring was welded, as this tablet knew it when the reading was typed. */
  weldedAt: orElse(count('The revision of the weld', 0, 1_000_000_000), 0),
});
export type KeptReading = z.output<typeof keptReadingSchema>;

/** What a tablet sends once it is online; readings are checked one by one, so that a bad one does not block the others. */
export const keptReadingsSchema = strict('The request', {
  who: orElse(text('The initials', { most: 40 }), ''),
  why: orElse(text('The reason', { most: 2000, lines: true }), ''),
  readings: list('The readings', z.unknown(), { least: 1, most: MOST_AT_ONCE }),
});
