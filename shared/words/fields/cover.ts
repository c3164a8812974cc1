import type { CoverShape } from '../cover.ts';
import { COVER_LIMITS } from './criteria.ts';
import { FAMILY } from './family.ts';
import { allOptional, type Fields } from './field.ts';

/** The cover of one question, of whatever type. */
export const COVER_SHAPE = {
  studCount: { ...FAMILY.studCount, box: 'studs' },
  studCircleDiameterMm: FAMILY.studCircleDiameterMm,
  trackInnerDiameterMm: { ...FAMILY.trackInnerDiameterMm, kind: 'extent' },
  trackOuterDiameterMm: FAMILY.trackOuterDiameterMm,
  nominalWallMm: FAMILY.nominalWallMm,
  densityKgPerM3: {
    label: 'Density',
    box: null,
    kind: 'density',
    least: 0,
    open: true,
    // Heavier than any metal a cover is made of; water is 1000.
    most: 30_000,
    optional: true,
  },
} as const satisfies Fields<CoverShape>;

/** What bending needs of a cover that is of no type in the catalog. */
export const OWN_BENDING = {
  bossDiameterMm: FAMILY.bossDiameterMm,
  rimDiameterMm: FAMILY.rimDiameterMm,
  padDiameterMm: FAMILY.padDiameterMm,
  padThicknessMm: FAMILY.padThicknessMm,
  sideWallMm: { ...FAMILY.sideWallMm, box: 'sideWall' },
  pistonSealDiameterMm: FAMILY.pistonSealDiameterMm,
  hubDiameterMm: FAMILY.hubDiameterMm,
  lockUpPressureMPa: { ...FAMILY.lockUpPressureMPa, box: 'pressure' },
} as const;
/** Stands before the names of its boxes. */
export const OWN_BENDING_AT = 'bend.';

const { minimumWallMm, cleanUpAllowanceMm, faceRunoutLimitMm } = COVER_LIMITS;
/** The limits of one question, instead of the shop’s. */
export const QUICK_LIMITS = allOptional({ minimumWallMm, cleanUpAllowanceMm, faceRunoutLimitMm });
