import type { TypedInEntry } from '../../../shared/words/catalogue.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/**
 * What a person typed for the quantities of a body, and what of it was confirmed, by where they lie in it; null where
 * that says no more than the body. `fieldOf` names the field a place in the body came from; what still is as the form showed it, nobody typed.
 */
export function typedOf(
  form: TypedForm,
  body: object,
  fieldOf: (path: string) => string,
  shown: Fields,
): TypedInEntry | null {
  const typed = numbersIn(body).flatMap(([path, value]) => {
    const name = fieldOf(path);
    if (shown[name] === form.text(name)) return [];
    const found = form.quantities.find((one) => one.name === name && one.value === value);
    const confirmed = form.isConfirmed(name) && { confirmed: true as const };
    if (!found && !confirmed) return [];
    const { text, bareUnit } = found ?? { text: '', bareUnit: null };
    return [[path, { text, bareUnit, ...confirmed }] as const];
  });
  return typed.length === 0 ? null : Object.fromEntries(typed);
}

/** What stands typed after a revision: as typed for it, and as before where the number stayed the same. */
export function typedStanding(
  before: { readonly body: object; readonly typed: TypedInEntry } | null,
  body: object,
  typed: TypedInEntry | null,
): TypedInEntry {
  const was = new Map(before === null ? [] : numbersIn(before.body));
  const stayed = numbersIn(body).flatMap(([path, value]) => {
    const text = before?.typed[path];
    return text !== undefined && was.get(path) === value ? [[path, text] as const] : [];
  });
  return { ...Object.fromEntries(stayed), ...typed };
}

function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, path === '' ? key : `${path}.${key}`),
  );
}
