import type { ThreadTyped } from '../stud/choices.ts';
import type { Fields } from './field.ts';

/** The thread of a stud in the hand, by a caliper. How well it is read: this program’s own figures. */
export const CALIPER = {
  majorMm: {
    label: 'Diameter over the threads',
    subject: 'The diameter over the threads',
    help: 'Where they are least worn',
    box: 'major',
    kind: 'size',
    optional: true,
  },
  overMm: {
    label: 'Length over ten threads',
    subject: 'The length over the threads',
    help: 'Crest to crest, ten gaps',
    box: 'over',
    kind: 'size',
    optional: true,
  },
  pitches: {
    label: 'Or over another number of threads',
    subject: 'The number of threads',
    help: 'Gaps between crests, not crests',
    box: 'counted',
    kind: 'count',
    least: 2,
    most: 80,
    ifEmpty: 10,
  },
  majorWithinMm: {
    label: 'Diameter measured to within ±',
    subject: 'How well the diameter was measured',
    box: 'majorWithin',
    kind: 'extent',
    ifEmpty: 0.05,
  },
  overWithinMm: {
    label: 'Length measured to within ±',
    subject: 'How well the length was measured',
    box: 'overWithin',
    kind: 'extent',
    ifEmpty: 0.2,
  },
} as const satisfies Fields<ThreadTyped>;
