import { demoCriteriaNow } from '../../data/demo/criteria.ts';
import { demoFamilies } from '../../data/demo/families.ts';
import type { Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import { addEntry } from '../../src/records/catalogue.ts';
import type { Db } from '../../src/records/database/database.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';

/** A cover type of the tests' own with round millimeters, for tests that type millimeters. */
const METRIC_4: Family = {
  ...demoFamilies[0]!.family,
  name: 'Metric, four studs',
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  bossDiameterMm: 90,
  rimDiameterMm: 300,
  padDiameterMm: 24,
  padThicknessMm: 10,
  sideWallMm: 4,
  pistonSealDiameterMm: 64,
  hubDiameterMm: 48,
  lockUpPressureMPa: 0.7,
  yieldMPa: 320,
  shopMinimumWallMm: 4.3,
};

/** Limits of the tests' own with round millimeters. */
const METRIC_LIMITS: ShopCriteria = {
  ...demoCriteriaNow,
  lengthUnit: 'mm',
  cleanUpAllowanceMm: 0.05,
  faceRunoutLimitMm: 0.1,
  typicalCutMm: 0.25,
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
};

/** Adds that cover type to a shop as metric-4, and sets those limits. */
export async function goMetric(db: Db): Promise<void> {
  const ctx = { who: 'AA', why: 'for the tests', now: () => new Date('2026-11-24T06:00:00Z') };
  const { revision } = await currentCriteria(db);
  await saveCriteria(db, ctx, { fromRevision: revision, body: METRIC_LIMITS });
  await addEntry(db, ctx, { kind: 'family', id: 'metric-4', body: METRIC_4 });
}
