import type { ThreadSpec } from '../words/stud/thread.ts';
import { UNIFIED_SIZES } from './threadTables.ts';

/**
 * Asks about an inch thread of no standard series, such as 3/8-25: most often a slip. `meant` is the series of its size
 * with the nearest count. null where there is nothing to ask; a metric thread of no standard pitch is refused instead.
 */
export function threadDoubt(
  thread: ThreadSpec,
): { readonly question: string; readonly meant: string } | null {
  if (thread.system !== 'unified' || thread.series !== 'UNS') return null;
  const { majorInch, threadsPerInch } = thread;
  const size = UNIFIED_SIZES.find(({ inch }) => inch === majorInch);
  const [nearest] = (['UNC', 'UNF', 'UNEF'] as const)
    .flatMap((series) => (size?.[series] ? [{ series, perInch: size[series] }] : []))
    .sort((a, b) => Math.abs(a.perInch - threadsPerInch) - Math.abs(b.perInch - threadsPerInch));
  if (!size || !nearest) return null;
  const meant = `${size.written}-${nearest.perInch} ${nearest.series}`;
  return {
    question: `${size.written}-${threadsPerInch} is in no standard series. Did you mean ${meant}?`,
    meant,
  };
}
