import type { Fault } from '../../../shared/words/refusal.ts';

/** The sentence beside a field, if there is one. */
export function errorsOf(faults: readonly Fault[]): (name: string) => string | null {
  return (name) => faults.find((fault) => fault.path === name)?.message ?? null;
}
