import type { CoverCheck } from './cover.ts';
import type { Finding } from './finding.ts';

/** They speak of a cut that a cover to be replaced does not get. */
const OF_THE_CUT: ReadonlySet<string> = new Set([
  'wall-left',
  'clean-up-cut',
  'cleans-up',
  'planned-cut',
  'sure-of-it',
  'dialled-in',
  'cuts-left',
  'release-clearance',
  'unbalance',
]);

/** Whether a depth of cut is told at all: not for a cover that is to be replaced, unless a person decided to face it. */
export function cutTold(verdict: CoverCheck['verdict'], decidedToFace = false): boolean {
  return verdict !== 'replace' || decidedToFace;
}

/** The findings to show, without those that speak of a cut nobody makes. */
export function findingsShown(
  { verdict, findings }: Pick<CoverCheck, 'verdict' | 'findings'>,
  decidedToFace = false,
): readonly Finding[] {
  return findingsTold(findings, cutTold(verdict, decidedToFace));
}

/** The same where it is known whether a cut is told. */
export function findingsTold(findings: readonly Finding[], cut: boolean): readonly Finding[] {
  return cut ? findings : findings.filter(({ id }) => !OF_THE_CUT.has(id));
}
