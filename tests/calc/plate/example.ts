import type { StiffnessInput } from '../../../shared/words/stiffness.ts';

/** The cover of check values 10.1. */
export const COVER: StiffnessInput = {
  bossDiameterMm: 90,
  rimDiameterMm: 300,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  studCircleDiameterMm: 286,
  padDiameterMm: 24,
  padThicknessMm: 10,
  studCount: 4,
  wallMm: 5,
  trackWallMm: 5,
  sideWallMm: 4,
  pistonSealDiameterMm: 80,
  hubDiameterMm: 48,
  pressureMPa: 0.7,
  liningModulusMPaPerMm: 60,
  piston: 'rigid',
  youngMPa: 206_000,
  poisson: 0.29,
  speedRpm: null,
  yieldMPa: null,
  ring: null,
  peakLimit: null,
};
