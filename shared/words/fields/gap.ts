import type { FlexplateSeen } from '../stud/choices.ts';
import type { GapTyped } from '../stud/gap.ts';
import type { Fields } from './field.ts';
import { NUT, NUT_THREAD_BOX, STACK } from './stud.ts';

/** The depths the pull-forward gap follows from, converter fully back on the pump, and the shims to choose from. */
export const GAP = {
  padDepthMm: {
    label: 'Bell housing face to the pads',
    subject: 'The depth from the bell housing face to the pads',
    help: 'Converter fully back on the pump',
    box: 'depth',
    kind: 'extent',
  },
  flexplateStandsOutMm: {
    label: 'Engine face to the flexplate',
    subject: 'How far the flexplate stands out of the engine face',
    help: 'At a stud hole; type a minus sign where the flexplate sits deeper',
    box: 'standsOut',
    kind: 'height',
  },
  separatorPlateMm: {
    label: 'Separator plate',
    help: 'Between engine and bell housing. Blank: none',
    box: 'separator',
    kind: 'extent',
    ifEmpty: 0,
  },
  hubEngagementMm: {
    label: 'Impeller hub in the pump, fully back',
    subject: 'The length of the impeller hub in the pump',
    box: 'hub',
    kind: 'extent',
    optional: true,
  },
  hubEngagementLeastMm: {
    label: 'Minimum impeller hub in the pump',
    help: 'The maker’s figure',
    box: 'hubLeast',
    kind: 'extent',
    optional: true,
  },
  leastGapMm: {
    label: 'Maker’s minimum pull-forward gap',
    subject: 'The maker’s minimum pull-forward gap',
    box: 'gapLeast',
    kind: 'extent',
    optional: true,
  },
  mostGapMm: {
    label: 'Maker’s maximum pull-forward gap',
    subject: 'The maker’s maximum pull-forward gap',
    box: 'gapMost',
    kind: 'extent',
    optional: true,
  },
  shimsMm: { label: 'Shims in stock', box: 'shims', kind: 'lengths', each: 'size', most: 40 },
  shimMm: {
    label: 'Shim chosen, at each pad',
    subject: 'The shim chosen',
    help: 'Blank: the one recommended',
    box: 'shim',
    kind: 'extent',
    optional: true,
  },
} as const satisfies Fields<GapTyped>;

/** What is seen and measured at a stud hole to tell which flexplate it is. */
export const FLEXPLATE_SEEN = {
  style: {
    label: 'What you see',
    kind: 'choice',
    options: { 'one-piece': 'One thin plate', 'two-piece': 'A plate with a thick casting' },
    unsaid: 'I can’t tell',
    inSight: true,
    optional: true,
  },
  totalMm: {
    label: 'Pad face to the engine side',
    subject: 'The thickness from the pad face to the engine side',
    help: 'At a stud hole, everything between pad and nut',
    box: 'total',
    kind: 'size',
    optional: true,
  },
  withinMm: {
    label: 'Measured to within ±',
    subject: 'How close it was measured, ±,',
    box: 'within',
    kind: 'extent',
    // How well a caliper is read at a stud hole, where nobody says. This program's own figure.
    ifEmpty: 0.3,
  },
  thread: {
    label: 'Nut thread',
    help: 'As 3/8-24 or M10x1.25',
    box: NUT_THREAD_BOX,
    kind: 'made',
  },
  nutHeightMm: { ...NUT.heightMm, optional: true },
  holeCount: { ...STACK.holeCount, label: 'Number of studs' },
  onBench: { label: 'The converter is out, on the bench', kind: 'yes-no' },
  cannot: { label: 'What can’t be seen', box: 'cannot', kind: 'made' },
} as const satisfies Fields<FlexplateSeen>;
