import type {
  CoverCheckInput,
  CoverCriteria,
  CoverShape,
  Gauge,
  KnockOn,
  Station,
} from '../../shared/words/cover.ts';
import { nothingOf } from '../../shared/words/fields/field.ts';
import { KNOCK_ON } from '../../shared/words/fields/knockOn.ts';

/** Angle, radius, wall, face height, mark depth. */
type Row = readonly [number, number, number, number, number];

/** Set one: twelve stations on two rings (independent second implementation, not published). */
const ONE: readonly Row[] = [
  [0, 110, 4.92, 0.06, 0.2],
  [45, 110, 4.9, 0.05, 0],
  [90, 110, 4.86, 0.01, 0.12],
  [135, 110, 4.83, -0.02, 0],
  [180, 110, 4.8, -0.05, 0.25],
  [225, 110, 4.81, -0.04, 0],
  [270, 110, 4.85, 0, 0.1],
  [315, 110, 4.9, 0.04, 0],
  [0, 128, 4.93, 0.07, 0.1],
  [90, 128, 4.86, 0.01, 0.05],
  [180, 128, 4.79, -0.06, 0.15],
  [270, 128, 4.85, 0, 0.05],
];

/** Set two, where dialling in helps (independent second implementation, not published). */
const TWO: readonly Row[] = [
  [0, 120, 4.9, 0.03, 0],
  [45, 120, 4.93, 0.02, 0.22],
  [90, 120, 4.95, 0, 0],
  [135, 120, 4.92, -0.02, 0.1],
  [180, 120, 4.86, -0.03, 0],
  [225, 120, 4.8, -0.02, 0.05],
  [270, 120, 4.78, 0, 0],
  [315, 120, 4.83, 0.02, 0.08],
];

export const SHAPE: CoverShape = {
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  densityKgPerM3: null,
};

export const CRITERIA: CoverCriteria = {
  minimumWallMm: 4.3,
  minimumWallSource: 'set by the shop for this test',
  faceRunoutLimitMm: null,
  cleanUpAllowanceMm: 0.05,
  confidence: 0.95,
  typicalCutMm: 0.25,
};

export const NO_GAUGE: Gauge = {
  standardUncertaintyMm: null,
  resolutionMm: null,
  repeatabilityMm: null,
  faceStandardUncertaintyMm: null,
  cutSettingStandardUncertaintyMm: null,
};

/** Nothing measured round the face. */
export const NOT_GIVEN: KnockOn = nothingOf(KNOCK_ON);

export function stationsOf(rows: readonly Row[]): Station[] {
  return rows.map(([angleDeg, radiusMm, wall, faceMm, markDepthMm]) => ({
    angleDeg,
    radiusMm,
    wallMm: [wall],
    faceMm,
    markDepthMm,
  }));
}

export const SET_ONE = stationsOf(ONE);
export const SET_TWO = stationsOf(TWO);

export function coverInput(over: Partial<CoverCheckInput> = {}): CoverCheckInput {
  return {
    cover: SHAPE,
    stations: SET_ONE,
    marks: [],
    gauge: null,
    criteria: CRITERIA,
    makerMinimumWallMm: null,
    makerMinimumWallSource: null,
    chucking: 'pads-and-pilot-trued',
    plannedCutMm: null,
    crackTest: 'none-found',
    releaseClearanceMm: null,
    inspectionFailures: [],
    doubtfulReadings: [],
    ...over,
  };
}
