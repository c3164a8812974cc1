import { CALIPER } from '../../../shared/words/fields/caliper.ts';
import type { AnyFields } from '../../../shared/words/fields/field.ts';
import { FLEXPLATE_SEEN, GAP } from '../../../shared/words/fields/gap.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import {
  CATALOGUE_NUT,
  CATALOGUE_STACK,
  CATALOGUE_STUD,
  CATALOGUE_WASHER,
  LAYER,
  NUT,
  STACK,
  STUD,
} from '../../../shared/words/fields/stud.ts';
import { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import type { AnyExpected } from '../../../src/shop/doubts/expectedFigures.ts';
import {
  caliperExpected,
  entryStackExpected,
  gapExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  replacedExpected,
  retorqueExpected,
  seenExpected,
  stackExpected,
  stockExpected,
  studExpected,
  washerExpected,
} from '../../../src/shop/studs/studsExpected.ts';

const OF = { thread: '3/8-24' };

/** The bodies that the forms of studs, stacks, nuts, shims, gap, caliper and joint are made of. */
export const STUD_BODIES: readonly (readonly [
  name: string,
  fields: AnyFields,
  expected: Readonly<Record<string, AnyExpected>>,
])[] = [
  ['a stud', STUD, studExpected(OF)],
  ['a stud of the catalog', CATALOGUE_STUD, stockExpected()],
  ['a nut', NUT, nutExpected(OF)],
  ['a nut of the catalog', CATALOGUE_NUT, stockExpected()],
  ['a plate', LAYER, layerExpected({ name: 'plate', kind: 'plate' }, OF)],
  ['a casting', LAYER, layerExpected({ name: 'casting', kind: 'casting' }, OF)],
  ['a shim of a stack', LAYER, layerExpected({ name: 'shim', kind: 'shim' }, OF)],
  ['a stack', STACK, stackExpected()],
  ['a stack of the catalog', CATALOGUE_STACK, entryStackExpected(OF)],
  ['a washer or shim', CATALOGUE_WASHER, washerExpected()],
  ['a joint', JOINT, jointExpected(OF)],
  ['the gap', GAP, gapExpected()],
  ['a flexplate looked at', FLEXPLATE_SEEN, seenExpected(OF)],
  ['a thread by a caliper', CALIPER, caliperExpected(10)],
  ['a replaced stud', REPLACED_STUD, replacedExpected()],
  ['a re-torque', RETORQUE, retorqueExpected(OF)],
];
