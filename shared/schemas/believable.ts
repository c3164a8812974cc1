import type { RingSize } from '../words/bending/stiffness.ts';
import type { Family } from '../words/catalogue.ts';
import { FAMILY, RING } from '../words/fields/family.ts';
import { lowerFirst, subjectOf } from '../words/fields/field.ts';
import type { Refuse } from './studParts.ts';

type Beside = 'studCircleDiameterMm' | 'trackInnerDiameterMm' | 'trackOuterDiameterMm' | 'nominalWallMm';
type Row<Length> = readonly [Length, beside: Beside, least: number, most: number];

/**
 * The least and most share a length is of another one of its cover: this program's own, common practice, no source. So
 * that 25.4 times the usual, or 1/25.4 of it, is outside.
 */
const OF_FAMILY = [
  ['trackOuterDiameterMm', 'studCircleDiameterMm', 0.2, 3],
  ['trackInnerDiameterMm', 'trackOuterDiameterMm', 0.2, 1],
  ['nominalWallMm', 'studCircleDiameterMm', 0.005, 0.1],
  ['bossDiameterMm', 'trackInnerDiameterMm', 0.05, 1],
  ['rimDiameterMm', 'trackOuterDiameterMm', 1, 3],
  ['padDiameterMm', 'studCircleDiameterMm', 0.02, 0.5],
  ['padThicknessMm', 'nominalWallMm', 0.15, 8],
  ['sideWallMm', 'nominalWallMm', 0.2, 5],
  ['pistonSealDiameterMm', 'trackInnerDiameterMm', 0.05, 1],
  ['hubDiameterMm', 'trackOuterDiameterMm', 0.05, 1],
] as const satisfies readonly Row<keyof Family>[];

const OF_RING = [
  ['innerDiameterMm', 'trackOuterDiameterMm', 0.05, 3],
  ['outerDiameterMm', 'trackOuterDiameterMm', 0.05, 3],
  ['thicknessMm', 'nominalWallMm', 0.15, 8],
] as const satisfies readonly Row<keyof RingSize>[];

/** Refuses lengths of a cover type that cannot be right beside its others; empty ones are skipped. */
export function refuseUnbelievable(family: Family, refuse: Refuse): void {
  const hold = (
    path: string[],
    field: { readonly label: string },
    mm: number | null | undefined,
    [, beside, ...shares]: Row<string>,
  ): void => {
    if (mm == null) return;
    const besideMm = family[beside];
    // Compared with the limit as printed, so that the sentence is never wrong by rounding.
    const [least, most] = shares.map((share) => Number((share * besideMm).toPrecision(3)));
    if (mm >= least! && mm <= most!) return;
    refuse(
      path,
      `${subjectOf(field)} is ${mm} mm; with a ${lowerFirst(FAMILY[beside].label)} of ${besideMm} mm it must be at least ${least} mm and at most ${most} mm. Check both and their units.`,
    );
  };
  for (const row of OF_FAMILY) hold([row[0]], FAMILY[row[0]], family[row[0]], row);
  for (const row of OF_RING) hold(['ring', row[0]], RING[row[0]], family.ring?.[row[0]], row);
}
