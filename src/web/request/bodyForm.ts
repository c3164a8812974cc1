import { boxOf, inPart, type Place, typedAs } from '../../../shared/quantity/fieldText.ts';
import {
  type AnyField,
  type AnyFields,
  type BodyOf,
  entriesOf,
  isQuantity,
  type KnownFigures,
  OWN_FIGURE,
} from '../../../shared/words/fields/field.ts';
import type { TypedForm } from './typed.ts';

interface Reading extends Place {
  readonly known?: KnownFigures;
  /** What an empty box stands for, where that depends on something beside the form. */
  readonly ifEmpty?: Readonly<Record<string, unknown>>;
  /** What it is a body of, said after a label: "layer 2". */
  readonly of?: string;
  /** Nothing of it has been begun: an empty box is no fault. */
  readonly idle?: boolean;
}

/** What was read of a body: null where a box was empty or could not be used, and then the form says why. */
export type BodyRead<F> = { readonly [Key in keyof BodyOf<F>]: BodyOf<F>[Key] | null };

/** The boxes of a body, read as its fields say. Whether the values make sense is for the schema of the same fields. */
export function readBody<F extends AnyFields>(form: TypedForm, fields: F, how: Reading = {}): BodyRead<F> {
  const read = entriesOf(fields).flatMap(([key, field]) =>
    field.kind === 'made' ? [] : [[key, readField(form, key, field, how)]],
  );
  return Object.fromEntries(read) as BodyRead<F>;
}

/** Tells a form which quantities the boxes of a body hold, where they are not read: they may come with the address. */
export function noteBody(form: TypedForm, fields: AnyFields, place: Place = {}): void {
  for (const [key, field] of entriesOf(fields)) {
    if (field.kind === 'part') noteBody(form, field.fields, inPart(field, place));
    const box = boxOf(key, field, place);
    if (box === null) continue;
    if (field.kind === 'lengths') form.note(box, 'length');
    else if (isQuantity(field)) form.note(box, typedAs(field));
  }
}

/** Whether anything was typed that is part of a body; what is chosen from a list alone is not. */
export function anyTyped(form: TypedForm, fields: AnyFields, place: Place = {}): boolean {
  return entriesOf(fields).some(([key, field]) => {
    if (field.kind === 'part') return anyTyped(form, field.fields, inPart(field, place));
    const box = boxOf(key, field, place);
    return box !== null && field.kind !== 'choice' && field.kind !== 'made' && form.has(box);
  });
}

function readField(form: TypedForm, key: string, field: AnyField, how: Reading): unknown {
  if (field.kind === 'part') {
    const below = inPart(field, how);
    if (field.optional && !anyTyped(form, field.fields, below)) return null;
    return readBody(form, field.fields, { ...below, ifEmpty: {} });
  }
  const box = boxOf(key, field, how);
  if (box === null) return field.optional ? null : (field.ifLeftOut ?? null);
  const read = readBox(form, box, field, how);
  if (field.kind === 'choice' && field.unsaid !== undefined) return read;
  const places = [box, 'chosenIn' in field ? (field.chosenIn ?? box) : box];
  if (read !== null || field.optional || how.idle || form.faults.some(({ path }) => places.includes(path)))
    return read;
  return how.ifEmpty?.[key] ?? field.ifEmpty ?? form.needed(null, box, labelOf(field, how));
}

function labelOf({ label }: AnyField, { of }: Reading): string {
  return of === undefined ? label : `${label} of ${of}`;
}

/** What stands in one box; null where nothing does. */
function readBox(form: TypedForm, box: string, field: Exclude<AnyField, { kind: 'part' }>, how: Reading) {
  const label = labelOf(field, how);
  switch (field.kind) {
    case 'made':
      return null;
    case 'text':
    case 'day': {
      const text = form.text(box);
      return text === '' && (field.optional || field.kind === 'day' || field.least) ? null : text;
    }
    case 'formula':
      return form.formula(box, label);
    case 'choice':
      return form.oneOf(box, label, Object.keys(field.options));
    case 'yes-no': {
      if (!field.optional) return form.text(box) === '1';
      const said = form.oneOf(box, label, ['yes', 'no'] as const);
      return said === null ? null : said === 'yes';
    }
    case 'lengths':
      return form.lengths(box, label);
    case 'number':
    case 'share':
      return field.chosenIn === undefined
        ? form.quantity(box, label, field.kind)
        : readChosen(form, box, { ...field, chosenIn: field.chosenIn }, how);
    default:
      return form.quantity(box, label, typedAs(field));
  }
}

/** One of the figures known, or the person’s own, typed beside it. */
function readChosen(
  form: TypedForm,
  box: string,
  { label, kind, chosenIn }: { label: string; kind: 'number' | 'share'; chosenIn: string },
  { known = {}, idle = false }: Reading,
): number | null {
  const own = form.quantity(box, label, kind);
  const chosen = form.text(chosenIn) || known[chosenIn]?.otherwise;
  if (chosen === OWN_FIGURE) return own;
  const figure = known[chosenIn]?.figures.find(({ id }) => id === chosen);
  if (!figure && !idle) form.fault(chosenIn, `${label}: choose a figure, or enter your own.`);
  return figure?.value ?? null;
}

/** The box of each place in a body, for a fault that a schema or a calculation found; null for a place without one. */
export function boxAt(fields: AnyFields, path: string, place: Place = {}): string | null {
  const [key = '', ...rest] = path.split('.');
  const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
  if (field === undefined || (field.kind === 'made' && !field.box)) return null;
  if (field.kind !== 'part') return boxOf(key, field, place);
  const below = rest.length > 0 ? rest.join('.') : entriesOf(field.fields)[0]?.[0];
  return below === undefined ? null : boxAt(field.fields, below, inPart(field, place));
}
