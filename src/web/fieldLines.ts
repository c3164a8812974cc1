import { writeLength } from '../../shared/quantity/writeLength.ts';
import type { Compared } from '../../views/parts/sideBySide.tsx';
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

export function yesNoInWords(value: boolean): string {
  return value ? 'yes' : 'no';
}
