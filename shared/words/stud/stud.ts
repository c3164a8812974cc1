import type { Answer } from '../answer.ts';
import type { Finding } from '../finding.ts';
import type { ThreadSpec } from './thread.ts';

/** All lengths in mm from the pad's seating face, + toward the engine. */
export interface Stud {
  readonly thread: ThreadSpec;
  /** Where the first full thread begins. */
  readonly threadStartMm: number;
  /** Where the last full thread ends. */
  readonly threadEndMm: number;
  /** Where the stud ends: its length from the pad. */
  readonly projectionMm: number;
  /** ± on each of the three, independent. */
  readonly lengthToleranceMm: number;
  /** Of the unthreaded pilot beyond the last full thread; null when there is none or it was not measured. */
  readonly pilotDiameterMm: number | null;
  readonly tensileMPa: number | null;
  readonly proofMPa: number | null;
  /** Weld or fillet at the pad, as a radius round the stud's axis beyond the stud's own. */
  readonly filletMm: number | null;
  /** Measured half way along the thread, over wires or with a thread micrometer; missing where it was not. */
  readonly pitchDiameterMeasuredMm?: number | null;
}

export const LAYER_KINDS = ['plate', 'casting', 'shim'] as const;
export type LayerKind = (typeof LAYER_KINDS)[number];

export interface Layer {
  readonly name: string;
  /** A shim travels with the pads and is no piece of the flexplate; missing, or null, in older records: by the name. */
  readonly kind?: LayerKind | null;
  readonly thicknessMm: number;
  readonly toleranceMm: number;
  readonly holeDiameterMm: number | null;
  readonly chamferMm: number | null;
}

export interface Stack {
  readonly style: 'one-piece' | 'two-piece';
  /** From the pad toward the engine. */
  readonly layers: readonly Layer[];
  readonly holeCount: number | null;
  readonly holeCircleDiameterMm: number | null;
  /** Room for the stud's tip, from the pad face. */
  readonly tipRoomMm: number | null;
  /** The maker's pull-forward gap; used instead of the shop's. */
  readonly leastPullForwardMm?: number | null;
  readonly mostPullForwardMm?: number | null;
}

export interface Nut {
  readonly heightMm: number;
  readonly toleranceMm: number;
  readonly thread: ThreadSpec | null;
  readonly proofMPa: number | null;
  readonly tensileMPa: number | null;
  /** At each side. */
  readonly countersinkMm: number;
  readonly bearingOuterDiameterMm: number | null;
  readonly washerMm: number;
  readonly prevailing: boolean;
}

/** How far the stud pilot has to be in the last piece when the thread comes to the first, where nobody says. */
export const PILOT_LEAD_MM = 1;

export interface StudCriteria {
  readonly protrusionThreads: number;
  readonly startThreads: number;
  /** PILOT_LEAD_MM where it is missing, as in older records. */
  readonly pilotLeadMm?: number;
  /** The gap a flexplate wants, where its maker says none; null or missing: none set. */
  readonly leastPullForwardMm?: number | null;
  readonly mostPullForwardMm?: number | null;
}

export const SURFACE_CLASSES = ['rz-under-10', 'rz-10-to-40', 'rz-40-to-160'] as const;
/** Roughness Rz in µm of pad, plate and nut. */
export type SurfaceClass = (typeof SURFACE_CLASSES)[number];

export interface Joint {
  readonly torqueNm: number;
  readonly nutFactor: number;
  readonly scatter: number;
  readonly friction: number;
  readonly engineTorqueNm: number;
  readonly serviceFactor: number;
  readonly studCount: number;
  readonly studCircleDiameterMm: number;
  readonly youngMPa: number | null;
  /** Torque that only turns a prevailing-torque nut, before it seats; it gives no preload. */
  readonly prevailingNm?: number | null;
  readonly studsUsedBefore?: boolean;
  /** How rough the faces are that settle under load; Rz 10 to 40 µm where nothing is given. */
  readonly surface?: SurfaceClass;
  /** Re-torqued after the first heat cycle, where the vehicle's maker allows it and no thread-locker is used. */
  readonly retightened?: boolean;
  /** Which of studCount and studCircleDiameterMm were taken from the stack because nobody gave the cover's. */
  readonly ofStack?: readonly ('count' | 'circle')[];
}

