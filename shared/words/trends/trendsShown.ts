import type { MarkPattern } from '../heatMarks.ts';
import type { DecisionKind } from '../job.ts';
import type { LengthUnit } from '../print.ts';
import type { ScrapReason, ShareInterval } from './trends.ts';

/** A column of a histogram, from `fromMm` on. */
export interface LengthBin {
  readonly fromMm: number;
  readonly n: number;
}

export interface Histogram {
  readonly widthMm: number;
  readonly bins: readonly LengthBin[];
}

/** What came in in a month, or a year, and what became of it. */
export interface Intake {
  /** `2026-11`, or `2026`. */
  readonly period: string;
  readonly outcomes: Readonly<Record<DecisionKind | 'open', number>>;
}

/** Walls of one cover type as they came in. */
export interface WallsReceived {
  readonly familyId: string;
  readonly name: string;
  readonly measured: number;
  readonly histogram: Histogram;
  readonly nominalMm: number | null;
  /** The minimum under the shop’s limits of today; null where none is set. */
  readonly minimumMm: number | null;
  readonly under: number | null;
}

/** Covers released, and how many of them came back. */
export interface ComebackShare {
  readonly released: number;
  readonly back: number;
  /** null where none was released. */
  readonly interval: ShareInterval | null;
}

export interface TrendsShown {
  readonly jobs: number;
  /** Jobs that are not counted yet. */
  readonly notGathered: number;
  readonly intake: readonly Intake[];
  readonly byYear: boolean;
  readonly months: readonly Intake[];
  readonly scrapped: readonly { readonly reason: ScrapReason; readonly n: number }[];
  readonly walls: readonly WallsReceived[];
  readonly cuts: Histogram;
  readonly days: readonly { readonly days: number; readonly n: number }[];
  readonly comebacks: {
    readonly byDecision: readonly (ComebackShare & { readonly decision: Exclude<DecisionKind, 'replace'> })[];
    readonly byWallLeft: readonly (ComebackShare & { readonly fromMm: number; readonly toMm: number })[];
    readonly byPattern: readonly (ComebackShare & { readonly pattern: MarkPattern })[];
  };
  /** Peak lining pressure after the cut, times new, as kept with decisions: of covers that came back, and of the others. */
  readonly bending: Readonly<
    Record<
      'back' | 'stayed',
      { readonly n: number; readonly mean: number | null; readonly most: number | null }
    >
  >;
  readonly patterns: readonly {
    readonly familyId: string;
    readonly name: string;
    readonly counts: Readonly<Partial<Record<MarkPattern, number>>>;
  }[];
  readonly patternsBack: readonly { readonly pattern: MarkPattern; readonly n: number }[];
}

/** An interval wider than this tells nothing (common practice, no source). */
const WIDEST = 0.2;

/** Whether a share was counted on too few to be told. */
export function tooFew({ low, high }: ShareInterval): boolean {
  return high - low > WIDEST;
}

/** Round in the reader’s unit; whole nanometers. */
export const BIN_NM: Readonly<Record<LengthUnit, { wallNm: number; cutNm: number; leftNm: number }>> = {
  in: { wallNm: 127_000, cutNm: 50_800, leftNm: 254_000 },
  mm: { wallNm: 100_000, cutNm: 50_000, leftNm: 250_000 },
};
