import type { TypedInEntry } from '../../../shared/words/catalogue.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/**
 * What a person typed for the quantities and formulas of a body, and what of it was confirmed, by where they lie in it; null where
 * that says no more than the body. `fieldOf` names the field a place in the body came from; what still is as the form showed it, nobody typed.
 */
export function typedOf(
  form: TypedForm,
  body: object,
  fieldOf: (path: string) => string,
  shown: Fields,
): TypedInEntry | null {
  const typed = figuresIn(body).flatMap(([path, value]) => {
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
  const was = new Map(before === null ? [] : figuresIn(before.body));
  const stayed = figuresIn(body).flatMap(([path, value]) => {
    const text = before?.typed[path];
    return text !== undefined && was.get(path) === value ? [[path, text] as const] : [];
  });
  return { ...Object.fromEntries(stayed), ...typed };
}

/** Every number of a body, and every text: one of them is a formula. */
function figuresIn(value: unknown, path = ''): [string, number | string][] {
  if (typeof value === 'number' || typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    figuresIn(inner, path === '' ? key : `${path}.${key}`),
  );
}
