import type { CatalogueGauge, Family } from '../../../shared/words/catalogue.ts';
import type { COVER_SHAPE, OWN_BENDING } from '../../../shared/words/fields/cover.ts';
import type { FAMILY, RING } from '../../../shared/words/fields/family.ts';
import type { GAUGE } from '../../../shared/words/fields/gauge.ts';
import type { PLAN } from '../../../shared/words/fields/job.ts';
import type { FIT_LIMITS, KNOCK_ON } from '../../../shared/words/fields/knockOn.ts';
import type { GAUGE_FIGURES, SETUP } from '../../../shared/words/fields/setup.ts';
import type { SHELF_ASKED } from '../../../shared/words/fields/shelf.ts';
import type { RIGHT_GAUGE } from '../../../shared/words/fields/wrong.ts';
import { BOLT_CIRCLE, gapTypedExpected, SHIM } from '../studs/studsExpected.ts';
import {
  type AnyExpected,
  about,
  type ExpectedWhole,
  type FigureExpected,
  ofAnySize,
  WHOLE,
} from './expectedFigures.ts';

/**
 * What figures of covers, gauges and what is measured round a cover are at all, so that a slipped decimal or the wrong
 * unit is asked about: common practice, no source. Nothing is judged by them.
 */

const OWN_RULE: AnyExpected = { any: 'asked about against the new wall, by limitDoubt' };
const SMALL = 'ten times as much, or a tenth, is usual too';
const anySize = (least: number, most: number) => ofAnySize(least, most, SMALL);

const PAD_THICKNESS: FigureExpected = { least: 3, most: 25 };
export const LOCK_UP: FigureExpected = { least: 0.2, most: 1.7 };
/** From mild to quenched steel. */
export const YIELD_STRENGTH: FigureExpected = { least: 150, most: 1200 };

/** What the bending needs of a cover. */
const BENT = {
  bossDiameterMm: { least: 25, most: 200 },
  rimDiameterMm: { least: 150, most: 500 },
  padDiameterMm: { least: 10, most: 90 },
  padThicknessMm: PAD_THICKNESS,
  sideWallMm: { least: 1.3, most: 12 },
  pistonSealDiameterMm: { least: 25, most: 200 },
  hubDiameterMm: { least: 18, most: 130 },
  lockUpPressureMPa: LOCK_UP,
} as const satisfies ExpectedWhole<typeof OWN_BENDING>;

export const OWN_BENDING_EXPECTED: ExpectedWhole<typeof OWN_BENDING> = BENT;

const SHAPE = {
  studCount: WHOLE,
  studCircleDiameterMm: BOLT_CIRCLE,
  trackInnerDiameterMm: { least: 70, most: 420 },
  trackOuterDiameterMm: { least: 90, most: 480 },
  nominalWallMm: { least: 2.2, most: 14 },
} as const;

export const SHAPE_EXPECTED: ExpectedWhole<typeof COVER_SHAPE> = {
  ...SHAPE,
  densityKgPerM3: { any: 'no form has a box for it' },
};

const RING_EXPECTED: ExpectedWhole<typeof RING> = {
  innerDiameterMm: { least: 70, most: 480 },
  outerDiameterMm: { least: 90, most: 520 },
  thicknessMm: { least: 2, most: 18 },
};

const HUB_ENGAGEMENT: FigureExpected = { least: 4, most: 40 };
const PILOT_ENGAGED: FigureExpected = { least: 2.5, most: 25 };
const SIDE_WALL_HEIGHT: FigureExpected = { least: 25, most: 220 };
const OVERALL_HEIGHT: FigureExpected = { least: 60, most: 450 };
const END_PLAY = anySize(0.1, 2);
const COPLANAR = anySize(0.02, 0.5);
const CLEARANCE = anySize(0.02, 0.5);

export const FITS_EXPECTED: ExpectedWhole<typeof FIT_LIMITS> = {
  leastPadThicknessMm: PAD_THICKNESS,
  padsCoplanarWithinMm: COPLANAR,
  leastPullForwardMm: gapTypedExpected(null),
  mostPullForwardMm: gapTypedExpected(null),
  leastHubEngagementMm: HUB_ENGAGEMENT,
  mostPilotClearanceMm: CLEARANCE,
  leastPilotEngagedMm: PILOT_ENGAGED,
  leastSideWallHeightMm: SIDE_WALL_HEIGHT,
  mostSideWallHeightMm: SIDE_WALL_HEIGHT,
  leastOverallHeightMm: OVERALL_HEIGHT,
  mostOverallHeightMm: OVERALL_HEIGHT,
  leastEndPlayMm: END_PLAY,
  mostEndPlayMm: END_PLAY,
};

export const FAMILY_EXPECTED: ExpectedWhole<typeof FAMILY> = {
  ...SHAPE,
  ...BENT,
  yieldMPa: YIELD_STRENGTH,
  ring: RING_EXPECTED,
  limits: FITS_EXPECTED,
  makerMinimumWallMm: OWN_RULE,
  shopMinimumWallMm: OWN_RULE,
};

/** Of a certificate or a data sheet, by what measures. */
const OF_GAUGE: Readonly<
  Record<CatalogueGauge['gaugeKind'], { step: FigureExpected; U: FigureExpected; spread: FigureExpected }>
> = {
  micrometer: {
    step: { least: 0.0009, most: 0.013 },
    U: { least: 0.0008, most: 0.012 },
    spread: { least: 0.0003, most: 0.006 },
  },
  caliper: {
    step: { least: 0.009, most: 0.06 },
    U: { least: 0.008, most: 0.12 },
    spread: { least: 0.003, most: 0.06 },
  },
  indicator: {
    step: { least: 0.0009, most: 0.026 },
    U: { least: 0.0008, most: 0.03 },
    spread: { least: 0.0003, most: 0.012 },
  },
  ultrasound: {
    step: { least: 0.0009, most: 0.026 },
    U: { least: 0.004, most: 0.15 },
    spread: { least: 0.002, most: 0.06 },
  },
};

