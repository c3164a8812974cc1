import type { Family } from '../words/catalogue.ts';
import type { RingSize } from '../words/stiffness.ts';
import type { Refuse } from './studParts.ts';

/**
 * Bounds of this program's own, about the usual figures of steel, cast iron, aluminium, linings and lock-up clutches (from
 * memory). Generous on purpose: they are to catch GPa typed as MPa, and bar or psi typed as MPa.
 */
export const YOUNG_MPA = { least: 50_000, most: 250_000 };
export const POISSON = { least: 0.15, most: 0.4 };
export const LINING_MODULUS_MPA_PER_MM = { least: 5, most: 1000 };
export const LOCK_UP_PRESSURE_MPA = { least: 0.05, most: 3 };
export const YIELD_MPA = { least: 60, most: 2500 };

const BESIDE = {
  studCircleDiameterMm: 'the stud circle',
  trackInnerDiameterMm: 'the track’s inner diameter',
  trackOuterDiameterMm: 'the track’s outer diameter',
  nominalWallMm: 'the wall when new',
} as const;

type Row<Length> = readonly [Length, what: string, beside: keyof typeof BESIDE, least: number, most: number];

/**
 * The least and most share a length is of another one of its cover: this program's own, common practice, no source. So
 * that 25.4 times the usual, or 1/25.4 of it, is outside.
 */
const OF_FAMILY = [
  ['trackOuterDiameterMm', 'The track’s outer diameter', 'studCircleDiameterMm', 0.2, 3],
  ['trackInnerDiameterMm', 'The track’s inner diameter', 'trackOuterDiameterMm', 0.2, 1],
  ['nominalWallMm', 'The wall when new', 'studCircleDiameterMm', 0.005, 0.1],
  ['bossDiameterMm', 'The boss’s diameter', 'trackInnerDiameterMm', 0.05, 1],
  ['rimDiameterMm', 'The rim’s diameter', 'trackOuterDiameterMm', 1, 3],
  ['padDiameterMm', 'The pads’ diameter', 'studCircleDiameterMm', 0.02, 0.5],
  ['padThicknessMm', 'The pads’ thickness', 'nominalWallMm', 0.15, 8],
  ['sideWallMm', 'The side wall’s thickness', 'nominalWallMm', 0.2, 5],
  ['pistonSealDiameterMm', 'The piston seal’s diameter', 'trackInnerDiameterMm', 0.05, 1],
  ['hubDiameterMm', 'The hub’s diameter', 'trackOuterDiameterMm', 0.05, 1],
] as const satisfies readonly Row<keyof Family>[];

const OF_RING = [
  ['innerDiameterMm', 'The ring’s inner diameter', 'trackOuterDiameterMm', 0.05, 3],
  ['outerDiameterMm', 'The ring’s outer diameter', 'trackOuterDiameterMm', 0.05, 3],
  ['thicknessMm', 'The ring’s thickness', 'nominalWallMm', 0.15, 8],
] as const satisfies readonly Row<keyof RingSize>[];

/** Refuses lengths of a family that cannot be right beside its others; empty ones are skipped. */
export function refuseUnbelievable(family: Family, refuse: Refuse): void {
  const hold = (
    path: string[],
    mm: number | null | undefined,
    [, what, beside, ...shares]: Row<string>,
  ): void => {
    if (mm == null) return;
    const besideMm = family[beside];
    // Compared with the limit as printed, so that the sentence is never wrong by rounding.
    const [least, most] = shares.map((share) => Number((share * besideMm).toPrecision(3)));
    if (mm >= least! && mm <= most!) return;
    refuse(
      path,
      `${what} is ${mm} mm; beside ${BESIDE[beside]}, ${besideMm} mm, it must be at least ${least} mm and at most ${most} mm. Check both and their units.`,
    );
  };
  for (const row of OF_FAMILY) hold([row[0]], family[row[0]], row);
  for (const row of OF_RING) hold(['ring', row[0]], family.ring?.[row[0]], row);
}
