import type { ReplacedStudAsked, RetorqueAsked } from '../job.ts';
import type { Fields } from './field.ts';

const TORQUE = { kind: 'torque', least: 0, open: true, most: 5000 } as const;
const NOTE = { label: 'Note', kind: 'text', most: 2000, lines: true, ifLeftOut: '' } as const;

/** A stud welded or pressed in to replace one, as it was measured and proved. */
export const REPLACED_STUD = {
  stud: { label: 'Stud number', box: 'studNumber', kind: 'count', least: 1, most: 24 },
  how: {
    label: 'How it was installed',
    subject: 'How the stud was installed',
    box: 'setHow',
    kind: 'choice',
    options: { welded: 'welded in', pressed: 'pressed in' },
    ifEmpty: 'welded',
  },
  leanMm: {
    head: 'Squareness, location, fillet',
    headHelp: 'Needed to check how the stud sits. What is blank is not checked.',
    folded: true,
    label: 'Out of square',
    subject: 'The out-of-square reading',
    help: 'With a square on the pad',
    box: 'lean',
    kind: 'extent',
    optional: true,
  },
  leanAtMm: {
    label: 'Height of the squareness reading',
    help: 'Above the pad',
    box: 'leanAt',
    kind: 'size',
    optional: true,
  },
  offMm: { label: 'Base off location', box: 'off', kind: 'extent', optional: true },
  filletMm: {
    label: 'Weld fillet at the base',
    help: 'Beyond the stud’s own radius',
    box: 'fillet',
    kind: 'extent',
    optional: true,
  },
  provedNm: {
    head: 'Proof torque, note',
    headHelp:
      'Needed where a nut was tightened on the stud to prove it, or where there is something to remember.',
    folded: true,
    label: 'Proof torque',
    help: 'Nut on a spacer',
    box: 'proved',
    ...TORQUE,
    optional: true,
  },
  heldIt: {
    label: 'Held the proof torque',
    box: 'held',
    kind: 'yes-no',
    words: { yes: 'yes, did not turn or pull', no: 'no' },
    none: 'not tested',
    optional: true,
  },
  note: { ...NOTE, box: 'setNote' },
} as const satisfies Fields<ReplacedStudAsked>;

/** Nuts re-torqued after the first heat cycle. */
export const RETORQUE = {
  torqueNm: {
    label: 'Torque when re-torqued',
    subject: 'The torque of the re-torque',
    box: 'againTorque',
    ...TORQUE,
  },
  on: { label: 'Day of the re-torque', help: 'Blank: today', box: 'againOn', kind: 'day' },
  makerAllows: {
    label: 'Vehicle maker allows it',
    subject: 'Whether the vehicle maker allows it',
    kind: 'choice',
    options: { 'not-said': 'not looked up', yes: 'yes', no: 'no' },
    ifEmpty: 'not-said',
  },
  threadLocker: { label: 'Thread-locker on the threads', box: 'locker', kind: 'yes-no' },
  note: { ...NOTE, box: 'againNote' },
} as const satisfies Fields<RetorqueAsked>;
