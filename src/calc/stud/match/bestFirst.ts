import type { Status } from '../../../../shared/words/finding.ts';
import type { LengthUnit } from '../../../../shared/words/print.ts';
import type { Stud, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { inFull, type StudFit } from '../checkStud.ts';
import { pitchOf } from '../numbers/studNumbers.ts';
import { asksOf, lengthsWanted, type StackAsks } from './studWanted.ts';

const FITS = { yes: 0, 'with-care': 1, no: 2 } as const;

/** A stud in a stack, and whether it fits: its joint moves no stud before another. */
export interface Ranked {
  readonly id: string;
  readonly fit: StudFit;
}

/**
 * Those of one stud or one stack in order: by fits, then number of fails, then of cautions, then size of the miss (one that is no length comes last), then the
 * margin left with every size at its worst, of which more than a pitch is no better; then the shorter stud. What is alike
 * keeps the order it came in.
 *   Valid: one stud with several stacks, or one stack with several studs.
 *   Source: this program's own rule
 *   Example: one fail by much comes before two by little (tests/calc/stud/match/matchStuds.test.ts)
 */
export function bestFirst<R extends Ranked>(ranked: readonly R[]): R[] {
  return ranked
    .map((one) => ({ one, rank: rankOf(one.fit) }))
    .sort((a, b) => byRank(a.rank, b.rank))
    .map(({ one }) => one);
}

/** What the order goes by. */
export interface Rank {
  readonly fits: number;
  readonly fails: number;
  readonly cautions: number;
  readonly missMm: number;
  readonly marginMm: number;
  readonly lengthMm: number;
}

export function rankOf({ judged, numbers, checks }: StudFit): Rank {
  const { decides } = judged;
  return {
    fits: FITS[judged.fits],
    fails: countOf(checks, 'fail'),
    cautions: countOf(checks, 'caution'),
    missMm: decides?.missMm ?? (decides === null ? 0 : Number.POSITIVE_INFINITY),
    marginMm: worstMargin(asksOf(numbers.input), numbers.input.stud),
    lengthMm: numbers.input.stud.projectionMm,
  };
}

/** The one that goes first is less. */
export function byRank(a: Rank, b: Rank): number {
  const bySize = (x: number, y: number) => (x === y ? 0 : x < y ? -1 : 1);
  return (
    a.fits - b.fits ||
    a.fails - b.fails ||
    a.cautions - b.cautions ||
    bySize(a.missMm, b.missMm) ||
    bySize(b.marginMm, a.marginMm) ||
    a.lengthMm - b.lengthMm
  );
}

/** The answers in full of those that were ranked. */
export function matched(ranked: readonly Ranked[], unit: LengthUnit): StudMatch[] {
  return ranked.map(({ id, fit }) => {
    const check = inFull(fit, unit);
    return { id, fits: check.fits, decidedBy: check.decidedBy, byMm: check.byMm, check };
  });
}

const countOf = (checks: StudFit['checks'], asked: Status) =>
  checks.reduce((sum, { finding }) => sum + (finding.status === asked ? 1 : 0), 0);

/** Nothing is against it: of two such only the margin left, and then the length, says which goes first. */
export function isFlawless({ fits, fails, cautions }: Rank): boolean {
  return fits === FITS.yes && fails === 0 && cautions === 0;
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
