import type { CatalogueStack, CatalogueStud } from '../catalogue.ts';
import type { Fits, Stack, StudCheck, StudMatch } from './stud.ts';
import type { ThreadSpec } from './thread.ts';

/** A stud of the catalog, held against a stack. */
export interface StudChoice {
  readonly match: StudMatch;
  readonly entry: CatalogueStud;
}

/** A stack of the catalog, held against a stud. */
export interface StackChoice {
  readonly id: string;
  readonly entry: CatalogueStack;
  readonly check: StudCheck;
  /** The stud does not go on its nut. */
  readonly otherThread: boolean;
  /** What would have to change, a sentence each. */
  readonly mends: readonly string[];
}

/** Catalog entries that cannot be checked, each with its reason: the others are. */
export interface Skipped {
  readonly id: string;
  readonly name: string;
  /** A sentence. */
  readonly why: string;
}

/** The same stud but longer or shorter, with what it would do in the same stack. */
export interface Substitute {
  readonly id: string;
  readonly name: string;
  /** Negative: shorter. */
  readonly longerMm: number;
  readonly fits: Fits;
}

/** How many studs on which circle, by the cover or by a stack's holes. */
export interface StudRing {
  readonly count: number | null;
  readonly circleMm: number | null;
  readonly of: 'cover' | 'stack';
}

/** What was seen and measured of a flexplate; null where it was not. */
export interface FlexplateSeen {
  readonly style: Stack['style'] | null;
  readonly totalMm: number | null;
  readonly withinMm: number;
  readonly thread: ThreadSpec | null;
  readonly nutHeightMm: number | null;
  readonly holeCount: number | null;
}

/** A stack it may be, by its thickness. */
export interface FlexplateFound {
  readonly id: string;
  readonly stack: CatalogueStack;
  readonly totalMm: number;
  readonly offMm: number;
  readonly within: boolean;
}
