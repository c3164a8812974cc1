import type { FieldLine } from '../../../shared/quantity/fieldLines.ts';
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
