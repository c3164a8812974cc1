import type { BendingBase, BendingSettings } from '../../../shared/words/bending/bending.ts';
import type { Family } from '../../../shared/words/catalogue.ts';

/** What the model needs of a cover type that cover types need not say, each in the trade’s words. */
const OF_FAMILY = [
  ['bossDiameterMm', 'cover center diameter'],
  ['rimDiameterMm', 'rim diameter'],
  ['padDiameterMm', 'pad diameter'],
  ['padThicknessMm', 'pad thickness'],
  ['sideWallMm', 'side wall thickness'],
  ['pistonSealDiameterMm', 'piston seal diameter'],
  ['hubDiameterMm', 'impeller hub diameter'],
] as const;

export interface BendingBaseFound {
  /** null while something is missing. */
  readonly base: BendingBase | null;
  /** Of the cover type. */
  readonly missing: readonly string[];
  /** The shop has not said what lining and steel are. */
  readonly shopSilent: boolean;
}

/**
 * A cover type’s cover when new, as the bending model needs it, or what is missing. The flat off the friction surface keeps
 * the wall it had when new: facing cuts the friction surface alone. The cover type’s own pressure and yield win over
 * its steel’s, and the figures of its steel and its lining over the shop’s.
 *
 * Valid: facing of the friction surface alone.   Source: this program’s own model
 * Example: tests/calc/plate/bendingCases.test.ts
 */
export function bendingBase(family: Family, settings: BendingSettings | null): BendingBaseFound {
  const pressureMPa = family.lockUpPressureMPa ?? settings?.lockUpPressureMPa ?? null;
  const missing: string[] = OF_FAMILY.flatMap(([key, name]) => (family[key] == null ? [name] : []));
  if (pressureMPa === null) missing.push('lock-up pressure');
  const shopSilent = settings === null;
  if (missing.length > 0 || settings === null || pressureMPa === null) {
    return { base: null, missing, shopSilent };
  }
  const steel = family.steel?.steel;
  const { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm } = family;
  return {
    base: {
      bossDiameterMm: family.bossDiameterMm!,
      rimDiameterMm: family.rimDiameterMm!,
      trackInnerDiameterMm,
      trackOuterDiameterMm,
      studCircleDiameterMm,
      padDiameterMm: family.padDiameterMm!,
      padThicknessMm: family.padThicknessMm!,
      studCount,
      wallMm: family.nominalWallMm,
      sideWallMm: family.sideWallMm!,
      pistonSealDiameterMm: family.pistonSealDiameterMm!,
      hubDiameterMm: family.hubDiameterMm!,
      pressureMPa,
      liningModulusMPaPerMm: (family.lining?.lining ?? settings).liningModulusMPaPerMm,
      youngMPa: steel?.youngMPa ?? settings.youngMPa,
      poisson: steel?.poisson ?? settings.poisson,
      speedRpm: settings.speedRpm,
      yieldMPa: family.yieldMPa ?? steel?.yieldMPa ?? settings.yieldMPa,
    },
    missing,
    shopSilent,
  };
}
