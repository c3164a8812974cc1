import type { StiffnessInput } from '../../shared/words/bending/stiffness.ts';

/** The cover that an independent second implementation (not published) was run on, its pads as drawn. */
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
  padInsetWalls: 0,
  peakLimit: null,
};

/**
 * What an independent second implementation (not published) finds for it, on converged meshes; agreement wanted 1 % on
 * the peak, 2 % on the ripple, 0.4 % on the boss.
 */
export const CHECKED = [
  { piston: 'rigid', trackWallMm: 5, speedRpm: null, peak: 4.039, rippleUm: 11.86, bossMm: 0.7884 },
  { piston: 'rigid', trackWallMm: 4, speedRpm: null, peak: 4.203, rippleUm: 15.54, bossMm: 0.7878 },
  { piston: 'conforming', trackWallMm: 5, speedRpm: null, peak: 1.2795, rippleUm: 10.97, bossMm: 1.0305 },
  { piston: 'conforming', trackWallMm: 4, speedRpm: null, peak: 1.385, rippleUm: 14.16, bossMm: 1.0519 },
  { piston: 'conforming', trackWallMm: 5, speedRpm: 2500, peak: 1.387, rippleUm: 15.18, bossMm: 1.4819 },
] as const;
