import type { Family } from '../../../shared/words/catalogue.ts';
import type { JointFrom } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Joint, type Stack, SURFACE_CLASSES, type SurfaceClass } from '../../../shared/words/stud.ts';
import type { FigureChoices, StudRing, TorqueUnit } from '../../../views/pages/stud/jointFields.tsx';
import {
  FRICTIONS,
  type NamedFigure,
  NUT_FACTORS,
  SCATTERS,
  SURFACES,
} from '../../calc/stud/joint/jointFigures.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

const OWN = 'own';
const DEFAULT_SCATTER = 'wrench';
const DEFAULT_FRICTION = 'clean';
const DEFAULT_SURFACE: SurfaceClass = 'rz-10-to-40';
const DEFAULT_SERVICE_FACTOR = 2;

/** What the fields of the joint can be chosen from; whatever is chosen is shown with its source. */
export const FIGURES: FigureChoices = {
  nutFactors: NUT_FACTORS,
  scatters: SCATTERS,
  frictions: FRICTIONS,
  surfaces: SURFACES,
  scatter: DEFAULT_SCATTER,
  friction: DEFAULT_FRICTION,
  surface: DEFAULT_SURFACE,
  serviceFactor: DEFAULT_SERVICE_FACTOR,
};

/** A bare torque is in what the address says, else in what goes with this person's lengths. */
export function torqueUnitOf(fields: Fields, unit: LengthUnit): TorqueUnit {
  const said = fields.torqueUnit;
  return said === 'N·m' || said === 'lb-ft' ? said : unit === 'in' ? 'lb-ft' : 'N·m';
}

/** The cover's own, where one is known, else what the stack's holes say. */
export function studRing(family: Family | null, stack: Stack | null): StudRing {
  return family
    ? { count: family.studCount, circleMm: family.studCircleDiameterMm, of: 'cover' }
    : { count: stack?.holeCount ?? null, circleMm: stack?.holeCircleDiameterMm ?? null, of: 'stack' };
}

/** The joint as typed; null when nothing of it was, or when it cannot be used, with the sentences in the form. */
export function readJoint(form: TypedForm, ring: StudRing, unit: LengthUnit): Joint | null {
  if (!form.has('torque') && !form.has('engine')) return null;
  const before = form.faults.length;
  const bare = torqueUnitOf(form.fields, unit);
  const needed = <T>(name: string, label: string, value: T | null): T | null =>
    form.has(name) ? value : form.needed(value, name, label);
  const torqueNm = needed('torque', 'Tightening torque', form.torque('torque', 'Tightening torque', bare));
  const engineTorqueNm = needed('engine', 'Engine torque', form.torque('engine', 'Engine torque', bare));
  const nutFactor = figure(form, 'kFrom', 'k', 'Nut factor', NUT_FACTORS, null);
  const scatter = figure(form, 'scatterFrom', 'scatter', 'Spread of the preload', SCATTERS, DEFAULT_SCATTER);
  const friction = figure(form, 'muFrom', 'mu', 'Friction', FRICTIONS, DEFAULT_FRICTION);
  const serviceFactor = form.number('service', 'Service factor') ?? DEFAULT_SERVICE_FACTOR;
  const studCount = form.count('jointStuds', 'Number of studs') ?? ring.count;
  const circleMm = form.length('jointCircle', 'Stud circle') ?? ring.circleMm;
  const ofStack = (['count', 'circle'] as const).filter(
    (one) => ring.of === 'stack' && !form.has(one === 'count' ? 'jointStuds' : 'jointCircle'),
  );
  needed('jointStuds', 'Number of studs', studCount);
  needed('jointCircle', 'Stud circle', circleMm);
  const prevailingNm = form.torque('prevTorque', 'Torque that only turns the nut', bare);
  if (
    form.faults.length > before ||
    torqueNm === null ||
    engineTorqueNm === null ||
    nutFactor === null ||
    scatter === null ||
    friction === null ||
    studCount === null ||
    circleMm === null
  )
    return null;
  return {
    torqueNm,
    nutFactor,
    scatter,
    friction,
    engineTorqueNm,
    serviceFactor,
    studCount,
    studCircleDiameterMm: circleMm,
    youngMPa: null,
    prevailingNm,
    surface: form.choice('surface', SURFACE_CLASSES) ?? DEFAULT_SURFACE,
    studsUsedBefore: form.text('usedBefore') === '1',
    retightened: form.text('retightened') === '1',
    ...(ofStack.length > 0 && { ofStack }),
  };
}

/** One of the figures with a source, or the person's own. */
function figure(
  form: TypedForm,
  from: string,
  own: string,
  label: string,
  known: readonly NamedFigure[],
  otherwise: string | null,
): number | null {
  const chosen = form.text(from) || otherwise;
  if (chosen === OWN) {
    const value = from === 'scatterFrom' ? form.share(own, label) : form.number(own, label);
    return form.has(own) ? value : form.needed(value, own, label);
  }
  const value = known.find(({ id }) => id === chosen)?.value ?? null;
  if (value === null) form.fault(from, `${label} is not chosen. Choose what the nut and stud are like.`);
  return value;
}

/** Whose torque it is, as chosen on the form. */
export function torqueFromOf(form: TypedForm): JointFrom['torque'] {
  return form.choice('torqueFrom', ['maker', 'other'] as const);
}

/** A joint that was kept, as its form would have it typed. */
export function jointAsTyped(
  joint: Joint,
  torque: JointFrom['torque'],
  length: (mm: number) => string,
  number: (value: number) => string,
): Record<string, string> {
  const figure = (from: string, own: string, known: readonly NamedFigure[], value: number) => {
    const one = known.find((candidate) => candidate.value === value);
    const typed = own === 'scatter' ? value * 100 : value;
    return one ? { [from]: one.id } : { [from]: OWN, [own]: number(typed) };
  };
  const Nm = (value: number) => `${number(Number(value.toPrecision(12)))} N·m`;
  return {
    torque: Nm(joint.torqueNm),
    engine: Nm(joint.engineTorqueNm),
    service: number(joint.serviceFactor),
    torqueFrom: torque ?? '',
    ...figure('kFrom', 'k', NUT_FACTORS, joint.nutFactor),
    ...figure('scatterFrom', 'scatter', SCATTERS, joint.scatter),
    ...figure('muFrom', 'mu', FRICTIONS, joint.friction),
    surface: joint.surface ?? DEFAULT_SURFACE,
    jointStuds: String(joint.studCount),
    jointCircle: length(joint.studCircleDiameterMm),
    ...(joint.prevailingNm == null ? {} : { prevTorque: Nm(joint.prevailingNm) }),
    ...(joint.studsUsedBefore ? { usedBefore: '1' } : {}),
    ...(joint.retightened ? { retightened: '1' } : {}),
  };
}

const STUD_PAGE_FIELDS: Readonly<Record<string, string>> = {
  pullForwardMm: 'pull',
  'joint.torqueNm': 'torque',
  'joint.nutFactor': 'k',
  'joint.scatter': 'scatter',
  'joint.friction': 'mu',
  'joint.engineTorqueNm': 'engine',
  'joint.serviceFactor': 'service',
  'joint.studCount': 'jointStuds',
  'joint.studCircleDiameterMm': 'jointCircle',
  'joint.prevailingNm': 'prevTorque',
};

/** What the calculation refused of the joint, beside the field it was typed in. */
export function onJointField({ path, message }: Fault): Fault {
  return { path: jointField(path), message };
}

/** The form's field for a path of the calculation. */
export function jointField(path: string): string {
  return STUD_PAGE_FIELDS[path] ?? path;
}
