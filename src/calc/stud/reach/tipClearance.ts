import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast, isFlush } from '../numbers/inWords.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Does the stud's tip clear what is on the engine side, pads seated?   clearance = room − projection, wanted above 0
 *   room from the pad's seating face to the first thing in the way, projection tip from the pad face [mm]
 *   Valid: pads seated on the flexplate.   Source: first principles
 *   Example: room 40, projection 23 → 17.0 mm (calc/stud/checkStud.test.ts)
 */
export function tipClearance(numbers: StudNumbers, unit: LengthUnit): Checked {
  const { stud, stack } = numbers.input;
  const base = {
    id: 'tip-clearance',
    title: 'Stud end clearance',
    limit: 0,
    unit: 'mm',
    source: 'first principles',
  };
  if (stack.tipRoomMm === null) {
    return notKnown(base, {
      sentence: 'The room for the stud end is missing, so its clearance can’t be checked.',
      field: 'tipRoomMm',
      short: 'the room for the stud end',
      mend: 'Measure from the pad face to the first thing in the stud’s way.',
    });
  }
  const clearMm = stack.tipRoomMm - stud.projectionMm;
  const margin = lengthMargin({ marginMm: clearMm, tolerancesMm: [stud.lengthToleranceMm] });
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const answer = {
    symbol: 'c',
    value: clearMm,
    unit: 'mm',
    how: [
      {
        formula: 'c = room − projection',
        numbers: `c = ${printNumber(stack.tipRoomMm, 2)} − ${printNumber(stud.projectionMm, 2)} = ${printNumber(clearMm, 2)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      ...base,
      status: clearMm <= 1e-9 ? 'fail' : margin.status,
      value: clearMm,
      sentence:
        clearMm > 1e-9
          ? `The stud end clears the engine side by ${mm(clearMm)}; it must clear.${spreadInWords(margin, unit, 'clearing')}`
          : isFlush(clearMm, unit)
            ? 'The stud end touches the engine side as the pads seat; it must clear.'
            : `The stud is ${mm(-clearMm)} too long: its end hits the engine side before the pads seat.`,
      answer,
    },
    field: 'tipRoomMm',
    missMm: margin.missMm,
    short: 'its end hits the engine side',
    // A stud cannot be shortened by its whole length.
    mend:
      margin.missMm >= stud.projectionMm - 1e-9
        ? ''
        : `Needs a stud at least ${atLeast(margin.missMm, unit, { more: true })} shorter.`,
    counts: true,
    answers: { tipClearanceMm: answer },
  };
}
