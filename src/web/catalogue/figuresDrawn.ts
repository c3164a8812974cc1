import { type AnyFields, allOptional, entriesOf, lowerFirst } from '../../../shared/words/fields/field.ts';
import { MINUS } from '../../../shared/words/print.ts';
import type { Expected } from '../../shop/doubts/expectedFigures.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

/** What boxes hold, for a drawing: null where one is empty, cannot be read, or holds what looks like a slip. */
export function figuresDrawn<F extends AnyFields>(
  form: TypedForm,
  fields: F,
  expected: Expected<F>,
): Record<keyof F & string, number | null> {
  const read = readBody(form, allOptional(fields)) as Readonly<Record<string, unknown>>;
  askAboutFigures(form, fields, expected);
  const figures = entriesOf(fields).map(([key, field]) => {
    const value = read[key];
    const box = field.box ?? key;
    const below = typeof value === 'number' && (field.kind === 'extent' ? value < 0 : value <= 0);
    if (below)
      form.fault(
        box,
        `${field.label}: ${form.text(box).replace(/^-/, MINUS)} can’t be drawn. Enter it above 0.`,
      );
    const doubted = form.faults.some(({ path }) => path === box);
    return [key, typeof value === 'number' && !doubted ? value : null];
  });
  return Object.fromEntries(figures);
}

/** Why what was typed is not drawn: the question alone where one is asked. */
export function notDrawn(form: TypedForm): string[] {
  return form.faults.map(({ path, message }) => {
    const asked = form.doubts.find(({ name }) => name === path)?.question;
    return `Not in the drawing: ${lowerFirst(asked ?? message)}`;
  });
}

/** What lies within what, with the box of each: the first pair typed the wrong way round is said. */
export function crossedIn<Key extends string>(
  figures: Readonly<Record<Key, number | null>>,
  fields: Readonly<Record<Key, { readonly letter: string; readonly label: string }>>,
  within: readonly (readonly [Key, Key])[],
): string | null {
  for (const [inner, outer] of within) {
    const [a, b] = [figures[inner], figures[outer]];
    if (a !== null && b !== null && a > b)
      return `Not drawn as typed: ${lettered(fields[inner])}, must be smaller than ${lettered(fields[outer])}.`;
  }
  return null;
}

export function lettered({ letter, label }: { readonly letter: string; readonly label: string }): string {
  return `${letter}, ${lowerFirst(label)}`;
}

/** None of them: what is crossed is drawn as usual, without figures. */
export function noFigures<Key extends string>(figures: Readonly<Record<Key, unknown>>): Record<Key, null> {
  return Object.fromEntries(Object.keys(figures).map((key) => [key, null])) as Record<Key, null>;
}
