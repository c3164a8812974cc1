import type { DecimalSign } from '../quantity/plainNumber.ts';
import type { Pass, ReadingKind } from '../words/job.ts';
import type { Place } from '../words/places.ts';
import type { LengthUnit } from '../words/print.ts';
import type { Expected } from './readingDoubt.ts';
import type { Order } from './steps.ts';

/** A reading that the server has, as the measuring screen lists it. */
export interface StandingReading extends Place {
  readonly id: string;
  readonly kind: ReadingKind;
  /** Counted from 0 among the stations; -1 for a mark between them. */
  readonly at: number;
  readonly place: string;
  readonly shown: string;
  readonly valueMm: number;
  readonly who: string;
  readonly doubtful: boolean;
  /** Asked about, and said to be right. */
  readonly confirmed: boolean;
}

/** What the box is for. */
export interface Asked extends Place {
  readonly kind: ReadingKind;
  /** Counted from 0 among the stations; null for a mark between them. */
  readonly at: number | null;
  /** Which of the readings wanted here, counted from 0. */
  readonly nth: number;
  readonly place: string;
  /** The reading already recorded here, which a new one would correct. */
  readonly replaces: { readonly id: string; readonly shown: string } | null;
  /** True for a repeat, kept beside the reading already recorded. */
  readonly again: boolean;
}

/** What the script of the measuring page works from; the page carries it. */
export interface BenchState {
  readonly job: string;
  /** Tells this job from another of the same number, in a shop restored from a backup. */
  readonly created: string;
  /** Whoever signed in; '' where nobody signs in. */
  readonly person: string;
  readonly pass: Pass;
  readonly order: Order;
  readonly stations: readonly (Place & { readonly name: string })[];
  readonly trackInnerMm: number;
  readonly trackOuterMm: number;
  readonly nominalMm: number;
  /** What else a reading is held against: the gauge, and after a cut what it should have left. */
  readonly expected: Omit<Expected, 'nominalWallMm'>;
  readonly unit: LengthUnit;
  readonly sign: DecimalSign;
  readonly gauge: string;
  readonly asked: Asked | null;
  /** Passed over so far, as an address carries them. */
  readonly skipped: readonly string[];
  /** Places that the coverage asks for and no station is at. */
  readonly notLaidOut: readonly string[];
  readonly standing: readonly StandingReading[];
  readonly what: Readonly<Record<ReadingKind, string>>;
  /** The revision since which readings of this pass count: after the ring was welded, after the last pass. */
  readonly weldedAt: number;
}

export interface Said {
  readonly id: string;
  readonly message: string;
}

/** What became of each reading that a tablet sent; every id stands in exactly one of the first three lists. */
export interface Taken {
  readonly added: readonly string[];
  readonly already: readonly string[];
  readonly refused: readonly Said[];
  /** Added all the same, beside what somebody else made of the reading it was to replace. */
  readonly beside: readonly Said[];
}
