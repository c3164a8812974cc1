import type { StudMatch } from '../../../shared/words/stud.ts';

const FITS = { yes: 0, 'with-care': 1, no: 2 } as const;

/**
 * Matches in order: by fits, then number of fails, then size of the miss (one that is no length comes last); what is
 * alike keeps the order it came in.
 *   Source: this program's own rule.   Example: tests/calc/stud/matchStuds.test.ts
 */
export function bestFirst(matches: readonly StudMatch[]): StudMatch[] {
  const fails = (match: StudMatch) =>
    match.check.findings.filter((finding) => finding.status === 'fail').length;
  const miss = (match: StudMatch) => match.byMm ?? (match.decidedBy === null ? 0 : Number.POSITIVE_INFINITY);
  const bySize = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  return [...matches].sort(
    (a, b) => FITS[a.fits] - FITS[b.fits] || bySize(fails(a), fails(b)) || bySize(miss(a), miss(b)),
  );
}
