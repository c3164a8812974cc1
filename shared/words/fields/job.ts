import type { CutMade, CutPlan, Looked, Received } from '../job.ts';
import type { Fields } from './field.ts';

const NOTE = { label: 'Note', kind: 'text', most: 2000, lines: true } as const;

/** What came in. */
export const RECEIVED = {
  familyId: { label: 'Cover type', box: 'family', kind: 'made' },
  family: { label: 'Cover type', box: 'family', kind: 'made' },
  familyRevision: { label: 'Revision of the cover type', box: 'family', kind: 'made' },
  receivedOn: { label: 'Received on', subject: 'The day it came in', kind: 'day' },
  customerReference: { label: 'Customer reference', box: 'customer', kind: 'text', most: 80 },
  coverNumber: {
    label: 'Cover’s own number',
    help: 'Scribed or tagged on the cover; ties its jobs together',
    box: 'coverNumber',
    kind: 'text',
    most: 40,
    ifLeftOut: '',
  },
  comebackOf: {
    head: 'Comeback, note',
    headHelp: 'Needed where this cover came back, or where there is something to remember about it.',
    folded: true,
    label: 'Comeback of job',
    subject: 'The job it came back from',
    help: 'The number of its earlier job',
    box: 'comebackOf',
    kind: 'text',
    most: 40,
    optional: true,
  },
  note: NOTE,
} as const satisfies Fields<Received>;

/** The inspection for cracks. */
export const LOOKED = {
  crackTest: {
    label: 'Crack test',
    kind: 'choice',
    options: { 'not-done': 'not done yet', 'none-found': 'no cracks found', found: 'a crack was found' },
    inSight: true,
    ifEmpty: 'not-done',
  },
  crackMethod: {
    label: 'Crack test method',
    kind: 'choice',
    inSight: true,
    options: { dye: 'dye penetrant', 'magnetic-particle': 'magnetic particle', 'by-eye': 'by eye' },
    optional: true,
  },
  crackNote: { ...NOTE, label: 'Crack test note' },
  items: { label: 'Items inspected', kind: 'made' },
} as const satisfies Fields<Looked>;

/** One item of the inspection; the name of the item stands after each box. */
export const INSPECTED = {
  item: { label: 'Item', kind: 'made' },
  result: {
    label: 'Result',
    kind: 'choice',
    options: { 'not-looked': 'not inspected', sound: 'sound', fault: 'fault' },
    ifEmpty: 'not-looked',
  },
  final: { label: 'Beyond repair', subject: 'Whether it is final', kind: 'yes-no' },
  note: NOTE,
} as const satisfies Fields<Looked['items'][number]>;

/** A cut to try instead of the least that cleans up. */
export const PLAN = {
  plannedCutMm: {
    label: 'Planned cut',
    box: 'cut',
    kind: 'extent',
    none: 'the least that cleans up',
    optional: true,
  },
  typed: { label: 'As typed', box: 'cut', kind: 'made' },
  lathe: { label: 'Lathe', box: 'lathe', kind: 'made' },
} as const satisfies Fields<CutPlan>;

/** One pass of the cut. */
export const CUT = {
  depthMm: {
    label: 'Depth of cut',
    subject: 'The depth',
    help: 'This pass only, not the total',
    box: 'depth',
    kind: 'size',
  },
  typed: { label: 'As typed', box: 'depth', kind: 'made' },
  look: {
    head: 'What was seen after this pass',
    headHelp: 'Needed before the next pass. It can be entered later too.',
    folded: true,
    label: 'Heat mark after this pass',
    kind: 'choice',
    options: { dark: 'still there', gone: 'gone everywhere' },
    none: 'not looked at yet',
    optional: true,
  },
  truedAgain: {
    label: 'Pads and crank pilot trued again',
    help: 'With shims out, before the face was indicated after this pass',
    box: 'truedAgain',
    kind: 'yes-no',
    none: 'not recorded',
    optional: true,
  },
  note: NOTE,
} as const satisfies Fields<CutMade>;
