import type { ShopCriteria } from '../../shared/words/catalogue.ts';

/** The demonstration shop’s own limits and habits. It sets no minimum wall for every family at once. */
export const demoCriteria: ShopCriteria = {
  shopName: 'Bramble Lane Converters',
  minimumWallMm: null,
  cleanUpAllowanceMm: 0.05,
  faceRunoutLimitMm: 0.1,
  confidence: 0.95,
  typicalCutMm: 0.25,
  protrusionThreads: 1,
  startThreads: 2,
  lengthUnit: 'mm',
  decimalSign: 'point',
  lathe: {
    leastRpm: 30,
    mostRpm: 800,
    cuttingSpeedMPerMin: 140,
    noseRadiusMm: 0.8,
    roughingLimitMm: 0.2,
    finishingCutMm: 0.1,
    roughingFeedMm: 0.2,
    finishingFeedMm: 0.1,
  },
  balance: { gradeMmPerS: 6.3, massKg: 3, speedRpm: 3000 },
  studSetting: { leanAt25Mm: 0.15, offMm: 0.2, proofNm: 40 },
  shimsMm: [0.5, 0.8, 1, 1.5, 2, 2.5],
  bending: {
    liningModulusMPaPerMm: 60,
    youngMPa: 206_000,
    poisson: 0.29,
    lockUpPressureMPa: null,
    yieldMPa: null,
    speedRpm: null,
    ringRunoutMm: 0.3,
    peakOverNew: null,
    rippleOverNew: null,
  },
  heat: {
    share: 0.5,
    torqueNm: 300,
    slipRpm: 1000,
    slipTimeS: 0.6,
    conductivityWPerMK: 51.9,
    densityKgPerM3: 7870,
    specificHeatJPerKgK: 486,
    startTemperatureC: 90,
  },
};

/** What it set later, once covers faced thin had come back with the same marks. Invented, like all of it. */
export const demoCriteriaNow: ShopCriteria = {
  ...demoCriteria,
  bending: { ...demoCriteria.bending!, peakOverNew: 1.06, rippleOverNew: 1.25 },
};
