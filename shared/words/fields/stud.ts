import type { CatalogueNut, CatalogueStack, CatalogueStud, CatalogueWasher, NutAlone } from '../catalogue.ts';
import type { Layer, Nut, Stack, Stud } from '../stud/stud.ts';
import type { Fields } from './field.ts';

/** Beyond any steel. */
const STRESS = { kind: 'stress', least: 0, open: true, most: 5000 } as const;
const NAME = { label: 'Name', kind: 'text', least: 1, most: 80 } as const;
const NOTE = { label: 'Note', kind: 'text', most: 2000, lines: true } as const;
const STOCK = {
  label: 'Number in stock',
  kind: 'count',
  least: 0,
  most: 1_000_000,
  none: 'not counted',
  optional: true,
} as const;
const SHELF = { label: 'Shelf place', kind: 'text', most: 40, ifLeftOut: '' } as const;
export const THREAD_BOX = 'thread';
export const NUT_THREAD_BOX = 'nutThread';

/** A stud, measured from the pad’s seating face toward the engine. */
export const STUD = {
  thread: { label: 'Thread', box: THREAD_BOX, kind: 'made' },
  threadStartMm: {
    label: 'First full thread',
    help: 'From the pad',
    box: 'threadStart',
    kind: 'extent',
    letter: 'A',
  },
  threadEndMm: {
    label: 'Last full thread',
    help: 'From the pad',
    box: 'threadEnd',
    kind: 'extent',
    letter: 'B',
  },
  projectionMm: {
    label: 'Length from pad',
    help: 'Beyond the last thread is the stud pilot',
    box: 'projection',
    kind: 'size',
    letter: 'C',
  },
  lengthToleranceMm: {
    label: 'Length tolerance ±',
    subject: 'The length tolerance',
    help: 'On each of the three',
    box: 'tolerance',
    kind: 'extent',
    ifEmpty: 0,
  },
  pilotDiameterMm: { label: 'Stud pilot diameter', box: 'pilot', kind: 'size', optional: true, letter: 'D' },
  tensileMPa: {
    head: 'Strength',
    headHelp: 'Needed to tell whether it holds: the class or grade marked on it, or both figures.',
    label: 'Tensile strength',
    box: 'tensile',
    ...STRESS,
    optional: true,
  },
  proofMPa: { label: 'Proof stress', box: 'proof', ...STRESS, optional: true },
  filletMm: {
    head: 'Weld and wear',
    headHelp: 'Needed for a stud with a weld fillet, which has to go into the hole, and for a used stud.',
    folded: true,
    label: 'Weld fillet at the pad',
    box: 'fillet',
    kind: 'extent',
    optional: true,
    letter: 'E',
  },
  pitchDiameterMeasuredMm: {
    label: 'Measured pitch diameter',
    help: 'Of a used stud: a worn thread is weaker',
    box: 'pitchDiameter',
    kind: 'size',
    optional: true,
  },
} as const satisfies Fields<Stud>;

/** A stud as the catalog keeps it. */
export const CATALOGUE_STUD = {
  name: { head: 'Stud, measured from the pad’s seating face', ...NAME },
  threadTyped: {
    label: 'Thread',
    help: 'As 3/8-24, 7/16-20 UNF-2A, M10x1.25 or M10',
    box: THREAD_BOX,
    kind: 'text',
    least: 1,
    most: 40,
  },
  stud: { label: 'Stud', kind: 'part', fields: STUD },
  stock: STOCK,
  shelf: SHELF,
  note: NOTE,
} as const satisfies Fields<CatalogueStud>;

/** One layer at the stud hole. */
export const LAYER = {
  name: { label: 'Layer', subject: 'The name', box: 'ln', kind: 'text', least: 1, most: 60 },
  kind: {
    label: 'Kind',
    box: 'lk',
    kind: 'choice',
    options: { plate: 'plate', casting: 'casting', shim: 'shim' },
    unsaid: 'judged by its name',
    optional: true,
  },
  thicknessMm: { label: 'Thickness', box: 'lt', kind: 'size' },
  toleranceMm: { label: 'Tolerance ±', subject: 'The tolerance', box: 'lo', kind: 'extent', ifEmpty: 0 },
  holeDiameterMm: { label: 'Hole diameter', box: 'lh', kind: 'size', optional: true },
  chamferMm: { label: 'Hole chamfer', box: 'lc', kind: 'extent', optional: true },
} as const satisfies Fields<Layer>;

