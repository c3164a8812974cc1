import type { Status } from '../../../../shared/words/finding.ts';
import type { Stud, StudCheckInput, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { pitchOf } from '../numbers/studNumbers.ts';
import { asksOf, lengthsWanted, type StackAsks } from './studWanted.ts';

const FITS = { yes: 0, 'with-care': 1, no: 2 } as const;

/** The joint is judged apart: it moves no stud before another. */
const OF_JOINT = /^(joint|stud-shear|bearing-pressure)/;

export interface Ranked {
  readonly input: StudCheckInput;
  readonly match: StudMatch;
}

/**
 * Matches in order: by fits, then number of fails, then of cautions, then size of the miss (one that is no length comes last), then the
 * margin left with every size at its worst, of which more than a pitch is no better; then the shorter stud. What is alike
 * keeps the order it came in.
 *   Valid: matches of one stud with several stacks, or of one stack with several studs.
 *   Source: this program's own rule
 *   Example: one fail by much comes before two by little (tests/calc/stud/match/matchStuds.test.ts)
 */
export function bestFirst(ranked: readonly Ranked[]): StudMatch[] {
  const [fails, cautions] = [countOf('fail'), countOf('caution')];
  const miss = (match: StudMatch) => match.byMm ?? (match.decidedBy === null ? 0 : Number.POSITIVE_INFINITY);
  const bySize = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);
  return ranked
    .map(({ input, match }) => ({
      match,
      margin: worstMargin(asksOf(input), input.stud),
      length: input.stud.projectionMm,
    }))
    .sort(
      (a, b) =>
        FITS[a.match.fits] - FITS[b.match.fits] ||
        bySize(fails(a.match), fails(b.match)) ||
        bySize(cautions(a.match), cautions(b.match)) ||
        bySize(miss(a.match), miss(b.match)) ||
        bySize(b.margin, a.margin) ||
        bySize(a.length, b.length),
    )
    .map(({ match }) => match);
}

function countOf(asked: Status) {
  return ({ check }: StudMatch) =>
    check.findings.filter(({ id, status }) => status === asked && !OF_JOINT.test(id)).length;
}

/** Nothing is against it: of two such only the margin left, and then the length, says which goes first. */
export function isFlawless(match: StudMatch): boolean {
  return match.decidedBy === null && countOf('fail')(match) === 0 && countOf('caution')(match) === 0;
}

/** The smallest worst-case margin of all length checks, at most one pitch. */
export function worstMargin(asks: StackAsks, stud: Stud): number {
  const pitchMm = pitchOf(stud.thread);
  const wanted = lengthsWanted(asks, stud, pitchMm);
  return Math.min(
    pitchMm,
    wanted.threadStartMostMm - stud.threadStartMm,
    stud.threadEndMm - (wanted.threadEndLeastMm ?? Number.NEGATIVE_INFINITY),
    stud.projectionMm - wanted.projectionLeastMm,
    (wanted.projectionMostMm ?? Number.POSITIVE_INFINITY) - stud.projectionMm,
  );
}
