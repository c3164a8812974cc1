import type { Verdict } from '../cover.ts';
import type { ShareInterval } from './trends.ts';

/** One cover under the shop's minimum of today, and under another. */
export interface JudgedTwice {
  readonly number: string;
  readonly coverType: string;
  readonly before: Verdict;
  readonly after: Verdict;
  /** Under the other minimum. */
  readonly minimumMm: number;
  /** Thinnest wall the cut would leave under the other minimum; null where no wall was measured. */
  readonly leftMm: number | null;
  readonly confidence: number | null;
  /** Peak lining pressure after the cut compared with the new cover; null where it is not worked out. */
  readonly peakOverNew: number | null;
}

/** Covers by the wall left, beside what became of those released with so much. */
export interface BandCompared {
  readonly fromMm: number;
  readonly toMm: number;
  readonly saved: number;
  readonly released: number;
  readonly back: number;
  readonly interval: ShareInterval | null;
}

/** Mean of some peaks, and how many there are. */
export interface PeaksCounted {
  readonly n: number;
  readonly mean: number | null;
  readonly most: number | null;
}

/** What another minimum wall would have done to every cover that was measured. */
export interface OtherLimit {
  /** What was added to the shop's minimum. */
  readonly byMm: number;
  readonly criteriaRevision: number;
  /** UTC. */
  readonly at: string;
  readonly judged: number;
  /** Covers no minimum of the shop applies to, or that cannot be worked out. */
  readonly left: number;
  /** The maker's figure governs under both. */
  readonly makers: number;
  /** Replaced today, and faced or ringed under the other. */
  readonly saved: readonly JudgedTwice[];
  /** Faced or ringed today, and replaced under the other. */
  readonly lost: readonly JudgedTwice[];
  /** Any other change of the verdict. */
  readonly otherwise: readonly JudgedTwice[];
  readonly bands: readonly BandCompared[];
  readonly peaks: {
    readonly saved: PeaksCounted;
    readonly back: PeaksCounted;
    readonly stayed: PeaksCounted;
    /** Saved covers whose bending was not worked out. */
    readonly notWorkedOut: number;
  };
}

/** From these confidences on, the highest first. */
export const CONFIDENCES = [0.99, 0.95, 0.9, 0] as const;
