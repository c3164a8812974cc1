import type { HeatInput } from '../../../shared/words/bending/heat.ts';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { COVER_SHAPE, OWN_BENDING } from '../../../shared/words/fields/cover.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import type { AnyField } from '../../../shared/words/fields/field.ts';
import type { DoubtedFigure } from '../../../shared/words/finding.ts';
import { FAMILY_EXPECTED, OWN_BENDING_EXPECTED, SHAPE_EXPECTED } from './coverExpected.ts';
import type { ExpectedWhole } from './expectedFigures.ts';
import { figuresDoubted } from './figuresDoubted.ts';
import { CRITERIA_EXPECTED } from './limitsExpected.ts';

/** Ratios, and a flux that goes over decades from one clutch to another: of these nothing is expected. */
type Free = 'padInsetWalls' | 'peakLimit' | 'fluxWPerM2' | 'pressurePeak';

/** A field for each other figure of a question: the compiler names one that is forgotten. */
type FieldsOf<Input> = {
  readonly [Key in Exclude<keyof Input, Free> as NonNullable<Input[Key]> extends number
    ? Key
    : never]: AnyField;
} & { readonly ring?: AnyField };

const { lockUpPressureMPa, ...flat } = OWN_BENDING;
const { nominalWallMm, densityKgPerM3: _none, ...face } = COVER_SHAPE;
const { liningModulusMPaPerMm, youngMPa, poisson, speedRpm, yieldMPa } = CRITERIA.bending.fields;

const STIFFNESS = {
  ...flat,
  ...face,
  pressureMPa: lockUpPressureMPa,
  wallMm: nominalWallMm,
  trackWallMm: nominalWallMm,
  liningModulusMPaPerMm,
  youngMPa,
  poisson,
  speedRpm,
  yieldMPa,
  ring: FAMILY.ring,
} as const satisfies FieldsOf<StiffnessInput>;

const ofShop = CRITERIA_EXPECTED.bending;
const WALL = { least: 1.5, most: 14 };

const STIFFNESS_EXPECTED: ExpectedWhole<typeof STIFFNESS> = {
  ...OWN_BENDING_EXPECTED,
  ...SHAPE_EXPECTED,
  pressureMPa: OWN_BENDING_EXPECTED.lockUpPressureMPa,
  wallMm: WALL,
  trackWallMm: WALL,
  liningModulusMPaPerMm: ofShop.liningModulusMPaPerMm,
  youngMPa: ofShop.youngMPa,
  poisson: ofShop.poisson,
  speedRpm: ofShop.speedRpm,
  yieldMPa: ofShop.yieldMPa,
  ring: FAMILY_EXPECTED.ring,
};

const { slipTimeS, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK, startTemperatureC } =
  CRITERIA.heat.fields;

const HEAT = {
  slipTimeS,
  conductivityWPerMK,
  densityKgPerM3,
  specificHeatJPerKgK,
  startTemperatureC,
  thicknessMm: nominalWallMm,
} as const satisfies FieldsOf<HeatInput>;

const HEAT_EXPECTED: ExpectedWhole<typeof HEAT> = { ...CRITERIA_EXPECTED.heat, thicknessMm: WALL };

/** What of a bending cover was sent and looks like a slip, but for what `confirmed` names. */
export function stiffnessDoubted(
  input: StiffnessInput,
  confirmed: readonly string[],
): readonly DoubtedFigure[] {
  return figuresDoubted(STIFFNESS, input, STIFFNESS_EXPECTED, '').filter(
    ({ path }) => !confirmed.includes(path),
  );
}

/** The same of one engagement and the slab it heats. */
export function heatDoubted(input: HeatInput, confirmed: readonly string[]): readonly DoubtedFigure[] {
  return figuresDoubted(HEAT, input, HEAT_EXPECTED, '').filter(({ path }) => !confirmed.includes(path));
}
