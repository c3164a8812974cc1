import type { Answer, Warning } from './answer.ts';
import type { Finding } from './finding.ts';
import type { MasterChecks } from './gauges/masterChecks.ts';
import type { HeatMarkRow } from './heatMarks.ts';
import type { WhatStops } from './whatStops.ts';

/** Angles run clockwise looking at the clutch face, 0° behind stud 1. Lengths in mm. Face heights: + is proud. */
export interface CoverShape {
  readonly studCount: number;
  readonly studCircleDiameterMm: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly nominalWallMm: number;
  readonly densityKgPerM3: number | null;
}

export interface Station {
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** Every reading of the wall here, repeats included; at least one. */
  readonly wallMm: readonly number[];
  /** Indicator height of the face; given at all stations or at none. */
  readonly faceMm: number | null;
  /** From sound metal beside the mark to the bottom of the darkened layer. */
  readonly markDepthMm: number | null;
}

export interface Mark {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly depthMm: number;
}

export interface Gauge {
  readonly standardUncertaintyMm: number | null;
  readonly resolutionMm: number | null;
  readonly repeatabilityMm: number | null;
  readonly faceStandardUncertaintyMm: number | null;
  readonly cutSettingStandardUncertaintyMm: number | null;
}

export interface CoverCriteria {
  readonly minimumWallMm: number | null;
  /** Who set the shop's minimum, in the shop's words. */
  readonly minimumWallSource: string | null;
  /** The shop's formula for the minimum, and how it gave the figure for this cover, or why it gave none. */
  readonly minimumWallFormula?: string | null;
  readonly minimumWallWorking?: string | null;
  /** Runout allowed in the face after the cut, over the track's outer diameter. */
  readonly faceRunoutLimitMm: number | null;
  readonly cleanUpAllowanceMm: number | null;
  readonly confidence: number | null;
  readonly typicalCutMm: number | null;
  /** What stops and what warns, where the shop chose otherwise than usual. */
  readonly whatStops?: Partial<WhatStops> | null;
}

/** How well a cover has to be balanced: ISO 21940-11 at the grade and speed the shop works to. */
export interface BalanceWanted {
  readonly gradeMmPerS: number;
  readonly massKg: number;
  readonly speedRpm: number;
}

export type Chucking = 'pads-and-pilot-trued' | 'side-wall-jaws';
export type CrackTest = 'found' | 'none-found' | 'not-done';

/** A length as measured, and what it may be. */
export interface WithinLimits {
  readonly mm: number;
  readonly leastMm: number | null;
  readonly mostMm: number | null;
}

/** Other dimensions of the job, measured round the face. null: not given, and then nothing is found of it. */
export interface KnockOn {
  /** Height of one place on the face, clamped in the chuck and released. */
  readonly clampedFaceMm: number | null;
  readonly releasedFaceMm: number | null;
  readonly padsResurfacedMm: number | null;
  /** The same shim under every pad. */
  readonly shimsMm: number | null;
  readonly padThicknessMm: number | null;
  readonly leastPadThicknessMm: number | null;
  readonly padHeightsMm: readonly number[];
  readonly padsCoplanarWithinMm: number | null;
  /** With the converter fully back, before pads are resurfaced and without shims. */
  readonly pullForwardMm: number | null;
  readonly leastPullForwardMm: number | null;
  readonly mostPullForwardMm: number | null;
  /** How deep the hub is in the pump with the converter fully back. */
  readonly hubEngagementMm: number | null;
  readonly leastHubEngagementMm: number | null;
  readonly crankPilotMm: number | null;
  readonly crankBoreMm: number | null;
  readonly mostPilotClearanceMm: number | null;
  readonly pilotEngagedMm: number | null;
  readonly leastPilotEngagedMm: number | null;
  /** Room for the pilot in the crank: engaged farther, it bottoms. */
  readonly pilotRoomMm: number | null;
  readonly sideWallHeightMm: WithinLimits | null;
  readonly overallHeightMm: WithinLimits | null;
  readonly endPlayMm: WithinLimits | null;
}

