import type { StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import { briefLength, type LengthUnit } from '../../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';
import { padPatch } from './padPatch.ts';

const LONGEST_MM = 10_000;
/** A wall this share of the flat's width bends like a block, and no plate theory holds. */
const THICKEST = 0.5;
/** Of the rim's diameter; what is narrower is lost between the lines of the mesh. */
const NARROWEST = 0.004;

/** Of a pad’s stiff part; a root gives way by half a wall. */
const MOST_INSET_WALLS = 2;

/** What must be above zero, what it is called, its unit and the most that is sensible. */
const SIZES = [
  ['bossDiameterMm', 'center diameter', 'mm', LONGEST_MM],
  ['rimDiameterMm', 'rim diameter', 'mm', LONGEST_MM],
  ['trackInnerDiameterMm', 'friction surface inner diameter', 'mm', LONGEST_MM],
  ['trackOuterDiameterMm', 'friction surface outer diameter', 'mm', LONGEST_MM],
  ['studCircleDiameterMm', 'bolt circle', 'mm', LONGEST_MM],
  ['padDiameterMm', 'pad diameter', 'mm', LONGEST_MM],
  ['wallMm', 'wall', 'mm', LONGEST_MM],
  ['trackWallMm', 'wall on the friction surface', 'mm', LONGEST_MM],
  ['sideWallMm', 'side wall', 'mm', LONGEST_MM],
  ['pistonSealDiameterMm', 'piston seal diameter', 'mm', LONGEST_MM],
  ['hubDiameterMm', 'impeller hub diameter', 'mm', LONGEST_MM],
  ['pressureMPa', 'pressure', 'MPa', 100],
  ['liningModulusMPaPerMm', 'lining stiffness', 'MPa/mm', 1e6],
  ['youngMPa', 'Young’s modulus', 'MPa', 1e7],
] as const;

/** What may be left out, and if given is above zero. */
const OPTIONAL = [
  ['speedRpm', 'speed', 'rpm', 20_000],
  ['yieldMPa', 'yield strength', 'MPa', 10_000],
  ['peakLimit', 'limit on the pressure peak', 'times the mean', 1000],
] as const;

type Refuse = (path: string, message: string) => void;

/** Throws: a Refusal that names, in the reader's unit, every field that makes no cover. Repairs nothing. */
export function refuseCover(input: StiffnessInput, unit: LengthUnit = 'mm'): void {
  const faults: Fault[] = [];
  const refuse: Refuse = (path, message) => faults.push({ path, message });
  beyondSizes(input, unit, refuse);
  if (faults.length === 0) {
    outOfOrder(input, unit, refuse);
    ringOutOfPlace(input, unit, refuse);
  }
  if (faults.length === 0) {
    padsOutOfPlace(input, unit, refuse);
    noPlate(input, unit, refuse);
  }
  if (faults.length > 0) throw new Refusal('cover-geometry', faults);
}

/** Each size by itself. */
function beyondSizes(input: StiffnessInput, unit: LengthUnit, refuse: Refuse): void {
  const above = (path: string, name: string, value: number, of: string, most: number) => {
    if (Number.isFinite(value) && value > 0 && value <= most) return;
    const print = (one: number) => (of === 'mm' ? briefLength(one, unit) : `${one} ${of}`);
    refuse(path, `The ${name} is ${print(value)}; it must be more than 0 and at most ${print(most)}.`);
  };
  for (const [path, name, of, most] of SIZES) above(path, name, input[path], of, most);
  for (const [path, name, of, most] of OPTIONAL) {
    const value = input[path];
    if (value !== null) above(path, name, value, of, most);
  }
  const { padThicknessMm, poisson, studCount, padInsetWalls, ring } = input;
  if (padInsetWalls !== null && !(padInsetWalls >= 0 && padInsetWalls <= MOST_INSET_WALLS)) {
    refuse(
      'padInsetWalls',
      `The pad inset is ${padInsetWalls} walls; it must be at least 0 and at most ${MOST_INSET_WALLS}.`,
    );
  }
  if (!(padThicknessMm >= 0 && padThicknessMm <= LONGEST_MM)) {
    refuse(
      'padThicknessMm',
      `The pad thickness is ${briefLength(padThicknessMm, unit)}; it must be at least 0.`,
    );
  }
  if (!(poisson >= 0 && poisson < 0.5)) {
    refuse('poisson', `Poisson’s ratio is ${poisson}; it must be at least 0 and less than 0.5.`);
  }
  if (!Number.isInteger(studCount) || studCount < 2 || studCount > 24) {
    refuse('studCount', `The number of studs is ${studCount}; it must be a whole number from 2 to 24.`);
  }
  if (!ring) return;
  above('ring.innerDiameterMm', 'ring inner diameter', ring.innerDiameterMm, 'mm', LONGEST_MM);
  above('ring.outerDiameterMm', 'ring outer diameter', ring.outerDiameterMm, 'mm', LONGEST_MM);
  above('ring.thicknessMm', 'ring thickness', ring.thicknessMm, 'mm', LONGEST_MM);
}

type Length = Exclude<
  { [K in keyof StiffnessInput]: StiffnessInput[K] extends number ? K : never }[keyof StiffnessInput],
  undefined
>;

const nameOf = (path: Length) => SIZES.find(([one]) => one === path)![1];

/** Diameters that must rise from the center to the rim. */
function outOfOrder(input: StiffnessInput, unit: LengthUnit, refuse: Refuse): void {
  const below = (path: Length, limit: Length, orEqual = false) => {
    const [value, most] = [input[path], input[limit]];
    if (value < most || (orEqual && value === most)) return;
    refuse(
      path,
      `The ${nameOf(path)} is ${briefLength(value, unit)}; it must be ${orEqual ? 'at most' : 'less than'} the ${nameOf(limit)}, ${briefLength(most, unit)}.`,
    );
  };
  below('trackInnerDiameterMm', 'trackOuterDiameterMm');
  below('trackOuterDiameterMm', 'rimDiameterMm', true);
  below('bossDiameterMm', 'trackInnerDiameterMm', true);
  below('pistonSealDiameterMm', 'trackInnerDiameterMm', true);
  below('hubDiameterMm', 'rimDiameterMm');
}

function ringOutOfPlace(
  { bossDiameterMm, rimDiameterMm, ring }: StiffnessInput,
  unit: LengthUnit,
  refuse: Refuse,
): void {
  if (!ring) return;
  const { innerDiameterMm, outerDiameterMm } = ring;
  const told = (name: string, mm: number, must: string, limitMm: number) =>
    `The ring ${name} diameter is ${briefLength(mm, unit)}; it must be ${must}, ${briefLength(limitMm, unit)}.`;
  if (innerDiameterMm >= outerDiameterMm) {
    refuse(
      'ring.innerDiameterMm',
      told('inner', innerDiameterMm, 'less than its outer diameter', outerDiameterMm),
    );
  }
  if (outerDiameterMm > rimDiameterMm) {
    refuse('ring.outerDiameterMm', told('outer', outerDiameterMm, 'at most the rim diameter', rimDiameterMm));
  }
  if (innerDiameterMm < bossDiameterMm) {
    refuse(
      'ring.innerDiameterMm',
      told('inner', innerDiameterMm, 'at least the center diameter', bossDiameterMm),
    );
  }
}

function padsOutOfPlace(input: StiffnessInput, unit: LengthUnit, refuse: Refuse): void {
  const { bossDiameterMm, rimDiameterMm, studCircleDiameterMm, padDiameterMm, studCount } = input;
  const [pads, circle] = [briefLength(padDiameterMm, unit), briefLength(studCircleDiameterMm, unit)];
  const pad = padPatch(input);
  if (studCircleDiameterMm >= rimDiameterMm) {
    refuse(
      'studCircleDiameterMm',
      `The bolt circle is ${circle}; it must be less than the rim diameter, ${briefLength(rimDiameterMm, unit)}, so that the pads are on the flat.`,
    );
  } else if (pad.innerMm <= bossDiameterMm / 2) {
    refuse(
      'padDiameterMm',
      `Pads of ${pads} on a bolt circle of ${circle} reach into the center of ${briefLength(bossDiameterMm, unit)}. Check all three.`,
    );
  }
  if (pad.halfAngleRad >= (0.98 * Math.PI) / studCount) {
    refuse(
      'padDiameterMm',
      `${studCount} pads of ${pads} have no room between them on a bolt circle of ${circle}. Check all three.`,
    );
  }
}

/** Widths lost between the lines of the mesh, and walls that bend like a block. */
function noPlate(input: StiffnessInput, unit: LengthUnit, refuse: Refuse): void {
  const { trackInnerDiameterMm, trackOuterDiameterMm, rimDiameterMm, bossDiameterMm, ring } = input;
  const narrow = (path: string, what: string, mm: number) => {
    if (mm >= NARROWEST * rimDiameterMm) return;
    refuse(
      path,
      `${what} ${briefLength(mm, unit)}, too little on a rim of ${briefLength(rimDiameterMm, unit)}. Check both.`,
    );
  };
  narrow(
    'trackInnerDiameterMm',
    'The friction surface diameters differ by',
    trackOuterDiameterMm - trackInnerDiameterMm,
  );
  narrow('padDiameterMm', 'The pad diameter is', input.padDiameterMm);
  if (ring) {
    narrow(
      'ring.innerDiameterMm',
      'The ring diameters differ by',
      ring.outerDiameterMm - ring.innerDiameterMm,
    );
  }
  const flat = (rimDiameterMm - bossDiameterMm) / 2;
  for (const path of ['wallMm', 'trackWallMm'] as const) {
    if (input[path] <= THICKEST * flat) continue;
    refuse(
      path,
      `The ${nameOf(path)} is ${briefLength(input[path], unit)}, and the flat from center to rim only ${briefLength(flat, unit)} wide. That is no plate. Check all three.`,
    );
  }
}
