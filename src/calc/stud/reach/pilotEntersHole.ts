import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast, isFlush } from '../numbers/inWords.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Is the stud inside its hole before the pads meet the flexplate?   x = projection − g, wanted more than 0
 *   projection tip from the pad face, g pull-forward gap that remains [mm]
 *   Valid: g measured with the converter fully back on the pump.   Source: first principles
 *   Example: projection 23.0, g 4.0 → 19.0 mm in the hole (calc/stud/checkStud.test.ts)
 */
export function pilotEntersHole(numbers: StudNumbers, unit: LengthUnit): Checked {
  const { stud, pullForwardMm: g } = numbers.input;
  const base = {
    id: 'pilot-enters-hole',
    title: 'Stud end in its hole',
    limit: 0,
    unit: 'mm',
    source: 'first principles',
  };
  if (g === null) {
    return notKnown(base, {
      sentence:
        'The pull-forward gap is missing, so whether the studs enter before the pads touch can’t be checked.',
      field: 'pullForwardMm',
      short: 'the pull-forward gap',
      mend: '',
    });
  }
  const insideMm = stud.projectionMm - g;
  const margin = lengthMargin({ marginMm: insideMm, tolerancesMm: [stud.lengthToleranceMm] });
  const status = insideMm <= 1e-9 ? 'fail' : margin.status;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const answer = {
    symbol: 'x',
    value: insideMm,
    unit: 'mm',
    how: [
      {
        formula: 'x = projection − g',
        numbers: `x = ${printNumber(stud.projectionMm, 2)} − ${printNumber(g, 2)} = ${printNumber(insideMm, 2)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      ...base,
      status,
      value: insideMm,
      sentence:
        insideMm > 1e-9
          ? `With the converter pushed back, the stud is ${mm(insideMm)} into its hole before the pads touch.${spreadInWords(margin, unit, 'the flexplate')}`
          : `With the converter pushed back, the stud end ${isFlush(insideMm, unit) ? 'only touches the flexplate' : `is ${mm(-insideMm)} short of the flexplate`}: nothing guides it into its hole.`,
      answer,
    },
    field: 'projectionMm',
    missMm: margin.missMm,
    short: 'its end does not reach its hole',
    mend: `Needs a stud at least ${atLeast(margin.missMm, unit, { more: true })} longer.`,
    counts: true,
    answers: { insideHoleMm: answer },
  };
}
