import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import { inches, us } from './inches.ts';

/** The demo shop’s own limits and habits. It sets no minimum wall for every cover type at once. */
export const demoCriteria: ShopCriteria = {
  shopName: 'Demo shop',
  minimumWallMm: null,
  cleanUpAllowanceMm: inches(0.002),
  faceRunoutLimitMm: inches(0.004),
  confidence: 0.95,
  typicalCutMm: inches(0.01),
  protrusionThreads: 1,
  startThreads: 2,
  pilotLeadMm: inches(0.04),
  leastPullForwardMm: inches(0.125),
  mostPullForwardMm: inches(0.1875),
  lengthUnit: 'in',
  decimalSign: 'point',
  lathe: {
    leastRpm: 30,
    mostRpm: 800,
    cuttingSpeedMPerMin: us(460, 'cutting-speed'),
    noseRadiusMm: inches(0.031),
    roughingLimitMm: inches(0.008),
    finishingCutMm: inches(0.004),
    roughingFeedMm: inches(0.008),
    finishingFeedMm: inches(0.004),
  },
  balance: { gradeMmPerS: 6.3, massKg: us(6.5, 'mass'), speedRpm: 3000 },
  studSetting: { leanAt25Mm: inches(0.006), offMm: inches(0.008), proofNm: us(30, 'torque') },
  shimsMm: [0.02, 0.03, 0.04, 0.06, 0.08, 0.1].map(inches),
  bending: {
    liningModulusMPaPerMm: us(220_000, 'lining-modulus'),
    youngMPa: us(29_900, 'stress'),
    poisson: 0.29,
    lockUpPressureMPa: null,
    yieldMPa: null,
    speedRpm: null,
    ringRunoutMm: inches(0.012),
    peakOverNew: null,
    rippleOverNew: null,
  },
  heat: {
    share: 0.5,
    torqueNm: us(220, 'torque'),
    slipRpm: 1000,
    slipTimeS: 0.6,
    conductivityWPerMK: us(30, 'conductivity'),
    densityKgPerM3: us(0.284, 'density'),
    specificHeatJPerKgK: us(0.116, 'specific-heat'),
    startTemperatureC: us(200, 'temperature'),
  },
};

/** What it set later, once covers faced thin had come back with the same heat marks. Invented, like all of it. */
export const demoCriteriaNow: ShopCriteria = {
  ...demoCriteria,
  bending: { ...demoCriteria.bending!, peakOverNew: 1.06, rippleOverNew: 1.25 },
};
