import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/** ± on the diameter: what a rule laid across a plate can tell apart. */
export const SAME_CIRCLE_MM = 0.5;
const SOURCE = '0.5 mm on the circle: this program’s rule, not a standard';

/**
 * Has the stack the cover's number of holes, on the cover's circle?
 *   The cover's own count and circle, else those of the joint, if they are not the stack's; within ± 0.5 mm a circle is
 *   the same.
 *   Valid: holes evenly spaced.   Source: ± 0.5 mm is this program's own rule
 *   Example: 6 on Ø 286 against 6 on Ø 292 → no, 6.00 mm apart (calc/stud/holes/holes.test.ts)
 */
export function holeCircle(
  numbers: StudNumbers,
  unit: LengthUnit,
): { readonly count: Checked; readonly circle: Checked; readonly differenceMm: number | null } {
  const { input } = numbers;
  const { stack, joint } = input;
  const ofStack = joint?.ofStack ?? [];
  const jointCount = joint && !ofStack.includes('count') ? joint.studCount : null;
  const jointCircleMm = joint && !ofStack.includes('circle') ? joint.studCircleDiameterMm : null;
  const coverCount = input.coverStudCount ?? jointCount;
  const coverCircleMm = input.coverStudCircleDiameterMm ?? jointCircleMm;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const noCount =
    coverCount === null
      ? 'the cover’s number of studs was not given'
      : 'the stack’s number of holes was not given';
  const noCircle =
    coverCircleMm === null
      ? 'the cover’s stud circle was not given'
      : 'the stack’s hole circle was not given';

  const countKnown = coverCount !== null && stack.holeCount !== null;
  const countSame = coverCount === stack.holeCount;
  const count: Checked = {
    finding: {
      id: 'hole-count',
      title: 'Number of holes',
      status: countKnown ? (countSame ? 'pass' : 'fail') : 'not-checked',
      value: stack.holeCount,
      limit: coverCount,
      unit: '',
      sentence: countKnown
        ? countSame
          ? `Flexplate and cover both have ${coverCount}.`
          : `The flexplate has ${stack.holeCount} holes; the cover has ${coverCount} studs.`
        : `The number of holes is not compared: ${noCount}.`,
      source: 'the cover',
      answer: null,
    },
    field: 'holeCount',
    missMm: null,
    short: countKnown ? 'the flexplate has another number of holes than the cover has studs' : noCount,
    mend: '',
    counts: coverCount !== null,
    answers: {},
  };

  const known = coverCircleMm !== null && stack.holeCircleDiameterMm !== null;
  const differenceMm = known ? stack.holeCircleDiameterMm! - coverCircleMm! : null;
  const same = differenceMm !== null && Math.abs(differenceMm) <= SAME_CIRCLE_MM + 1e-9;
  const circle: Checked = {
    finding: {
      id: 'hole-circle',
      title: 'Hole circle',
      status: known ? (same ? 'pass' : 'fail') : 'not-checked',
      value: stack.holeCircleDiameterMm,
      limit: coverCircleMm,
      unit: 'mm',
      sentence: known
        ? same
          ? `The flexplate’s hole circle, ${mm(stack.holeCircleDiameterMm!)}, is the cover’s.`
          : `The flexplate’s hole circle is ${mm(stack.holeCircleDiameterMm!)}, the cover’s stud circle ${mm(coverCircleMm!)}: ${mm(Math.abs(differenceMm!))} apart.`
        : `The hole circle is not compared: ${noCircle}.`,
      source: SOURCE,
      answer: null,
    },
    field: 'holeCircleDiameterMm',
    missMm: differenceMm === null ? null : same ? 0 : Math.abs(differenceMm),
    short: known ? 'the flexplate’s hole circle is not the cover’s' : noCircle,
    mend: '',
    counts: coverCircleMm !== null,
    answers: {},
  };
  return { count, circle, differenceMm };
}