export function gaugeExpected(kind: CatalogueGauge['gaugeKind']): ExpectedWhole<typeof GAUGE> {
  const { step, U, spread } = OF_GAUGE[kind];
  return {
    resolutionMm: step,
    calibrationUMm: U,
    coverageFactor: { any: '1 to 4: ten times, or a tenth, is refused' },
    repeatabilityMm: spread,
    checkEveryDays: WHOLE,
  };
}

/** Of a gauge found to be wrong: no gauge reads half a millimeter off unseen (common practice, no source). */
export const RIGHT_GAUGE_EXPECTED: ExpectedWhole<typeof RIGHT_GAUGE> = {
  biasMm: {
    least: 0.0005,
    most: 0.4,
    signed: true,
    notTold: 'one gauge is off by 0.002 mm and another by 0.2 mm',
  },
  calibrationUMm: {
    least: 0.0005,
    most: 0.1,
    notTold: 'a caliper has ten times the uncertainty of a micrometer',
  },
};

const ANY_GAUGE = 'a caliper shows ten times the step of a micrometer';
const anyGauge = (least: number, most: number): FigureExpected => ({ least, most, notTold: ANY_GAUGE });

/** Of a gauge of any kind. */
const GAUGE_FIGURES_EXPECTED: ExpectedWhole<typeof GAUGE_FIGURES> = {
  standardUncertaintyMm: anyGauge(0.0003, 0.08),
  resolutionMm: anyGauge(0.0005, 0.11),
  repeatabilityMm: anyGauge(0.0002, 0.06),
  faceStandardUncertaintyMm: anyGauge(0.0003, 0.06),
  cutSettingStandardUncertaintyMm: anyGauge(0.0005, 0.08),
};

/** A length that has limits is about their middle; else as such things measure at all. */
function within(least: number | null | undefined, most: number | null | undefined, else_: FigureExpected) {
  const known = [least, most].filter((mm): mm is number => mm !== null && mm !== undefined && mm > 0);
  return known.length === 0 ? else_ : { ...else_, ...about(known.reduce((a, b) => a + b) / known.length) };
}

/** What is measured round a cover, held against its type’s figures. */
export function knockOnExpected(
  family: Pick<Family, 'padThicknessMm' | 'limits'> | null,
): ExpectedWhole<typeof KNOCK_ON> {
  const limits = family?.limits ?? null;
  const pad = family?.padThicknessMm ? about(family.padThicknessMm) : PAD_THICKNESS;
  const sideWall = within(limits?.leastSideWallHeightMm, limits?.mostSideWallHeightMm, SIDE_WALL_HEIGHT);
  const overall = within(limits?.leastOverallHeightMm, limits?.mostOverallHeightMm, OVERALL_HEIGHT);
  const gap = within(limits?.leastPullForwardMm, limits?.mostPullForwardMm, gapTypedExpected(null));
  return {
    clampedFaceMm: { ...anySize(0.003, 0.6), signed: true },
    releasedFaceMm: { ...anySize(0.003, 0.6), signed: true },
    padsResurfacedMm: anySize(0.03, 3),
    shimsMm: SHIM,
    padThicknessMm: pad,
    leastPadThicknessMm: pad,
    padHeightsMm: { any: 'from any plane: they are held against one another, by padHeightDoubt' },
    padsCoplanarWithinMm: COPLANAR,
    pullForwardMm: gap,
    leastPullForwardMm: gap,
    mostPullForwardMm: gap,
    hubEngagementMm: HUB_ENGAGEMENT,
    leastHubEngagementMm: HUB_ENGAGEMENT,
    crankPilotMm: { least: 14, most: 130 },
    crankBoreMm: { least: 14, most: 130 },
    mostPilotClearanceMm: CLEARANCE,
    pilotEngagedMm: PILOT_ENGAGED,
    leastPilotEngagedMm: PILOT_ENGAGED,
    pilotRoomMm: { least: 4, most: 40 },
    sideWallHeightMm: { mm: sideWall, leastMm: sideWall, mostMm: sideWall },
    overallHeightMm: { mm: overall, leastMm: overall, mostMm: overall },
    endPlayMm: { mm: END_PLAY, leastMm: END_PLAY, mostMm: END_PLAY },
  };
}

/** How a cover is measured. */
export function setupExpected(
  family: Parameters<typeof knockOnExpected>[0],
): Omit<ExpectedWhole<typeof SETUP>, 'gauges'> {
  return {
    residualRunoutMm: anySize(0.002, 0.4),
    gaugeFigures: GAUGE_FIGURES_EXPECTED,
    releaseClearanceMm: { least: 0.25, most: 3 },
    knockOn: knockOnExpected(family),
  };
}

/** A cut to try, held against the least that cleans up; without one, against what a cover is faced by at all. */
export function planExpected(cleanUpMm: number | null): ExpectedWhole<typeof PLAN> {
  const of = cleanUpMm !== null && cleanUpMm > 0 ? cleanUpMm : null;
  return {
    plannedCutMm:
      of === null ? { least: 0.08, most: 1.2 } : { least: of / 2.5, most: Math.max(of * 2.5, of + 0.5) },
  };
}

/** What an order asks of a cover on the shelf. */
export const SHELF_EXPECTED: ExpectedWhole<typeof SHELF_ASKED> = {
  leastWallMm: { least: 1.5, most: 14 },
  sure: { any: 'a share within bounds: ten times, or a tenth, is refused' },
  crankPilotMm: { least: 14, most: 130 },
};
