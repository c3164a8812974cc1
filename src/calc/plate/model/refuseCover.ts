import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';
import type { StiffnessInput } from '../../../../shared/words/stiffness.ts';
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
  ['bossDiameterMm', 'The boss’s diameter', 'mm', LONGEST_MM],
  ['rimDiameterMm', 'The rim’s diameter', 'mm', LONGEST_MM],
  ['trackInnerDiameterMm', 'The track’s inner diameter', 'mm', LONGEST_MM],
  ['trackOuterDiameterMm', 'The track’s outer diameter', 'mm', LONGEST_MM],
  ['studCircleDiameterMm', 'The stud circle’s diameter', 'mm', LONGEST_MM],
  ['padDiameterMm', 'The pad’s diameter', 'mm', LONGEST_MM],
  ['wallMm', 'The wall', 'mm', LONGEST_MM],
  ['trackWallMm', 'The wall on the track', 'mm', LONGEST_MM],
  ['sideWallMm', 'The side wall', 'mm', LONGEST_MM],
  ['pistonSealDiameterMm', 'The piston seal’s diameter', 'mm', LONGEST_MM],
  ['hubDiameterMm', 'The hub’s diameter', 'mm', LONGEST_MM],
  ['pressureMPa', 'The pressure', 'MPa', 100],
  ['liningModulusMPaPerMm', 'The lining’s modulus', 'MPa/mm', 1e6],
  ['youngMPa', 'Young’s modulus', 'MPa', 1e7],
] as const;

/** What may be left out, and if given is above zero. */
const OPTIONAL = [
  ['speedRpm', 'The speed', 'rpm', 20_000],
  ['yieldMPa', 'The yield', 'MPa', 10_000],
  ['peakLimit', 'The limit on the pressure peak', 'times the mean', 1000],
] as const;

/** Throws: a Refusal that names every field that makes no cover. Repairs nothing. */
export function refuseCover(input: StiffnessInput): void {
  const faults: Fault[] = [];
  const refuse = (path: string, message: string) => faults.push({ path, message });
  const above = (path: string, name: string, value: number, unit: string, most: number) => {
    if (Number.isFinite(value) && value > 0 && value <= most) return;
    refuse(path, `${name} is ${value} ${unit}; it must be more than 0 and at most ${most} ${unit}.`);
  };
  for (const [path, name, unit, most] of SIZES) above(path, name, input[path], unit, most);
  for (const [path, name, unit, most] of OPTIONAL) {
    const value = input[path];
    if (value !== null) above(path, name, value, unit, most);
  }
  const { padThicknessMm, poisson, studCount, padInsetWalls, ring } = input;
  if (padInsetWalls !== null && !(padInsetWalls >= 0 && padInsetWalls <= MOST_INSET_WALLS)) {
    refuse(
      'padInsetWalls',
      `The inset of the pads is ${padInsetWalls} walls; it must be at least 0 and at most ${MOST_INSET_WALLS}.`,
    );
  }
  if (!(padThicknessMm >= 0 && padThicknessMm <= LONGEST_MM)) {
    refuse('padThicknessMm', `The pad’s thickness is ${padThicknessMm} mm; it must be at least 0 mm.`);
  }
  if (!(poisson >= 0 && poisson < 0.5)) {
    refuse('poisson', `Poisson’s ratio is ${poisson}; it must be at least 0 and less than 0.5.`);
  }
  if (!Number.isInteger(studCount) || studCount < 2 || studCount > 24) {
    refuse('studCount', `The number of studs is ${studCount}; it must be a whole number from 2 to 24.`);
  }
  if (ring) {
    above('ring.innerDiameterMm', 'The ring’s inner diameter', ring.innerDiameterMm, 'mm', LONGEST_MM);
    above('ring.outerDiameterMm', 'The ring’s outer diameter', ring.outerDiameterMm, 'mm', LONGEST_MM);
    above('ring.thicknessMm', 'The ring’s thickness', ring.thicknessMm, 'mm', LONGEST_MM);
  }
  if (faults.length === 0) faults.push(...misplaced(input));
  if (faults.length > 0) throw new Refusal('cover-geometry', faults);
}

type Length = Exclude<
  { [K in keyof StiffnessInput]: StiffnessInput[K] extends number ? K : never }[keyof StiffnessInput],
  undefined
