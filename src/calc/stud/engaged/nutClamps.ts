import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

const LOOSE = ' The nut would stop on the shank and leave the joint loose, however tight it feels.';

/**
 * Does the nut clamp the stack, or stop on the unthreaded body?   depth = S + w − start, wanted at least P
 *   S stack, w washer, start first full thread from the pad face [mm] · P pitch [mm]
 *   Valid: a nut run down by hand.   Source: one pitch is this program's own rule, first principles: a nut that meets
 *   the run-out of the thread is tight on the stud and loose on the plate
 *   Example: S 3.2, start 1.0, 3/8-24 → 2.20 mm, wanted 1.06 mm (calc/stud/checkStud.test.ts)
 */
export function nutClamps(numbers: StudNumbers, unit: LengthUnit): Checked {
  const { stud } = numbers.input;
  const { gripMm, pitchMm } = numbers;
  const depthMm = gripMm - stud.threadStartMm;
  const margin = lengthMargin({
    marginMm: depthMm - pitchMm,
    tolerancesMm: [stud.lengthToleranceMm, ...numbers.layerTolerancesMm],
  });
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const nominal =
    depthMm < 0
      ? `The thread starts ${mm(-depthMm)} beyond the nut’s washer face; it must start one pitch, ${mm(pitchMm)}, below it.`
      : `The thread starts ${mm(depthMm)} below the nut’s washer face; one pitch, ${mm(pitchMm)}, is needed.`;
  const answer = {
    symbol: 'z₁',
    value: depthMm,
    unit: 'mm',
    how: [
      {
        formula: 'z₁ = S + w − start; wanted P',
        numbers: `z₁ = ${printNumber(numbers.stackMm.nominal, 2)} + ${printNumber(numbers.washerMm, 2)} − ${printNumber(stud.threadStartMm, 2)} = ${printNumber(depthMm, 2)} mm; P = ${printNumber(pitchMm, 3)} mm; left over: RSS ${printNumber(margin.rssMm, 2)}, worst ${printNumber(margin.worstMm, 2)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      id: 'nut-clamps',
      title: 'Clamping',
      status: margin.status,
      value: depthMm,
      limit: pitchMm,
      unit: 'mm',
      sentence: `${nominal}${spreadInWords(margin, unit, 'one pitch')}${margin.status === 'pass' ? '' : LOOSE}`,
      source: 'one pitch: this program’s rule, not a standard',
      answer,
    },
    field: 'threadStartMm',
    missMm: margin.missMm,
    short: 'the nut would stop before it clamps',
    // A thread cannot begin behind the pad's face.
    mend:
      margin.missMm > stud.threadStartMm + 1e-9
        ? ''
        : `Needs a first full thread at least ${atLeast(margin.missMm, unit)} nearer the pad.`,
    counts: true,
    answers: { nutClampsMm: answer },
  };
}
