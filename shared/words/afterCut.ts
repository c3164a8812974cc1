import type { MeasuredCheck } from './cover.ts';

/** One pass, with what was seen and read after it. */
export interface PassView {
  readonly depthMm: number;
  readonly totalMm: number;
  readonly note: string;
  readonly look: 'gone' | 'dark' | null;
  /** Void: the face was measured anew after the ring was welded on. */
  readonly beforeRing: boolean;
  readonly thinnestMm: number | null;
  readonly darkMm: number | null;
}

/** One station, before the cut and after it. */
export interface ComparedWall {
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** "behind stud 1". */
  readonly place: string;
  readonly faceMm: number | null;
  readonly markDepthMm: number | null;
  readonly beforeMm: number | null;
  readonly decidedMm: number | null;
  readonly cutMm: number | null;
  readonly measuredMm: number;
}

/** What the last pass showed, and whether another still leaves the minimum. */
export interface NextPass {
  readonly state: 'look' | 'gone' | 'cut-more' | 'plan-again' | 'measure-again' | 'stop';
  readonly headline: string;
  readonly because: string;
  /** The next pass, and what that makes in all; null where none follows from what is known. */
  readonly nextMm: number | null;
  readonly totalMm: number | null;
  /** Where it is thinnest now: measured since the pass, else reckoned from before the cut. */
  readonly wallNowMm: number;
  readonly measured: boolean;
  /** What may still be cut before the minimum is reached; null where no minimum is set. */
  readonly roomMm: number | null;
  /** The next pass worked out as any cut is; where none is needed, the wall as it now stands. */
  readonly check: MeasuredCheck;
}
