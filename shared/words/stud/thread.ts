import type { Step } from '../answer.ts';

export type UnifiedClass = '2A' | '3A' | '2B' | '3B';
export type MetricClass = '6g' | '6H';

/** A thread as a callout names it. `designation` is the callout written out in full. */
export type ThreadSpec =
  | {
      readonly system: 'unified';
      readonly designation: string;
      readonly majorInch: number;
      readonly threadsPerInch: number;
      readonly series: 'UNC' | 'UNF' | 'UNEF' | 'UN' | 'UNS';
      readonly class: UnifiedClass;
    }
  | {
      readonly system: 'metric';
      readonly designation: string;
      readonly majorMm: number;
      readonly pitchMm: number;
      readonly class: MetricClass;
    };

export interface Limits {
  readonly basic: number;
  readonly max: number | null;
  readonly min: number | null;
}

export interface ThreadGeometry {
  readonly designation: string;
  readonly pitchMm: number;
  readonly majorMm: Limits;
  readonly pitchDiameterMm: Limits;
  readonly minorMm: Limits;
  readonly tensileStressAreaMm2: number;
  /** How each limit was got, in the units of the thread's own standard. */
  readonly how: readonly Step[];
}

/** A thread measured with a caliper. */
export interface ThreadReading {
  readonly majorMm: number;
  readonly majorWithinMm: number;
  /** How many pitches, crest to crest, `overMm` goes over. */
  readonly pitches: number;
  /** null where only the diameter was measured. */
  readonly overMm: number | null;
  readonly overWithinMm: number;
}

/** A thread that was held against what was measured. */
export interface ThreadCandidate {
  /** Measured less the nearest end of the class; 0 between its ends. */
  readonly offMajorMm: number;
  readonly offPitchMm: number | null;
  /** It may be this one. */
  readonly within: boolean;
  /** How far, for the order: 1 is at the edge of one of the two. */
  readonly far: number;
}
