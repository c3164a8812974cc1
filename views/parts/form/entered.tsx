import type { Fault } from '../../../shared/words/refusal.ts';

/** Said of a folded part: how many of its boxes hold something. */
export function EnteredCount(props: {
  readonly fields: Readonly<Record<string, string>>;
  readonly names: readonly string[];
}) {
  const count = props.names.filter((name) => (props.fields[name] ?? '') !== '').length;
  return count === 0 ? null : <span class="entered-count">, {count} entered</span>;
}

/** A fold that holds a refused box stands open. */
export function anyWrong(faults: readonly Fault[], names: readonly string[]): boolean {
  return faults.some(({ path }) => names.includes(path));
}
