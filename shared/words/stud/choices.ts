import type { CatalogueStack, CatalogueStud } from '../catalogue.ts';
import type { Fits, Stack, StudCheck, StudMatch } from './stud.ts';
import type { ThreadCandidate, ThreadSpec } from './thread.ts';

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
  /** The converter is out; else it is still bolted up in the car. */
  readonly onBench: boolean;
  /** What can’t be seen: it is not asked again. */
  readonly cannot: readonly FlexplateLook[];
}

/** What a flexplate can be told by. */
export const FLEXPLATE_LOOKS = ['style', 'count', 'thread', 'nut', 'total'] as const;
export type FlexplateLook = (typeof FLEXPLATE_LOOKS)[number];

/** One answer there is among those left, and how many it leaves. */
export interface FlexplateAnswer {
  readonly value: string;
  readonly leaves: number;
}

/** What to look at or measure next. */
export interface FlexplateNext {
  readonly look: FlexplateLook;
  /** Empty where it is measured. */
  readonly answers: readonly FlexplateAnswer[];
}

export interface FlexplatesFound {
  /** How many there are in the catalog. */
  readonly of: number;
  readonly matches: readonly FlexplateFound[];
  /** The nearest of those that are not the one. */
  readonly nearest: FlexplateFound | null;
  /** As thick as measured, but of the style that was not seen. */
  readonly ofOtherStyle: readonly FlexplateFound[];
  /** null where one is left, none is, or nothing tells those left apart. */
  readonly next: FlexplateNext | null;
  /** Where none is left: the answers without which some are. */
  readonly against: readonly { readonly look: FlexplateLook; readonly left: number }[];
}

/** A stack it may be, by its thickness. */
export interface FlexplateFound {
  readonly id: string;
  readonly stack: CatalogueStack;
  readonly totalMm: number;
  readonly offMm: number;
  readonly within: boolean;
}

/** A thread whose nut a hand takes for the right one. */
export interface ThreadTwin {
  readonly thread: ThreadSpec;
  /** How many threads it goes on before it binds. */
  readonly threads: number;
  /** The twin's nut goes on this stud; else this thread's nut on the twin's stud. */
  readonly nutIsTwins: boolean;
}

/** A thread of the tables, held against what was measured. */
export interface ThreadFound extends ThreadCandidate {
  readonly thread: ThreadSpec;
  /** The one that goes on farthest first. */
  readonly twins: readonly ThreadTwin[];
}

export interface ThreadsFound {
  /** Nearest first; with the diameter alone, the usual ones first. */
  readonly mayBe: readonly ThreadFound[];
  /** The nearest it is not. */
  readonly nearest: readonly ThreadFound[];
}

/** What is measured of a stud's lengths; null where it was not. */
export type StudLengths = {
  readonly [Name in 'threadStartMm' | 'threadEndMm' | 'projectionMm' | 'pilotDiameterMm']: number | null;
};

/** A stud of the catalog beside the one in the hand. */
export interface StudNear {
  readonly id: string;
  /** Each length that was measured: the one in the hand less the catalog's. */
  readonly off: readonly { readonly what: keyof StudLengths; readonly mm: number }[];
  /** All of them together, for the order. */
  readonly farMm: number;
}

/** What is typed of a thread that was measured; null where it was not. */
export interface ThreadTyped {
  readonly majorMm: number | null;
  readonly pitches: number;
  readonly overMm: number | null;
  readonly majorWithinMm: number;
  readonly overWithinMm: number;
}

/** A stud measured in the hand. */
export interface StudInHand {
  /** Held against what was measured of the thread; null where no diameter was. */
  readonly threads: ThreadsFound | null;
  /** As typed, or the only one it may be. */
  readonly thread: ThreadSpec | null;
  /** Of that thread, or of those it may be; nearest first. */
  readonly shelf: readonly (StudNear & { readonly entry: CatalogueStud; readonly alike: boolean })[];
  /** Checked in every stack: the stud itself where it is measured in full, else the one of the shelf that is like it. */
  readonly checked: { readonly id: string; readonly entry: CatalogueStud } | null;
}