export interface StudCheckInput {
  readonly stud: Stud;
  readonly stack: Stack;
  readonly nut: Nut | null;
  readonly pullForwardMm: number | null;
  readonly criteria: StudCriteria;
  readonly joint: Joint | null;
  /** The cover the stud is in, to compare with the stack's holes; null when not known. */
  readonly coverStudCount: number | null;
  readonly coverStudCircleDiameterMm: number | null;
}

export type Fits = 'yes' | 'with-care' | 'no';
export type Holds = 'yes' | 'no' | 'not-checked';
export type ReachGrade = 'starts-by-hand' | 'pilot-shows' | 'blind';

export interface StudCheck {
  readonly fits: Fits;
  readonly holds: Holds;
  /** "It fits, and its nut starts by hand." */
  readonly headline: string;
  /** One or two sentences: the dimension that decides, by how much. */
  readonly because: string;
  /** The stud's or stack's field that decides a `no` (or a `with-care`), and by how much. */
  readonly decidedBy: string | null;
  readonly byMm: number | null;
  readonly stackMm: { readonly nominal: number; readonly least: number; readonly most: number };
  readonly engagement: {
    readonly nominalMm: number;
    readonly leastMm: number;
    readonly threads: number;
    readonly diameters: number;
    readonly neededMm: number | null;
  } | null;
  readonly protrusionThreads: {
    readonly nominal: number;
    readonly least: number;
    readonly leastRss: number;
  } | null;
  readonly reach: {
    readonly seatedMm: number;
    readonly pushedBackMm: number | null;
    readonly threadsShowing: number | null;
    readonly grade: ReachGrade | null;
  };
  /** Missing in checks kept before it was looked at. */
  readonly pilot?: {
    readonly lengthMm: number;
    /** null with one piece. */
    readonly intoLastPieceMm: { readonly nominal: number; readonly least: number } | null;
    /** How far the first and the last hole may be out of line: the pilot alone in both, the thread in the first, seated. */
    readonly outOfLineMm: {
      readonly pilot: number | null;
      readonly entering: number;
      readonly seated: number;
    } | null;
  };
  readonly strength: {
    readonly tensileAreaMm2: number;
    readonly studShearAreaMm2: number | null;
    readonly nutShearAreaMm2: number | null;
    readonly weakest: 'stud' | 'stud-thread' | 'nut-thread' | null;
    readonly breakingLoadN: number | null;
  };
  readonly joint: {
    readonly preloadN: { readonly nominal: number; readonly least: number | null; readonly most: number };
    readonly embeddingLossN: number | null;
    readonly proofShare: number | null;
    readonly slipTorqueNm: { readonly nominal: number | null; readonly least: number | null };
  } | null;
  readonly findings: readonly Finding[];
  readonly answers: Readonly<Record<string, Answer>>;
}

/** The margin of one length check: nominal, likely (RSS) and worst case; it fails below 0. And how often it would fail. */
export interface ToleranceRow {
  readonly id: 'clamps' | 'engaged' | 'protrudes' | 'starts' | 'shows' | 'enters' | 'clears' | 'lines';
  readonly nominalMm: number;
  readonly rssMm: number;
  readonly worstMm: number;
  readonly failShare: number;
}

/** A stud with the name it goes by in the catalogue. */
export interface NamedStud {
  readonly id: string;
  readonly stud: Stud;
}

export interface StudMatch {
  readonly id: string;
  readonly fits: Fits;
  readonly decidedBy: string | null;
  readonly byMm: number | null;
  readonly check: StudCheck;
}

export interface NamedStack {
  readonly id: string;
  readonly stack: Stack;
  readonly nut: Nut | null;
  readonly pullForwardMm: number | null;
}
