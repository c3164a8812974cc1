import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Does the nut sit on the layer under it, or fall into its hole?   width = (d_W − hole)/2, wanted more than 0
 *   d_W the nut's bearing outer diameter, hole of the layer under it [mm]
 *   Valid: no washer; a washer covers the hole. Left out (null) when either was not given.   Source: first principles
 *   Example: d_W 14.0, hole 10.3 → 1.85 mm all around (calc/stud/holes/holes.test.ts)
 */
export function nutSeat(numbers: StudNumbers, unit: LengthUnit): Checked | null {
  const { nut, stack } = numbers.input;
  const under = stack.layers.at(-1)!;
  if (!nut || nut.washerMm > 0 || nut.bearingOuterDiameterMm === null || under.holeDiameterMm === null)
    return null;
  const widthMm = (nut.bearingOuterDiameterMm - under.holeDiameterMm) / 2;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const sits = widthMm > 1e-9;
  const answer = {
    symbol: 'b',
    value: widthMm,
    unit: 'mm',
    how: [
      {
        formula: 'b = (d_W − hole)/2',
        numbers: `b = (${printNumber(nut.bearingOuterDiameterMm, 2)} − ${printNumber(under.holeDiameterMm, 2)})/2 = ${printNumber(widthMm, 2)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      id: 'nut-seat',
      title: 'Nut on its seat',
      status: sits ? 'pass' : 'fail',
      value: widthMm,
      limit: 0,
      unit: 'mm',
      sentence: sits
        ? `The nut bears on a rim ${mm(widthMm)} wide around the hole.`
        : `The nut’s washer-face diameter, ${mm(nut.bearingOuterDiameterMm)}, does not cover the ${mm(under.holeDiameterMm)} hole in the ${under.name}.`,
      source: 'first principles',
      answer,
    },
    field: 'bearingOuterDiameterMm',
    missMm: sits ? 0 : -2 * widthMm,
    short: 'the nut does not cover the hole',
    mend: 'Needs a washer or a flanged nut.',
    counts: true,
    answers: { nutSeatMm: answer },
  };
}
