import type { Fault } from '../../../shared/words/refusal.ts';
import { unfitInitials } from '../../records/database/writing.ts';

/**
 * What is refused of a form, with its initials among it: whoever has to correct something is not told of them only after
 * that.
 */
export function withInitials(faults: readonly Fault[], who: string | undefined): readonly Fault[] {
  if (faults.some(({ path }) => path === 'who')) return faults;
  return [...faults, ...(unfitInitials(who ?? '')?.faults ?? [])];
}
