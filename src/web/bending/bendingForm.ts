import {
  type FieldLine,
  lengthInWords,
  linesOf,
  type Telling,
  withTyped,
} from '../../../shared/quantity/fieldLines.ts';
import type { BendingSettings, HeatSettings } from '../../../shared/words/bending.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { JOINED_TO_PADS } from '../../../shared/words/fields/weld.ts';
import type { RingSize } from '../../../shared/words/stiffness.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

type Kind = 'length' | 'number' | 'pressure' | 'share' | 'torque';

interface Asked<Key extends string> {
  readonly key: Key;
  /** Of the field of the form. */
  readonly name: string;
  readonly label: string;
  readonly kind: Kind;
  readonly unit?: string;
  /** May be left empty where the others of its group are not. */
  readonly optional?: boolean;
}

/** Field by field what the bending model needs of a family beyond its drawing. */
const OF_FAMILY = [
  { key: 'sideWallMm', name: 'sideWallThickness', label: 'Side wall thickness', kind: 'length' },
  { key: 'pistonSealDiameterMm', name: 'seal', label: 'Piston seal diameter', kind: 'length' },
  { key: 'hubDiameterMm', name: 'hub', label: 'Hub diameter', kind: 'length' },
  {
    key: 'lockUpPressureMPa',
    name: 'lockUpPressure',
    label: 'Lock-up pressure',
    kind: 'pressure',
    unit: 'MPa',
  },
  { key: 'yieldMPa', name: 'yield', label: 'Yield of its steel', kind: 'number', unit: 'MPa' },
] as const satisfies readonly Asked<keyof Family>[];

const OF_RING = [
  { key: 'innerDiameterMm', name: 'ringInner', label: 'Ring inner diameter', kind: 'length' },
  { key: 'outerDiameterMm', name: 'ringOuter', label: 'Ring outer diameter', kind: 'length' },
  { key: 'thicknessMm', name: 'ringThickness', label: 'Ring thickness', kind: 'length' },
] as const satisfies readonly Asked<Exclude<keyof RingSize, 'joinedToPads'>>[];

const OF_SHOP = [
  {
    key: 'liningModulusMPaPerMm',
    name: 'liningModulus',
    label: "Lining's modulus",
    kind: 'number',
    unit: 'MPa/mm',
  },
  { key: 'youngMPa', name: 'young', label: "Young's modulus", kind: 'number', unit: 'MPa' },
  { key: 'poisson', name: 'poisson', label: "Poisson's ratio", kind: 'number' },
  {
    key: 'lockUpPressureMPa',
    name: 'lockUpPressure',
    label: 'Lock-up pressure, where a family says none',
    kind: 'pressure',
    unit: 'MPa',
    optional: true,
  },
  {
    key: 'yieldMPa',
    name: 'yield',
    label: 'Yield, where a family says none',
    kind: 'number',
    unit: 'MPa',
    optional: true,
  },
  {
    key: 'speedRpm',
    name: 'bendingSpeed',
    label: 'Speed for ballooning',
    kind: 'number',
    unit: 'rpm',
    optional: true,
  },
  {
    key: 'ringRunoutMm',
    name: 'ringRunout',
    label: 'Runout allowed of a ring',
    kind: 'length',
    optional: true,
  },
  {
    key: 'peakOverNew',
    name: 'peakOverNew',
    label: 'Pressure peak at most, times new',
    kind: 'number',
    optional: true,
  },
  {
    key: 'rippleOverNew',
    name: 'rippleOverNew',
    label: 'Ripple at most, times new',
    kind: 'number',
    optional: true,
  },
] as const satisfies readonly Asked<keyof BendingSettings>[];

const OF_HEAT = [
  { key: 'share', name: 'heatShare', label: 'Share of the heat into the cover', kind: 'share' },
  { key: 'torqueNm', name: 'slipTorque', label: 'Torque while it slips', kind: 'torque', unit: 'N·m' },
  { key: 'slipRpm', name: 'slipSpeed', label: 'Slip speed at the start', kind: 'number', unit: 'rpm' },
  { key: 'slipTimeS', name: 'slipTime', label: 'Slip time', kind: 'number', unit: 's' },
  {
    key: 'conductivityWPerMK',
    name: 'conductivity',
    label: "Steel's conductivity",
    kind: 'number',
    unit: 'W/(m·K)',
  },
  { key: 'densityKgPerM3', name: 'density', label: "Steel's density", kind: 'number', unit: 'kg/m³' },
  {
    key: 'specificHeatJPerKgK',
    name: 'specificHeat',
    label: "Steel's specific heat",
    kind: 'number',
    unit: 'J/(kg·K)',
  },
  {
    key: 'startTemperatureC',
    name: 'startTemperature',
    label: 'Temperature before it slips',
    kind: 'number',
    unit: '°C',
    optional: true,
  },
] as const satisfies readonly Asked<keyof HeatSettings>[];

/** The field each path of a schema came from. */
export const BENDING_FIELDS: Readonly<Record<string, string>> = Object.fromEntries([
  ...OF_FAMILY.map(({ key, name }) => [key, name]),
  ...OF_RING.map(({ key, name }) => [`ring.${key}`, name]),
  ...OF_SHOP.map(({ key, name }) => [`bending.${key}`, name]),
  ...OF_HEAT.map(({ key, name }) => [`heat.${key}`, name]),
]);

