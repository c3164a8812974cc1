import type { Answer, Warning } from '../answer.ts';

/** A flat stiffening ring on the engine side, with openings for the pads. */
export interface RingSize {
  readonly innerDiameterMm: number;
  readonly outerDiameterMm: number;
  readonly thicknessMm: number;
  /** Welded to the pads all round; null, or left out, where that is not known. Without it the ring gets no credit. */
  readonly joinedToPads?: boolean | null | undefined;
}

/** Rigid: moves as one piece along the axis. Conforming: takes any shape over the radius, so that every radius carries the even pressure. */
export type Piston = 'rigid' | 'conforming';

export interface StiffeningRing extends RingSize {
  /** True: ring and cover bend as one piece. False: each bends by itself. */
  readonly bonded: boolean;
}

/** What bends, what it is made of and what presses on it. The flat runs from the boss to the rim. */
export interface StiffnessInput {
  readonly bossDiameterMm: number;
  readonly rimDiameterMm: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly studCircleDiameterMm: number;
  readonly padDiameterMm: number;
  readonly padThicknessMm: number;
  readonly studCount: number;
  readonly wallMm: number;
  /** Wall left on the track. */
  readonly trackWallMm: number;
  readonly sideWallMm: number;
  readonly pistonSealDiameterMm: number;
  /** Diameter of the impeller's hub: outside it the rotating oil adds pressure. */
  readonly hubDiameterMm: number;
  readonly pressureMPa: number;
  readonly liningModulusMPaPerMm: number;
  readonly piston: Piston;
  readonly youngMPa: number;
  readonly poisson: number;
  /** Turns on the pressure the oil gets from rotating; null leaves it out. */
  readonly speedRpm: number | null;
  readonly yieldMPa: number | null;
  readonly ring: StiffeningRing | null;
  /** How far within a pad's edge its stiff part begins, in walls. null: the rule adopted; 0: pads as drawn. */
  readonly padInsetWalls: number | null;
  /** A limit on the pressure peak over the mean: the wall on the track at which it is reached is looked for. */
  readonly peakLimit: number | null;
}

/** Looking at the clutch face, 0° behind stud 1; angles run on to midway between two studs, then mirror. */
export interface PressureMap {
  readonly radiiMm: readonly number[];
  readonly anglesDeg: readonly number[];
  /** One row for each radius. */
  readonly pressureMPa: readonly (readonly number[])[];
}

/** Deflection along two radii, + toward the engine. */
export interface DeflectedSection {
  readonly radiiMm: readonly number[];
  readonly behindStudMm: readonly number[];
  readonly betweenStudsMm: readonly number[];
}

export interface StiffnessAnswer {
  readonly meanPressureMPa: number;
  readonly peakOverMean: number;
  readonly peakAt: { readonly radiusMm: number; readonly angleDeg: number };
  /** Share of the track's area. */
  readonly touchingShare: number;
  readonly rippleMm: number;
  readonly bossDeflectionMm: number;
  readonly greatestStressMPa: number;
  readonly greatestStressAt: { readonly radiusMm: number; readonly angleDeg: number };
  /** null when no yield was given. */
  readonly beyondYield: boolean | null;
  /** null when no limit was given, or none within reach; a warning then says why. */
  readonly wallForPeakMm: number | null;
  readonly section: DeflectedSection;
  readonly pressureMap: PressureMap;
  /** How good these numbers are, and what they leave out. */
  readonly warnings: readonly Warning[];
  readonly answers: Readonly<Record<string, Answer>>;
}
