import type { Status } from '../../../../shared/words/finding.ts';
import type { Fits } from '../../../../shared/words/stud/stud.ts';
import type { Checked } from './checked.ts';

/**
 * From findings to `fits`: the first row that any counting finding has. `blind` is a fail and `pilot-shows` a caution
 * of the finding "reach"; the joint, and what needs fields nobody gave, do not count.
 */
const TABLE: readonly { readonly status: Status; readonly fits: Fits }[] = [
  { status: 'fail', fits: 'no' },
  { status: 'caution', fits: 'with-care' },
  { status: 'not-checked', fits: 'with-care' },
];

/** What can be no matter of degree goes before any length. */
const FIRST = ['nut-thread', 'hole-count', 'hole-circle'];

/**
 * Whether a stud fits, and which of its checks decides: of those in the row that applies, the ones that are no matter of
 * degree first, then the one that misses by most.
 *   Valid: the checks of one stud in one stack.   Source: this program's own rule
 *   Example: every row is tested (calc/stud/numbers/fits.test.ts)
 */
export function fits(checks: readonly Checked[]): { readonly fits: Fits; readonly decides: Checked | null } {
  const counting = checks.filter((check) => check.counts);
  for (const row of TABLE) {
    const there = counting.filter((check) => check.finding.status === row.status);
    if (there.length === 0) continue;
    const decides =
      there.find((check) => FIRST.includes(check.finding.id)) ??
      there.reduce((most, check) => ((check.missMm ?? 0) > (most.missMm ?? 0) + 1e-9 ? check : most));
    return { fits: row.fits, decides };
  }
  return { fits: 'yes', decides: null };
}
