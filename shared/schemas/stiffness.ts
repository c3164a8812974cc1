import type * as z from 'zod';
import type { StiffnessInput } from '../words/bending/stiffness.ts';
import { choice, count, extent, orNull, quantity, size, strict, yesNo } from './fields.ts';
import { confirmedPlaces } from './studParts.ts';

const above = (name: string, unit: string, most: number) =>
  quantity(name, unit, { least: 0, open: true, most });

const ring = strict('The ring', {
  innerDiameterMm: size('The inner diameter'),
  outerDiameterMm: size('The outer diameter'),
  thicknessMm: size('The thickness'),
  bonded: yesNo('Whether it is bonded'),
  joinedToPads: orNull(yesNo('Whether it is welded to the pads all around')),
});

/**
 * What the model of a bending cover takes. null and left out are the same. Whether the sizes make a cover together is
 * for the calculation to say.
 */
export const stiffnessSchema = strict('The request', {
  bossDiameterMm: size('The center diameter'),
  rimDiameterMm: size('The rim’s diameter'),
  trackInnerDiameterMm: size('The friction surface inner diameter'),
  trackOuterDiameterMm: size('The friction surface outer diameter'),
  studCircleDiameterMm: size('The bolt circle diameter'),
  padDiameterMm: size('The pad’s diameter'),
  padThicknessMm: extent('The pad’s thickness'),
  studCount: count('The number of studs', 2, 24),
  wallMm: size('The wall'),
  trackWallMm: size('The wall on the friction surface'),
  sideWallMm: size('The side wall'),
  pistonSealDiameterMm: size('The piston seal’s diameter'),
  hubDiameterMm: size('The hub’s diameter'),
  pressureMPa: above('The pressure', 'MPa', 100),
  liningModulusMPaPerMm: above('The lining’s modulus', 'MPa/mm', 1e6),
  piston: choice('The piston', ['rigid', 'conforming']),
  youngMPa: above('Young’s modulus', 'MPa', 1e7),
  poisson: quantity('Poisson’s ratio', '', { least: 0, most: 0.4999 }),
  speedRpm: orNull(above('The speed', 'rpm', 20_000)),
  yieldMPa: orNull(above('The yield', 'MPa', 10_000)),
  ring: orNull(ring),
  padInsetWalls: orNull(quantity('The inset of the pads', 'walls', { least: 0, most: 2 })),
  peakLimit: orNull(quantity('The limit on the pressure peak', '', { least: 1, most: 1000 })),
}) satisfies z.ZodType<StiffnessInput>;

/** What `POST /api/cover/stiffness` takes. */
export const stiffnessRequestSchema = strict('The request', {
  ...stiffnessSchema.shape,
  confirmed: confirmedPlaces,
});
