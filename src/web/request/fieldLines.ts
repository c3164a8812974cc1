import {
  type FieldLine,
  lengthInWords,
  type Telling,
  withTyped,
} from '../../../shared/quantity/fieldLines.ts';
import type { Compared } from '../../../views/parts/sideBySide.tsx';

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

/** The lengths of one part of a body, by name; `at` is where the part lies: '', 'stud.', 'stack.layers.0.'. */
export function lengthsOf<T extends object>(part: T, at: string, telling: Telling) {
  return (key: keyof T & string, none?: string): string => {
    const mm = part[key] as number | null | undefined;
    return withTyped(lengthInWords(mm ?? null, telling, none), `${at}${key}`, telling);
  };
}