/** A flexplate stack, from the pad toward the engine. */
export const STACK = {
  style: {
    label: 'Flexplate',
    kind: 'choice',
    options: { 'one-piece': 'one-piece', 'two-piece': 'two-piece' },
    unsaid: 'from its layers, not counting shims',
  },
  layers: { label: 'Layers', box: 'lt.0', kind: 'made' },
  holeCount: { label: 'Number of holes', kind: 'count', least: 2, most: 24, optional: true },
  holeCircleDiameterMm: { label: 'Bolt circle diameter', box: 'holeCircle', kind: 'size', optional: true },
  tipRoomMm: {
    label: 'Room for the stud end',
    help: 'From the pad face',
    box: 'tipRoom',
    kind: 'size',
    optional: true,
  },
  leastPullForwardMm: {
    label: 'Maker’s minimum pull-forward gap',
    subject: 'The maker’s minimum pull-forward gap',
    help: 'Blank: the shop’s',
    box: 'leastPull',
    kind: 'extent',
    optional: true,
  },
  mostPullForwardMm: {
    label: 'Maker’s maximum pull-forward gap',
    subject: 'The maker’s maximum pull-forward gap',
    box: 'mostPull',
    kind: 'extent',
    optional: true,
  },
} as const satisfies Fields<Stack>;

/** The nut that clamps it. */
export const NUT = {
  thread: { label: 'Nut thread', box: NUT_THREAD_BOX, kind: 'made' },
  heightMm: { label: 'Nut height', box: 'nutHeight', kind: 'size', letter: 'A' },
  toleranceMm: {
    label: 'Nut height tolerance ±',
    subject: 'The nut height tolerance',
    box: 'nutTolerance',
    kind: 'extent',
    ifEmpty: 0,
  },
  countersinkMm: {
    label: 'Nut countersink',
    help: 'At each side',
    box: 'nutCountersink',
    kind: 'extent',
    ifEmpty: 0,
    letter: 'B',
  },
  washerMm: {
    label: 'Washer thickness',
    help: 'Under the nut',
    box: 'washer',
    kind: 'extent',
    ifEmpty: 0,
    ifLeftOut: 0,
  },
  bearingOuterDiameterMm: {
    label: 'Washer-face diameter',
    box: 'nutBearing',
    kind: 'size',
    optional: true,
    letter: 'C',
  },
  proofMPa: { label: 'Nut proof stress', box: 'nutProof', ...STRESS, optional: true },
  tensileMPa: { label: 'Nut tensile strength', box: 'nutTensile', ...STRESS, optional: true },
  prevailing: { label: 'Prevailing-torque (locking) nut', kind: 'yes-no', ifLeftOut: false },
} as const satisfies Fields<Nut>;

const { washerMm: _, ...ALONE } = NUT;

/** A nut as the catalog keeps it. */
export const CATALOGUE_NUT = {
  name: { head: 'Nut', ...NAME },
  threadTyped: {
    label: 'Nut thread',
    help: 'As 3/8-24 or M10x1.25',
    box: NUT_THREAD_BOX,
    kind: 'text',
    least: 1,
    most: 40,
  },
  nut: { label: 'Nut', kind: 'part', fields: ALONE satisfies Fields<NutAlone> },
  stock: STOCK,
  shelf: SHELF,
  note: NOTE,
} as const satisfies Fields<CatalogueNut>;

/** A washer or a shim as the catalog keeps it. */
export const CATALOGUE_WASHER = {
  name: { head: 'Washer or shim', ...NAME },
  use: {
    label: 'Used as',
    subject: 'What it is used as',
    kind: 'choice',
    options: { washer: 'washer under a nut', shim: 'shim under a pad' },
    ifEmpty: 'washer',
  },
  innerDiameterMm: { label: 'Inner diameter', box: 'inner', kind: 'size', letter: 'A' },
  outerDiameterMm: { label: 'Outer diameter', box: 'outer', kind: 'size', letter: 'B' },
  thicknessMm: { label: 'Thickness', box: 'thickness', kind: 'size', letter: 'C' },
  toleranceMm: {
    label: 'Thickness tolerance ±',
    subject: 'The thickness tolerance',
    box: 'tolerance',
    kind: 'extent',
    ifEmpty: 0,
  },
  stock: STOCK,
  shelf: SHELF,
  note: NOTE,
} as const satisfies Fields<CatalogueWasher>;

/** A flexplate stack as the catalog keeps it. */
export const CATALOGUE_STACK = {
  name: NAME,
  stack: { head: 'Flexplate and nut', label: 'Flexplate stack', kind: 'part', fields: STACK },
  nutThreadTyped: {
    label: 'Nut thread',
    help: 'As 3/8-24 or M10x1.25',
    box: NUT_THREAD_BOX,
    kind: 'text',
    least: 1,
    most: 40,
    optional: true,
  },
  nut: { label: 'Nut', kind: 'part', fields: NUT, optional: true },
  pullForwardMm: { label: 'Pull-forward gap', box: 'pull', kind: 'extent', optional: true },
  makerTorqueNm: {
    label: 'Vehicle maker’s torque',
    subject: 'The vehicle maker’s torque',
    help: 'Read to callers with its source. Blank: they look it up',
    box: 'makerTorque',
    kind: 'torque',
    least: 0,
    open: true,
    most: 5000,
    optional: true,
  },
  makerTorqueSource: {
    label: 'Source of that torque',
    subject: 'The source of the vehicle maker’s torque',
    help: 'The document it is in',
    box: 'makerTorqueSource',
    kind: 'text',
    least: 1,
    most: 200,
    optional: true,
  },
  note: NOTE,
} as const satisfies Fields<CatalogueStack>;
