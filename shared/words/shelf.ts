import type { CatalogueStud, Family } from './catalogue.ts';

/** Covers measured and waiting: where they lie, what is known of them, which job they are kept for. */

/** Where the walls of a cover on the shelf come from. */
export type WallsAre = 'measured' | 'cut' | 'to-cut';
export const WALLS_WORD: Readonly<Record<WallsAre, string>> = {
  measured: 'measured after the cut',
  cut: 'expected after the cut',
  'to-cut': 'expected after facing',
};

/** Why a cover can't be used as its job stands. */
export type ShelfAgainst = 'closed' | 'crack' | 'fault' | 'replaced' | 'too-thin' | 'not-measured';
export const AGAINST_WORD: Readonly<Record<ShelfAgainst, string>> = {
  closed: 'Its job is closed.',
  crack: 'A crack was found in it.',
  fault: 'A fault beyond repair was found in it.',
  replaced: 'The decision is to replace it.',
  'too-thin': 'The verdict is to replace it.',
  'not-measured': 'No wall of it is measured.',
};

/** What of its job counts for a cover on the shelf, as the job stood then. */
export interface ShelfFacts {
  readonly jobRevision: number;
  /** The clean-up allowance the walls are expected with. */
  readonly allowanceMm: number;
  readonly family: Family;
  readonly wallsAre: WallsAre;
  /** The wall left at each station; none where nothing is measured. */
  readonly wallsMm: readonly number[];
  /** Standard uncertainties: common to all stations, and each one's own. null where nothing is known of the gauge. */
  readonly errors: { readonly commonMm: number; readonly ownMm: readonly number[] } | null;
  readonly signed: boolean;
  readonly studs: { readonly id: string; readonly stud: CatalogueStud } | null;
  /** How much lower its studs are seated, because the pads were resurfaced. */
  readonly resurfacedMm: number;
  readonly crankPilotMm: number | null;
  readonly against: ShelfAgainst | null;
}

export type ShelfWhat = 'put' | 'moved' | 'reserved' | 'freed' | 'off';
export const SHELF_WORD: Readonly<Record<ShelfWhat, string>> = {
  put: 'Put on the shelf',
  moved: 'Moved',
  reserved: 'Reserved',
  freed: 'No longer reserved',
  off: 'Taken off the shelf',
};

/** One change of a cover's stay on the shelf; the newest says how it stands. */
export interface ShelfChange {
  readonly jobId: number;
  readonly jobNumber: string;
  /** Counts up from 1 for each job. */
  readonly place: number;
  readonly what: ShelfWhat;
  readonly at: string;
  readonly who: string;
  readonly why: string;
  /** In words: "rack B, third board". */
  readonly lies: string;
  /** Number of the job it is reserved for; null while it is for nobody. */
  readonly forJob: string | null;
  readonly facts: ShelfFacts;
}

/** What an order asks of a cover; null where it asks nothing. */
export interface ShelfAsked {
  readonly familyId: string | null;
  readonly stackId: string | null;
  readonly crankPilotMm: number | null;
  readonly leastWallMm: number | null;
  readonly sure: number | null;
}

/** A cover of the shelf held against an order, under the shop limits of today. */
export interface ShelfCover {
  readonly jobNumber: string;
  readonly familyId: string;
  readonly familyName: string;
  readonly lies: string;
  readonly forJob: string | null;
  readonly since: string;
  readonly wallsAre: WallsAre;
  /** null where no wall is measured. */
  readonly wallLeftMm: number | null;
  /** What it is held against: the minimum wall, or more where the order asks for more; null where neither is known. */
  readonly wantedMm: number | null;
  /** That no station is below that; null where the gauge or the figure is not known. */
  readonly sure: number | null;
  readonly cutsLeft: number | null;
  readonly studName: string | null;
  readonly signed: boolean;
  readonly will: 'yes' | 'with-care' | 'no';
  /** Why it will do or not, the weightiest first. */
  readonly reasons: readonly string[];
}