/** What the lengths round the face may be for a family: its figures, with where they are printed. */
export interface FitLimits {
  readonly leastPadThicknessMm: number | null;
  readonly padsCoplanarWithinMm: number | null;
  readonly leastPullForwardMm: number | null;
  readonly mostPullForwardMm: number | null;
  readonly leastHubEngagementMm: number | null;
  readonly mostPilotClearanceMm: number | null;
  readonly leastPilotEngagedMm: number | null;
  readonly leastSideWallHeightMm: number | null;
  readonly mostSideWallHeightMm: number | null;
  readonly leastOverallHeightMm: number | null;
  readonly mostOverallHeightMm: number | null;
  readonly leastEndPlayMm: number | null;
  readonly mostEndPlayMm: number | null;
  readonly source: string;
}

/** A gauge the shop could measure with instead. */
export interface GaugeAtHand {
  readonly name: string;
  readonly standardUncertaintyMm: number | null;
  readonly resolutionMm: number | null;
  readonly repeatabilityMm: number | null;
}

/** An inspection item that failed; `final` when the shop says nothing can mend it. */
export interface InspectionFailure {
  readonly item: string;
  readonly final: boolean;
}

export interface CoverCheckInput {
  readonly cover: CoverShape;
  readonly stations: readonly Station[];
  readonly marks: readonly Mark[];
  readonly gauge: Gauge | null;
  readonly criteria: CoverCriteria | null;
  readonly makerMinimumWallMm: number | null;
  readonly makerMinimumWallSource: string | null;
  /** null: not given; taken as pads-and-pilot-trued, and the answer says so. */
  readonly chucking: Chucking | null;
  readonly plannedCutMm: number | null;
  readonly crackTest: CrackTest;
  readonly releaseClearanceMm: number | null;
  readonly inspectionFailures: readonly InspectionFailure[];
  /** Items of the inspection nobody has looked at yet, in words: without them the inspection is not OK. */
  readonly notInspected?: readonly string[];
  /** Places of readings that were doubted when typed and not confirmed, in words ("wall at station 3"). */
  readonly doubtfulReadings: readonly string[];
  /** Gauges the readings were taken with, and the day each one's calibration is due. */
  readonly gaugesUsed?: readonly GaugeUsed[];
  /** The day the readings were taken, `2026-11-24`. */
  readonly measuredOn?: string | null;
  /** Gauges that could be used instead, where more readings do not settle a doubt. */
  readonly gaugesAtHand?: readonly GaugeAtHand[];
  /** Judged against ISO 21940-11 where it is given. */
  readonly balance?: BalanceWanted | null;
  readonly knockOn?: KnockOn | null;
  /** Used where `knockOn` gives no limit of its own. */
  readonly familyLimits?: FitLimits | null;
}

export interface GaugeUsed {
  readonly name: string;
  readonly dueOn: string | null;
  /** What its checks on a master say; null, or left out, where there are none and none is asked for. */
  readonly masterChecks?: MasterChecks | null;
}

export type Verdict =
  | 'face'
  | 'face-if-sound'
  | 'face-and-ring'
  | 'replace'
  | 'measure-again'
  | 'plan-again'
  | 'advice-only';

export interface StationAnswer {
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** Mean of the repeats. */
  readonly wallMm: number;
  readonly faceMm: number | null;
  readonly markDepthMm: number;
  readonly cutMm: number;
  readonly wallAfterMm: number;
  readonly marginMm: number | null;
  readonly conformanceProbability: number | null;
}

