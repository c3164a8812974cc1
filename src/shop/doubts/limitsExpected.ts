import type { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import type { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import type { LINING } from '../../../shared/words/fields/lining.ts';
import { ENGINE_TORQUE, gapTypedExpected, PROVED, SHIM } from '../studs/studsExpected.ts';
import { LOCK_UP, YIELD_STRENGTH } from './coverExpected.ts';
import { type ExpectedWhole, ofAnySize, WHOLE } from './expectedFigures.ts';

const TIMES_NEW = { least: 1, most: 6 };
const OFF = ofAnySize(0.05, 1.2, 'one shop wants 0.05 mm and another 0.5 mm');
const SPEED = { least: 900, most: 9000 };

/** Of what covers are made of, cast iron and aluminum too. */
export const OF_STEEL = {
  youngMPa: { least: 60_000, most: 230_000 },
  poisson: { least: 0.15, most: 0.4 },
  conductivityWPerMK: { least: 12, most: 250, likely: { least: 36, most: 62 } },
  densityKgPerM3: { least: 2000, most: 9000 },
  specificHeatJPerKgK: { least: 300, most: 1000 },
} as const;

/** What the figures of a lathe are at all: common practice, no source. */
export const LATHE_EXPECTED = {
  leastRpm: { least: 8, most: 300, notTold: 'one lathe begins at 10 rpm and another at 200' },
  mostRpm: { least: 300, most: 5000 },
  cuttingSpeedMPerMin: { least: 25, most: 700, likely: { least: 60, most: 240 } },
  noseRadiusMm: { least: 0.18, most: 2.5 },
  roughingLimitMm: { least: 0.08, most: 1.2 },
  finishingCutMm: { least: 0.02, most: 0.3 },
  roughingFeedMm: { least: 0.05, most: 0.6 },
  finishingFeedMm: { least: 0.02, most: 0.4 },
} as const satisfies ExpectedWhole<typeof CATALOGUE_LATHE>;

/** What the figure of a lining is at all: common practice, no source. */
export const LINING_EXPECTED = {
  liningModulusMPaPerMm: { least: 15, most: 400 },
} as const satisfies ExpectedWhole<typeof LINING>;

/**
 * What the shop’s limits and figures are at all, so that a slipped decimal or the wrong unit is asked about: common
 * practice, no source. Nothing is judged by them.
 */
export const CRITERIA_EXPECTED: ExpectedWhole<typeof CRITERIA> = {
  // Those that limitDoubt finds beside the new walls are asked about by it first.
  minimumWallMm: { least: 1.5, most: 11 },
  cleanUpAllowanceMm: { least: 0.01, most: 0.5 },
  faceRunoutLimitMm: { least: 0.02, most: 0.5 },
  typicalCutMm: { least: 0.04, most: 1.5 },
  confidence: { any: '50 to 99.99 %: ten times, or a tenth, is refused' },
  protrusionThreads: { least: 0.5, most: 4.5 },
  startThreads: { least: 1, most: 8 },
  pilotLeadMm: { least: 0.8, most: 8 },
  leastPullForwardMm: gapTypedExpected(null),
  mostPullForwardMm: gapTypedExpected(null),
  shimsMm: SHIM,
  backupAwayDays: WHOLE,
  whatStops: {},
  studSetting: { leanAt25Mm: OFF, offMm: OFF, proofNm: PROVED },
  lathe: LATHE_EXPECTED,
  balance: {
    gradeMmPerS: { least: 0.4, most: 40, notTold: 'grades go from 0.4 to 40' },
    massKg: { least: 2, most: 60, notTold: 'a cover has 3 kg and a whole converter 30, or as many pounds' },
    speedRpm: SPEED,
  },
  bending: {
    ...LINING_EXPECTED,
    youngMPa: OF_STEEL.youngMPa,
    poisson: OF_STEEL.poisson,
    lockUpPressureMPa: LOCK_UP,
    yieldMPa: YIELD_STRENGTH,
    speedRpm: SPEED,
    ringRunoutMm: ofAnySize(0.02, 2, 'a ring is trued to 0.05 mm, or as it was welded'),
    peakOverNew: TIMES_NEW,
    rippleOverNew: TIMES_NEW,
  },
  heat: {
    share: { least: 0.15, most: 0.9 },
    torqueNm: ENGINE_TORQUE,
    slipRpm: { least: 80, most: 6000, notTold: 'a clutch slips by 100 rpm or by 3000' },
    slipTimeS: { least: 0.08, most: 8, notTold: 'a clutch slips for a tenth of a second, or for some' },
    conductivityWPerMK: OF_STEEL.conductivityWPerMK,
    densityKgPerM3: OF_STEEL.densityKgPerM3,
    specificHeatJPerKgK: OF_STEEL.specificHeatJPerKgK,
    startTemperatureC: ofAnySize(10, 160, '90 °C is hot oil, and 90 °F a warm day'),
  },
};
