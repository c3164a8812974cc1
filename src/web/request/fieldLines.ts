import { writeLength } from '../../../shared/quantity/writeLength.ts';
import type { TypedInEntry } from '../../../shared/words/catalogue.ts';
import type { Compared } from '../../../views/parts/sideBySide.tsx';
import type { Writing } from './typed.ts';

/** One field of something kept, in words. Within one list no two carry the same label. */
export interface FieldLine {
  readonly label: string;
  readonly value: string;
}

/** Two states of the same thing, field by field, in the order of the newer; '' where one of them says nothing. */
export function sideBySide(before: readonly FieldLine[], after: readonly FieldLine[]): Compared[] {
  const was = new Map(before.map(({ label, value }) => [label, value]));
  const is = new Map(after.map(({ label, value }) => [label, value]));
  const labels = new Set([...is.keys(), ...was.keys()]);
  return [...labels].map((label) => ({ label, before: was.get(label) ?? '', after: is.get(label) ?? '' }));
}

/** Only what changed. */
export function differences(before: readonly FieldLine[], after: readonly FieldLine[]): Compared[] {
  return sideBySide(before, after).filter((line) => line.before !== line.after);
}

/** A length with its unit and every figure it has, so that two that differ never read alike. */
export function lengthInWords(mm: number | null, writing: Writing, none = 'not said'): string {
  if (mm === null) return none;
  const text = writeLength(mm, writing.lengthUnit, writing.decimalSign);
  return text.endsWith(' mm') ? text : `${text} ${writing.lengthUnit}`;
}

/** How lengths are told, and what was typed for them where that is kept beside the body. */
export interface Telling extends Writing {
  readonly typed?: TypedInEntry;
}

/** The lengths of one part of a body, by name; `at` is where the part lies: '', 'stud.', 'stack.layers.0.'. */
export function lengthsOf<T extends object>(part: T, at: string, telling: Telling) {
  return (key: keyof T & string, none?: string): string => {
    const mm = part[key] as number | null | undefined;
    return withTyped(lengthInWords(mm ?? null, telling, none), `${at}${key}`, telling);
  };
}

/** "4.7625 mm (typed 3/16 in)"; the value alone where that was typed, or where nothing is known of it. */
export function withTyped(value: string, path: string, { typed }: Telling): string {
  const found = typed?.[path];
  if (found === undefined) return value;
  const text = found.bareUnit === null ? found.text : `${found.text} ${found.bareUnit}`;
  return text === value ? value : `${value} (typed ${text})`;
}

export function yesNoInWords(value: boolean): string {
  return value ? 'yes' : 'no';
}
