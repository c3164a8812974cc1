import { choice, count, height, list, orElse, orNull, strict, text, yesNo } from './fields.ts';
import { sentId } from './job.ts';

const who = text('The initials of whoever makes the change', { least: 1, most: 8 });
const why = orElse(text('The reason', { most: 2000, lines: true }), '');
const confirmed = orElse(
  list('What is confirmed', text('The place', { least: 1, most: 80 }), { most: 400 }),
  [],
);

/** A change of a cover's stay on the shelf. */
export const shelfChangeSchema = strict('The request', {
  who,
  why,
  what: choice('The change', ['put', 'moved', 'reserved', 'freed', 'off']),
  from: count('The place of the change that was seen', 0, 1_000_000_000),
  lies: orElse(text('Where it lies', { most: 80 }), ''),
  forJob: orElse(text('The number of the job it is kept for', { most: 40 }), ''),
});

/** One reading of a study of a gauge. */
export const studyReadingSchema = strict('The request', {
  id: orNull(sentId('The id of the reading')),
  who,
  place: count('The place that was asked for', 0, 100_000),
  valueMm: height('The reading'),
  typed: orElse(text('The reading as typed', { most: 40 }), ''),
  confirmed,
});

/** What was found of the inspection lists: those items alone that are sent change. */
export const inspectedCallSchema = strict('The request', {
  fromRevision: count('The revision the change starts from', 1, 1_000_000_000),
  who,
  why,
  items: list(
    'The items',
    strict('The entry', {
      listId: text('The list', { least: 1, most: 80 }),
      itemId: text('The item', { least: 1, most: 120 }),
      ok: orNull(yesNo('Whether it is as it has to be')),
      value: orNull(height('The value found')),
      note: orElse(text('The note', { most: 2000, lines: true }), ''),
    }),
    { least: 1, most: 400 },
  ),
  confirmed,
});