export interface CoverCheck {
  readonly verdict: Verdict;
  /** The verdict as a heading: "Face it: 0.33 mm." */
  readonly headline: string;
  /** The one number that decided it, in one or two sentences. */
  readonly because: string;
  readonly face: {
    readonly runoutMm: number | null;
    readonly indicatorReadingMm: number | null;
    readonly flatnessLeastSquaresMm: number | null;
    readonly flatnessMinimumZoneMm: number | null;
    readonly dishMm: number | null;
  };
  /** null where no wall was measured. */
  readonly cut: {
    readonly dialledMm: number;
    readonly toolPlaneMm: number;
    readonly cleansUp: boolean;
    /** The least cut that cleans up, whatever was planned. */
    readonly cleanUpMm: number;
  } | null;
  readonly dialledIn: {
    readonly wallGainedMm: number;
    readonly leastWallMm: number;
    readonly tiltMm: number;
    readonly tiltDirectionDeg: number | null;
    /** Under pads 1, 2, 3 …, in the order of the studs. */
    readonly shimsMm: readonly number[];
    /** The cut to dial once it is shimmed, from the highest point. */
    readonly dialledMm: number;
  } | null;
  /** null where no wall was measured. */
  readonly leastWall: {
    readonly beforeMm: number;
    readonly afterMm: number;
    /** Index of the station as sent, from 0. */
    readonly station: number;
    readonly standardUncertaintyMm: number | null;
    readonly expandedUncertaintyMm: number | null;
    readonly degreesOfFreedom: number | null;
    /** The thinnest wall that would reach the shop's confidence; missing in older decisions. */
    readonly sureFromMm?: number | null;
  } | null;
  readonly minimumWall: {
    readonly mm: number;
    readonly source: string;
    readonly from: 'maker' | 'shop';
  } | null;
  readonly conformanceProbability: number | null;
  readonly cutsLeft: number | null;
  readonly stations: readonly StationAnswer[];
  readonly marks: readonly {
    readonly angleDeg: number;
    readonly radiusMm: number;
    readonly depthMm: number;
    readonly wallMm: number;
    readonly faceMm: number | null;
    readonly cutMm: number;
  }[];
  /** Only without indicator readings: the two ways the face could lie. */
  readonly bounds: {
    readonly padSideFlat: { readonly dialledMm: number; readonly leastWallMm: number };
    readonly faceFlat: { readonly dialledMm: number; readonly leastWallMm: number };
  } | null;
  readonly unbalance: { readonly gmm: number; readonly heavySideDeg: number | null } | null;
  readonly releaseClearanceAfterMm: number | null;
  /** What the heat marks say, a row each, from the center; advice. Left out in older decisions. */
  readonly heatMarks?: readonly HeatMarkRow[];
  readonly findings: readonly Finding[];
  /** Every number above with its working, for "why". */
  readonly answers: Readonly<Record<string, Answer>>;
}

/** A check of walls that were measured: the cut and the least wall are known. */
export type MeasuredCheck = CoverCheck & {
  readonly cut: NonNullable<CoverCheck['cut']>;
  readonly leastWall: NonNullable<CoverCheck['leastWall']>;
};

/** Without walls a cover is judged by its crack or its fault alone. */
export function isMeasured<Check extends Pick<CoverCheck, 'cut' | 'leastWall'>>(
  check: Check,
): check is Check & Pick<MeasuredCheck, 'cut' | 'leastWall'> {
  return check.cut !== null && check.leastWall !== null;
}

/** A crack, or a fault that cannot be mended: the cover is lost whatever its wall is. */
export function isLost({
  crackTest,
  inspectionFailures,
}: Pick<CoverCheckInput, 'crackTest' | 'inspectionFailures'>): boolean {
  return crackTest === 'found' || inspectionFailures.some(({ final }) => final);
}

/** What a lathe and its operator do, to turn a depth into passes. */
export interface CutPlanInput {
  readonly totalCutMm: number;
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  /** Deepest roughing pass. */
  readonly roughingLimitMm: number;
  /** Left for the last pass. */
  readonly finishingCutMm: number;
  readonly roughingFeedMm: number;
  readonly finishingFeedMm: number;
  readonly cuttingSpeedMPerMin: number;
  readonly noseRadiusMm: number;
  /** The lathe's range. */
  readonly leastRpm: number;
  readonly mostRpm: number;
}

export interface CutPass {
  readonly kind: 'roughing' | 'finishing';
  readonly depthMm: number;
  /** Depth reached after this pass, from first touch. */
  readonly totalMm: number;
  readonly feedMm: number;
  readonly timeS: number;
}

export interface CutPlanAnswer {
  readonly passes: readonly CutPass[];
  readonly spindleRpm: number;
  /** At the track's outer diameter, at that speed. */
  readonly cuttingSpeedMPerMin: number;
  readonly timeS: number;
  readonly finishRtUm: number;
  readonly finishRaUm: number;
  readonly warnings: readonly Warning[];
  readonly answers: Readonly<Record<string, Answer>>;
}

/** A gain in wall smaller than this is not worth dialling a cover in for (common practice, no source). */
export const DIALLING_WORTH_MM = 0.01;
