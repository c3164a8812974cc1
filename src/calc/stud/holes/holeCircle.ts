import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/** Circles this close are the same: a rule laid across a plate is read no closer. */
export const SAME_CIRCLE_MM = 0.5;
const SOURCE = 'this program’s rule, not a standard';

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
  const { stack, joint, coverStudCount, coverStudCircleDiameterMm } = numbers.input;
  const ofStack = joint?.ofStack ?? [];
  const jointCount = joint && !ofStack.includes('count') ? joint.studCount : null;
  const jointCircleMm = joint && !ofStack.includes('circle') ? joint.studCircleDiameterMm : null;
  return {
    count: sameCount(coverStudCount ?? jointCount, stack.holeCount),
    ...sameCircle(coverStudCircleDiameterMm ?? jointCircleMm, stack.holeCircleDiameterMm, unit),
  };
}

function sameCount(studs: number | null, holes: number | null): Checked {
  const missing =
    studs === null
      ? 'the cover’s number of studs was not given'
      : 'the stack’s number of holes was not given';
  const known = studs !== null && holes !== null;
  const same = studs === holes;
  return {
    finding: {
      id: 'hole-count',
      title: 'Number of holes',
      status: known ? (same ? 'pass' : 'fail') : 'not-checked',
      value: holes,
      limit: studs,
      unit: '',
      sentence: known
        ? same
          ? `Flexplate and cover both have ${studs}.`
          : `The flexplate has ${holes} holes; the cover has ${studs} studs.`
        : `The number of holes is not compared: ${missing}.`,
      source: 'the cover',
      answer: null,
    },
    field: 'holeCount',
    missMm: null,
    short: known ? 'the flexplate has another number of holes than the cover has studs' : missing,
    mend: '',
    counts: studs !== null,
    answers: {},
  };
}

function sameCircle(
  studsMm: number | null,
  holesMm: number | null,
  unit: LengthUnit,
): { readonly circle: Checked; readonly differenceMm: number | null } {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const missing =
    studsMm === null ? 'the cover’s stud circle was not given' : 'the stack’s hole circle was not given';
  const differenceMm = studsMm === null || holesMm === null ? null : holesMm - studsMm;
  const same = differenceMm !== null && Math.abs(differenceMm) <= SAME_CIRCLE_MM + 1e-9;
  const circle: Checked = {
    finding: {
      id: 'hole-circle',
      title: 'Hole circle',
      status: differenceMm === null ? 'not-checked' : same ? 'pass' : 'fail',
      value: holesMm,
      limit: studsMm,
      unit: 'mm',
      sentence:
        differenceMm === null
          ? `The hole circle is not compared: ${missing}.`
          : same
            ? `The flexplate’s hole circle, ${mm(holesMm!)}, is the cover’s.`
            : `The flexplate’s hole circle is ${mm(holesMm!)}, the cover’s stud circle ${mm(studsMm!)}: ${mm(Math.abs(differenceMm))} apart.`,
      source: SOURCE,
      answer: null,
    },
    field: 'holeCircleDiameterMm',
    missMm: differenceMm === null ? null : same ? 0 : Math.abs(differenceMm),
    short: differenceMm === null ? missing : 'the flexplate’s hole circle is not the cover’s',
    mend: '',
    counts: studsMm !== null,
    answers: {},
  };
  return { circle, differenceMm };
}
