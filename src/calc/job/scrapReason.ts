import type { Decision, Looked } from '../../../shared/words/job.ts';
import type { ScrapReason } from '../../../shared/words/trends/trends.ts';

const THIN = ['bounds', 'clean-up-cut', 'wall-left'];

/**
 * Why a cover was replaced, from its decision as it was kept; null for one that is used again. The weightiest finding
 * that failed counts, in the order of the verdict: crack, fault beyond repair, wall, bending; without one of these
 * somebody chose to replace it.
 *
 * Valid: any decision; a wall below the minimum before any cut is too thin as received.
 * Source: this program's own rule, in the order of its verdict (src/calc/judge/verdict.ts)
 * Example: a crack and a thin wall → crack (tests/calc/job/scrapReason.test.ts)
 */
export function scrapReason(
  { decision, check }: Pick<Decision, 'decision' | 'check'>,
  looked: Pick<Looked, 'items'> | null,
): ScrapReason | null {
  if (decision !== 'replace') return null;
  const failed = (...ids: readonly string[]) =>
    check.findings.some(({ id, status }) => ids.includes(id) && status === 'fail');
  if (failed('crack')) return 'crack';
  const fault = looked?.items.find(({ result, final }) => result === 'fault' && final);
  if (fault !== undefined) return `fault-${fault.item}`;
  if (failed(...THIN)) return thin(check);
  if (failed('stiffness')) return 'bends';
  return 'chosen';
}

function thin({ minimumWall, leastWall }: Decision['check']): ScrapReason {
  if (minimumWall === null || leastWall === null) return 'thin-after-cut';
  return leastWall.beforeMm < minimumWall.mm - 1e-9 ? 'thin-as-received' : 'thin-after-cut';
}
