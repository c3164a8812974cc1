import type { Answer } from './answer.ts';
import type { RingSize, StiffeningRing, StiffnessInput } from './stiffness.ts';

/** What the shop takes for every cover it reckons the bending of, and the limits it has set on it. */
export interface BendingSettings {
  readonly liningModulusMPaPerMm: number;
  readonly youngMPa: number;
  readonly poisson: number;
  /** Where a family does not say. */
  readonly lockUpPressureMPa: number | null;
  readonly yieldMPa: number | null;
  /** Adds the oil's head of rotation. */
  readonly speedRpm: number | null;
  /** What a ring may run out round its rim: twice its eccentricity. */
  readonly ringRunoutMm: number | null;
  /** Pressure peak over mean, at most so many times that of the new cover. */
  readonly peakOverNew: number | null;
  /** Ripple round the track, at most so many times that of the new cover. */
  readonly rippleOverNew: number | null;
}

/** One engagement of the lock-up clutch as the shop reckons it, and the steel it heats. */
export interface HeatSettings {
  /** Of the heat, into the cover. */
  readonly share: number;
  readonly torqueNm: number;
  readonly slipRpm: number;
  readonly slipTimeS: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  readonly startTemperatureC: number | null;
}

/** Both bounds of the piston: a real one lies between. */
export interface PistonRange {
  readonly rigid: number;
  readonly conforming: number;
}

/**
 * The cover new, as it came in, as the cut leaves it; with a ring, both bounds of its bonding; and the new cover of
 * another family. A ring already welded on is part of now and after, unbonded.
 */
export type BendingCaseId = 'new' | 'now' | 'after' | 'ring-unbonded' | 'ring-bonded' | 'other';

/** One column of the advice. */
export interface BendingCase {
  readonly id: BendingCaseId;
  /** On the track, everywhere: of the wall there the thinnest. */
  readonly trackWallMm: number;
  readonly ring: StiffeningRing | null;
  readonly peakOverMean: PistonRange;
  readonly rippleMm: PistonRange;
  readonly bossDeflectionMm: PistonRange;
  readonly greatestStressMPa: PistonRange;
  /** Under either piston; null where no yield was given. */
  readonly beyondYield: boolean | null;
  /** The boss moves more than half the wall under either piston; left out in what was kept before it was told. */
  readonly largeDeflection?: boolean;
  /** null where the shop has not said what an engagement is. */
  readonly heat: CaseHeat | null;
}

export interface CaseHeat {
  /** At the mean pressure. */
  readonly peakRiseK: number;
  /** Behind a stud: the flux larger by the pressure peak. */
  readonly behindStudRiseK: PistonRange;
  /** The same from the temperature before; null where that was not given, left out in what was kept before it was told. */
  readonly behindStudC?: PistonRange | null;
  /** Of clean steel at the hotter of the two. */
  readonly temperColour?: string | null;
}

/** Of the recorded darkening, weighed by depth, what lies where the lining presses above the mean. */
export interface MarksHeld {
  readonly count: number;
  readonly onPressed: PistonRange;
  /** What share of the track’s area that is: marks spread by chance would lie there as often. */
  readonly pressedArea: PistonRange;
  /** `one`: under one bound of the piston only. */
  readonly agree: 'yes' | 'one' | 'no' | 'unclear';
}

/** What a ring weighs, and what it does to balance and room. */
export interface RingTold {
  readonly size: RingSize;
  /** At most: the openings for the pads are not taken off. */
  readonly massKg: Answer;
  /** null where no runout is allowed for. */
  readonly unbalanceGmm: Answer | null;
  /** At the shop’s grade and speed; null where they are not said. */
  readonly permissibleGmm: Answer | null;
  /** Between ring and flexplate, which lies on the pads. */
  readonly clearanceMm: Answer;
}

/** How a cover bends and heats, in the cases that were asked for. Advice. */
export interface Bending {
  readonly calcVersion: string;
  /** The new cover; every case is this with its own wall and ring. Another family has its own. */
  readonly base: BendingBase;
  readonly heat: HeatSettings | null;
  readonly cases: readonly BendingCase[];
  readonly other: { readonly familyId: string; readonly name: string; readonly base: BendingBase } | null;
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
  /** What was welded on already. */
  readonly welded: boolean;
}

/** What does not change from case to case. */
export type BendingBase = Omit<
  StiffnessInput,
  'trackWallMm' | 'ring' | 'piston' | 'padInsetWalls' | 'peakLimit'
>;
