import type { Answer } from '../answer.ts';
import type { RingSize, StiffeningRing, StiffnessInput } from './stiffness.ts';

/** The shop's figures for the bending of every cover, and its limits on it. */
export interface BendingSettings {
  readonly liningModulusMPaPerMm: number;
  readonly youngMPa: number;
  readonly poisson: number;
  /** Taken where the family has none of its own. */
  readonly lockUpPressureMPa: number | null;
  readonly yieldMPa: number | null;
  /** Turns on the pressure the oil gets from rotating; null leaves it out. */
  readonly speedRpm: number | null;
  /** Runout allowed round a ring's rim, which is twice its eccentricity. */
  readonly ringRunoutMm: number | null;
  /** Pressure peak over mean, at most so many times that of the new cover. */
  readonly peakOverNew: number | null;
  /** Ripple round the track, at most so many times that of the new cover. */
  readonly rippleOverNew: number | null;
}

/** One engagement of the lock-up clutch as the shop reckons it, and the steel it heats. */
export interface HeatSettings {
  /** Share of the heat that goes into the cover, 0 to 1. */
  readonly share: number;
  readonly torqueNm: number;
  readonly slipRpm: number;
  readonly slipTimeS: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  readonly startTemperatureC: number | null;
}

/** A number under a rigid piston and under one that follows the cover; a real piston lies between. */
export interface PistonRange {
  readonly rigid: number;
  readonly conforming: number;
}

/**
 * The cover new, as it came in, as the cut leaves it; with a ring, both bounds of its bonding; and the new cover of
 * another family. A ring already welded on is part of now and after, unbonded.
 */
export type BendingCaseId = 'new' | 'now' | 'after' | 'ring-unbonded' | 'ring-bonded' | 'other';

export const CASE_WORD: Readonly<Record<BendingCaseId, string>> = {
  new: 'new',
  now: 'now',
  after: 'after the cut',
  'ring-unbonded': 'with ring, least stiff',
  'ring-bonded': 'with ring, stiffest',
  other: 'another cover type, new',
};

/** One column of the advice. */
export interface BendingCase {
  readonly id: BendingCaseId;
  /** Thinnest wall on the track, taken as if it were so thin all round. */
  readonly trackWallMm: number;
  readonly ring: StiffeningRing | null;
  readonly peakOverMean: PistonRange;
  readonly rippleMm: PistonRange;
  readonly bossDeflectionMm: PistonRange;
  readonly greatestStressMPa: PistonRange;
  /** Under either piston; null where no yield was given. */
  readonly beyondYield: boolean | null;
  /** True when the boss moves more than half the wall under either piston; missing in older records. */
  readonly largeDeflection?: boolean;
  /** null where the shop has given no figures for an engagement. */
  readonly heat: CaseHeat | null;
}

export interface CaseHeat {
  /** At the mean pressure. */
  readonly peakRiseK: number;
  /** Behind a stud, where the heat is larger by the pressure peak. */
  readonly behindStudRiseK: PistonRange;
  /** The temperature behind a stud; null where the one before is not known, missing in older records. */
  readonly behindStudC?: PistonRange | null;
  /** The color clean steel takes at the hotter of the two temperatures. */
  readonly temperColour?: string | null;
}

/** Share of the recorded heat marks, weighed by depth, that lie where the lining presses harder than its mean. */
export interface MarksHeld {
  readonly count: number;
  readonly onPressed: PistonRange;
  /** Share of the track’s area pressed harder than the mean: marks spread by chance would lie there as often. */
  readonly pressedArea: PistonRange;
  /** `one`: under one bound of the piston only. */
  readonly agree: 'yes' | 'one' | 'no' | 'unclear';
}

/** What a ring weighs, and what it does to balance and room. */
export interface RingTold {
  readonly size: RingSize;
  /** Somewhat too much: the openings for the pads are not taken off. */
  readonly massKg: Answer;
  /** null where no runout is allowed for. */
  readonly unbalanceGmm: Answer | null;
  /** Allowed at the shop’s balance grade and speed; null where the shop has set none. */
  readonly permissibleGmm: Answer | null;
  /** Between ring and flexplate, which lies on the pads. */
  readonly clearanceMm: Answer;
}

/** An entry of the catalog at the revision that was taken. */
export interface CatalogueNamed {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
}

/** How a cover bends and heats, in the cases that were asked for. Advice. */
export interface Bending {
  readonly calcVersion: string;
  /** The new cover; every case is this with its own wall and ring. Another family has its own. */
  readonly base: BendingBase;
  readonly heat: HeatSettings | null;
  readonly cases: readonly BendingCase[];
  readonly other: {
    readonly familyId: string;
    readonly name: string;
    readonly base: BendingBase;
    /** In its own steel; left out in what was kept before cover types named one. */
    readonly heat?: HeatSettings | null;
  } | null;
  /** What the cover is made of, where its type names it; the figures are in base and heat. */
  readonly steel?: CatalogueNamed | null;
  /** What its lock-up clutch is lined with, likewise. */
  readonly lining?: CatalogueNamed | null;
  readonly limits: Pick<BendingSettings, 'peakOverNew' | 'rippleOverNew'>;
  /** Wall on the track at which either piston reaches the limit on the peak; null without one, or where none does. */
  readonly wallForPeakMm: number | null;
  /**
   * How far the pads reach over the track, where that is so far that the peak may come out too low; null where it is
   * not, left out in what was kept before it was told.
   */
  readonly padsTooFarMm?: number | null;
  readonly marks: MarksHeld | null;
  readonly ring: RingTold | null;
  /** True when a ring is welded on already. */
  readonly welded: boolean;
}

/** What does not change from case to case. */
export type BendingBase = Omit<
  StiffnessInput,
  'trackWallMm' | 'ring' | 'piston' | 'padInsetWalls' | 'peakLimit'
>;