>;

/** Sizes that are sensible alone and not together. */
function misplaced(input: StiffnessInput): Fault[] {
  const faults: Fault[] = [];
  const refuse = (path: string, message: string) => faults.push({ path, message });
  const name = (path: Length) => SIZES.find(([one]) => one === path)![1];
  const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
  const below = (path: Length, limit: Length, orEqual = false) => {
    const [value, most] = [input[path], input[limit]];
    if (value < most || (orEqual && value === most)) return;
    refuse(
      path,
      `${name(path)} is ${value} mm; it must be ${orEqual ? 'at most' : 'less than'} ${lower(name(limit))}, ${most} mm.`,
    );
  };
  below('trackInnerDiameterMm', 'trackOuterDiameterMm');
  below('trackOuterDiameterMm', 'rimDiameterMm', true);
  below('bossDiameterMm', 'trackInnerDiameterMm', true);
  below('pistonSealDiameterMm', 'trackInnerDiameterMm', true);
  below('hubDiameterMm', 'rimDiameterMm');

  const { bossDiameterMm, rimDiameterMm, studCircleDiameterMm, padDiameterMm, studCount, ring } = input;
  if (ring) {
    const { innerDiameterMm, outerDiameterMm } = ring;
    if (innerDiameterMm >= outerDiameterMm) {
      refuse(
        'ring.innerDiameterMm',
        `The ring’s inner diameter is ${innerDiameterMm} mm; it must be less than its outer diameter, ${outerDiameterMm} mm.`,
      );
    }
    if (outerDiameterMm > rimDiameterMm) {
      refuse(
        'ring.outerDiameterMm',
        `The ring’s outer diameter is ${outerDiameterMm} mm; it must be at most the rim’s diameter, ${rimDiameterMm} mm.`,
      );
    }
    if (innerDiameterMm < bossDiameterMm) {
      refuse(
        'ring.innerDiameterMm',
        `The ring’s inner diameter is ${innerDiameterMm} mm; it must be at least the boss’s diameter, ${bossDiameterMm} mm.`,
      );
    }
  }
  if (faults.length === 0) {
    const pad = padPatch(input);
    if (studCircleDiameterMm >= rimDiameterMm) {
      refuse(
        'studCircleDiameterMm',
        `The stud circle’s diameter is ${studCircleDiameterMm} mm; it must be less than the rim’s diameter, ${rimDiameterMm} mm, for the pads to stand on the flat.`,
      );
    } else if (pad.innerMm <= bossDiameterMm / 2) {
      refuse(
        'padDiameterMm',
        `A pad of ${padDiameterMm} mm on a stud circle of ${studCircleDiameterMm} mm reaches into the boss of ${bossDiameterMm} mm; check the three.`,
      );
    }
    if (pad.halfAngleRad >= (0.98 * Math.PI) / studCount) {
      refuse(
        'padDiameterMm',
        `${studCount} pads of ${padDiameterMm} mm have no room between them on a stud circle of ${studCircleDiameterMm} mm; check the three.`,
      );
    }
    const narrow = (path: string, what: string, mm: number) => {
      if (mm >= NARROWEST * rimDiameterMm) return;
      refuse(
        path,
        `${what} ${Number(mm.toFixed(6))} mm, too little on a rim of ${rimDiameterMm} mm; check both.`,
      );
    };
    const { trackInnerDiameterMm, trackOuterDiameterMm } = input;
    narrow(
      'trackInnerDiameterMm',
      'The track’s diameters differ by',
      trackOuterDiameterMm - trackInnerDiameterMm,
    );
    narrow('padDiameterMm', 'The pad’s diameter is', padDiameterMm);
    if (ring)
      narrow(
        'ring.innerDiameterMm',
        'The ring’s diameters differ by',
        ring.outerDiameterMm - ring.innerDiameterMm,
      );
    const flat = (rimDiameterMm - bossDiameterMm) / 2;
    for (const path of ['wallMm', 'trackWallMm'] as const) {
      if (input[path] <= THICKEST * flat) continue;
      refuse(
        path,
        `${name(path)} is ${input[path]} mm, and the flat from boss to rim only ${flat} mm wide; that is no plate. Check the three.`,
      );
    }
  }
  return faults;
}