function read(form: TypedForm, { name, label, kind }: Asked<string>): number | null {
  switch (kind) {
    case 'length':
      return form.length(name, label);
    case 'pressure':
      return form.pressure(name, label);
    case 'share':
      return form.share(name, label);
    case 'torque':
      return form.torque(name, label);
    default:
      return form.number(name, label);
  }
}

/** All that is needed of a group, or null where nothing of it was typed. */
function readGroup<T>(form: TypedForm, group: readonly Asked<string>[]): T | null {
  if (!group.some(({ name }) => form.has(name))) return null;
  return Object.fromEntries(
    group.map((asked) => {
      const value = read(form, asked);
      const given = asked.optional === true || form.has(asked.name);
      return [asked.key, given ? value : form.needed(value, asked.name, asked.label)];
    }),
  ) as T;
}

/** How it is joined is asked of a ring alone. */
function readRing(form: TypedForm): RingSize | null {
  const ring = readGroup<RingSize>(form, OF_RING);
  const joined = form.choice('ringJoined', ['yes', 'no']);
  if (joined === null) return ring;
  if (ring === null) {
    form.fault('ringJoined', 'Which ring? Enter its diameters and thickness, or choose not known.');
    return null;
  }
  return { ...ring, joinedToPads: joined === 'yes' };
}

function sizesOf({ innerDiameterMm, outerDiameterMm, thicknessMm }: RingSize) {
  return { innerDiameterMm, outerDiameterMm, thicknessMm };
}

export function readFamilyBending(form: TypedForm) {
  const fields = Object.fromEntries(OF_FAMILY.map((asked) => [asked.key, read(form, asked)]));
  return {
    ...(fields as Record<(typeof OF_FAMILY)[number]['key'], number | null>),
    ring: readRing(form),
  };
}

export function readBendingSettings(form: TypedForm): BendingSettings | null {
  return readGroup<BendingSettings>(form, OF_SHOP);
}

export function readHeatSettings(form: TypedForm): HeatSettings | null {
  return readGroup<HeatSettings>(form, OF_HEAT);
}

interface Writes {
  readonly length: (mm: number | null) => string;
  readonly number: (value: number) => string;
}

function groupAsTyped(
  group: readonly Asked<string>[],
  body: Readonly<Record<string, number | null>> | null,
  { length, number }: Writes,
): Fields {
  if (body === null) return {};
  return Object.fromEntries(
    group.map(({ key, name, kind }) => {
      const value = body[key] ?? null;
      if (value === null) return [name, ''];
      if (kind === 'length') return [name, length(value)];
      return [name, number(kind === 'share' ? Number((value * 100).toPrecision(12)) : value)];
    }),
  );
}

export function familyBendingAsTyped(body: Family, writes: Writes): Fields {
  const own = Object.fromEntries(OF_FAMILY.map(({ key }) => [key, body[key] ?? null]));
  return {
    ...groupAsTyped(OF_FAMILY, own, writes),
    ...groupAsTyped(OF_RING, body.ring ? sizesOf(body.ring) : null, writes),
    ringJoined: body.ring?.joinedToPads == null ? '' : body.ring.joinedToPads ? 'yes' : 'no',
  };
}

export function bendingAsTyped(
  bending: BendingSettings | null,
  heat: HeatSettings | null,
  writes: Writes,
): Fields {
  return {
    ...groupAsTyped(OF_SHOP, bending && { ...bending }, writes),
    ...groupAsTyped(OF_HEAT, heat && { ...heat }, writes),
  };
}

/** `at` is where the group lies in its body: '', 'ring.'. */
function groupLines(
  group: readonly Asked<string>[],
  at: string,
  body: Readonly<Record<string, number | null>> | null,
  telling: Telling,
): FieldLine[] {
  return group.map(({ key, label, kind, unit }) => {
    const value = body?.[key] ?? null;
    if (value === null) return { label, value: 'not said' };
    if (kind === 'share') return { label, value: `${Number((value * 100).toPrecision(12))} %` };
    const plain = unit === undefined ? `${value}` : `${value} ${unit}`;
    const words = kind === 'length' ? lengthInWords(value, telling) : plain;
    return { label, value: withTyped(words, `${at}${key}`, telling) };
  });
}

export function familyBendingLines(body: Family, telling: Telling): FieldLine[] {
  const own = Object.fromEntries(OF_FAMILY.map(({ key }) => [key, body[key] ?? null]));
  return [
    ...groupLines(OF_FAMILY, '', own, telling),
    ...groupLines(OF_RING, 'ring.', body.ring ? sizesOf(body.ring) : null, telling),
    ...linesOf({ joinedToPads: JOINED_TO_PADS }, body.ring, telling),
  ];
}

export function bendingLines(
  bending: BendingSettings | null,
  heat: HeatSettings | null,
  telling: Telling,
): FieldLine[] {
  return [
    ...groupLines(OF_SHOP, 'bending.', bending && { ...bending }, telling),
    ...groupLines(OF_HEAT, 'heat.', heat && { ...heat }, telling),
  ];
}
