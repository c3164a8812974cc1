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
  const missing = studs === null ? 'the cover’s number of studs' : 'the flexplate’s number of holes';
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
          ? `The flexplate has ${holes} holes, the cover ${studs} studs.`
          : `The flexplate has ${holes} holes; the cover has ${studs} studs.`
        : `The number of holes can’t be checked: ${missing} is missing.`,
      source: 'the cover',
      answer: null,
    },
    field: 'holeCount',
    missMm: null,
    short: known ? 'the flexplate’s number of holes is not the cover’s number of studs' : missing,
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
  const missing = studsMm === null ? 'the cover’s bolt circle' : 'the flexplate’s bolt circle';
  const differenceMm = studsMm === null || holesMm === null ? null : holesMm - studsMm;
  const same = differenceMm !== null && Math.abs(differenceMm) <= SAME_CIRCLE_MM + 1e-9;
  const circle: Checked = {
    finding: {
      id: 'hole-circle',
      title: 'Bolt circle',
      status: differenceMm === null ? 'not-checked' : same ? 'pass' : 'fail',
      value: holesMm,
      limit: studsMm,
      unit: 'mm',
      sentence:
        differenceMm === null
          ? `The bolt circle can’t be checked: ${missing} is missing.`
          : same
            ? `Flexplate and cover have the same bolt circle, ${mm(holesMm!)}.`
            : `The flexplate’s bolt circle is ${mm(holesMm!)}, the cover’s ${mm(studsMm!)}: ${mm(Math.abs(differenceMm))} different.`,
      source: SOURCE,
      answer: null,
    },
    field: 'holeCircleDiameterMm',
    missMm: differenceMm === null ? null : same ? 0 : Math.abs(differenceMm),
    short: differenceMm === null ? missing : 'the flexplate’s bolt circle is not the cover’s',
    mend: '',
    counts: studsMm !== null,
    answers: {},
  };
  return { circle, differenceMm };
}
