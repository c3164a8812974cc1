import type { RingSize } from '../bending/stiffness.ts';
import type { Family } from '../catalogue.ts';
import type { Fields } from './field.ts';
import { FIT_LIMITS } from './knockOn.ts';
import { JOINED_TO_PADS } from './weld.ts';

/**
 * Bounds of this program's own, about the usual figures of steel, cast iron, aluminum, linings and lock-up clutches (from
 * memory). Generous on purpose: they are to catch GPa typed as MPa, and bar or psi typed as MPa.
 */
export const LOCK_UP_PRESSURE = {
  kind: 'pressure',
  least: 0.05,
  most: 3,
  advice: {
    mm: 'Give it with its unit, as in 0.7 MPa or 7 bar.',
    in: 'Give it with its unit, as in 100 psi.',
  },
} as const;
export const YIELD = {
  kind: 'stress',
  least: 60,
  most: 2500,
  advice: { mm: 'Give it in MPa; mild steel has about 250.', in: 'Give it in ksi; mild steel has about 36.' },
} as const;

export const RING = {
  innerDiameterMm: { label: 'Ring inner diameter', box: 'ringInner', kind: 'size' },
  outerDiameterMm: { label: 'Ring outer diameter', box: 'ringOuter', kind: 'size' },
  thicknessMm: { label: 'Ring thickness', box: 'ringThickness', kind: 'size' },
  joinedToPads: JOINED_TO_PADS,
} as const satisfies Fields<RingSize>;

/** A cover type: what the shop knows of one kind of cover. */
export const FAMILY = {
  name: { head: 'Cover', label: 'Name', kind: 'text', least: 1, most: 80 },
  make: {
    label: 'Construction',
    kind: 'choice',
    options: { stamped: 'stamped', 'from-solid': 'billet' },
    ifEmpty: 'stamped',
  },
  sideWall: {
    label: 'Side wall',
    help: 'It does not tell how many clutch faces are inside',
    kind: 'choice',
    options: { plain: 'plain', ribbed: 'vertical ribs' },
    ifEmpty: 'plain',
  },
  studCount: { label: 'Number of studs', kind: 'count', least: 2, most: 24 },
  studCircleDiameterMm: { label: 'Bolt circle diameter', box: 'circle', kind: 'size', letter: 'A' },
  trackInnerDiameterMm: {
    label: 'Friction surface inner diameter',
    box: 'trackInner',
    kind: 'size',
    letter: 'B',
  },
  trackOuterDiameterMm: {
    label: 'Friction surface outer diameter',
    box: 'trackOuter',
    kind: 'size',
    letter: 'C',
  },
  nominalWallMm: { label: 'New wall', box: 'nominal', kind: 'size', letter: 'D' },
  bossDiameterMm: { label: 'Cover center diameter', box: 'boss', kind: 'size', optional: true, letter: 'E' },
  rimDiameterMm: { label: 'Rim diameter', box: 'rim', kind: 'size', optional: true, letter: 'F' },
  padDiameterMm: { label: 'Pad diameter', box: 'pad', kind: 'size', optional: true, letter: 'G' },
  padThicknessMm: { label: 'Pad thickness', box: 'padThickness', kind: 'size', optional: true, letter: 'H' },
  sideWallMm: {
    head: 'Bending',
    headHelp:
      'Needed for advice on bending and heat, with the cover center, the rim and the pads. What is blank is left out, and the answer says so.',
    folded: true,
    label: 'Side wall thickness',
    help: 'It holds the rim against turning',
    box: 'sideWallThickness',
    kind: 'size',
    optional: true,
  },
  pistonSealDiameterMm: {
    label: 'Piston seal diameter',
    help: 'Where the lock-up piston seals on the hub',
    box: 'seal',
    kind: 'size',
    optional: true,
  },
  hubDiameterMm: {
    label: 'Impeller hub diameter',
    help: 'Spinning oil presses on the cover from here out',
    box: 'hub',
    kind: 'size',
    optional: true,
  },
  lockUpPressureMPa: {
    label: 'Lock-up pressure',
    help: 'Blank: the shop’s figure',
    box: 'lockUpPressure',
    ...LOCK_UP_PRESSURE,
    optional: true,
  },
  yieldMPa: {
    label: 'Yield strength',
    help: 'Blank: its steel’s figure, or the shop’s',
    box: 'yield',
    ...YIELD,
    optional: true,
  },
  steel: { label: 'Steel', box: 'steel', kind: 'made' },
  lining: { label: 'Clutch lining', box: 'lining', kind: 'made' },
  ringAllowed: {
    head: 'Stiffening ring',
    headHelp:
      'Needed where a ring may be welded on: a flat ring on the engine side, with openings for the pads. All three sizes or none.',
    folded: true,
    label: 'Stiffening ring may be welded on',
    box: 'ring',
    kind: 'yes-no',
  },
  ring: {
    label: 'Stiffening ring',
    kind: 'part',
    fields: RING,
    optional: true,
  },
  limits: {
    head: 'Pads, impeller hub, crank pilot, heights and end play',
    headHelp:
      'Needed where jobs measure these: their limits, unless the job gives its own. What is blank is not judged.',
    folded: true,
    label: 'Limits',
    kind: 'part',
    fields: FIT_LIMITS,
    at: 'lim.',
    quiet: true,
    optional: true,
  },
  makerMinimumWallMm: {
    head: 'Minimum wall',
    headHelp:
      'The maker’s figure with its source, or the shop’s own with who set it. Where both are given, the larger one counts. Without either, the answer is advice only.',
    label: 'Maker’s minimum wall',
    box: 'makerMinimum',
    kind: 'size',
    none: 'none',
    optional: true,
  },
  makerMinimumWallSource: {
    label: 'Source of the maker’s minimum',
    help: 'Where it is printed',
    box: 'makerSource',
    kind: 'text',
    least: 1,
    most: 200,
    optional: true,
  },
  shopMinimumWallMm: {
    label: 'Shop’s minimum wall',
    box: 'shopMinimum',
    kind: 'size',
    none: 'none',
    optional: true,
  },
  shopMinimumWallBy: {
    label: 'Who set the shop’s minimum',
    subject: 'Who set the shop’s minimum',
    help: 'Initials or name',
    box: 'shopBy',
    kind: 'text',
    least: 1,
    most: 60,
    optional: true,
  },
  shopMinimumWallOn: {
    label: 'Day the shop’s minimum was set',
    box: 'shopOn',
    kind: 'day',
    optional: true,
  },
  shopMinimumWallSource: {
    label: 'Source of the shop’s minimum, as entered before',
    help: 'Kept until a person and a day are entered',
    box: 'shopSource',
    kind: 'text',
    least: 1,
    most: 200,
    optional: true,
  },
  note: { label: 'Note', kind: 'text', most: 2000, lines: true },
} as const satisfies Fields<Family>;
