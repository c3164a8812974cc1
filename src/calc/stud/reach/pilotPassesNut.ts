import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Does the unthreaded pilot pass through the nut?   pilot diameter < D1,min
 *   D1,min least minor diameter of the nut's thread [mm]: 2B, 3B to ASME B1.1, 6H to ISO 965-1
 *   Valid: a round pilot; none is needed where the thread runs to the tip.   Source: first principles; threadGeometry.ts
 *   Example: pilot 8.0 in a 3/8-24 2B nut, D1,min 8.382 → passes, 0.38 mm to spare (calc/stud/checkStud.test.ts)
 */
export function pilotPassesNut(numbers: StudNumbers, unit: LengthUnit): Checked {
  const { stud } = numbers.input;
  const limitMm = numbers.nutThread.minorMm.min!;
  const pilotMm = stud.pilotDiameterMm;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const name = numbers.nutThread.designation;
  const base = {
    id: 'pilot-passes-nut',
    title: 'Stud pilot through the nut',
    limit: limitMm,
    unit: 'mm',
    source: `least minor diameter of the nut’s thread, ${numbers.input.stud.thread.system === 'metric' ? 'ISO 965-1' : 'ASME B1.1'}`,
  };
  const field = 'pilotDiameterMm';
  if (pilotMm === null) {
    const sentence =
      'The stud pilot diameter is missing, so whether it passes through the nut can’t be checked.';
    const unmeasured = notKnown(base, {
      sentence,
      field,
      short: 'the stud pilot diameter',
      mend: 'Measure the stud pilot diameter.',
    });
    return stud.projectionMm - stud.threadEndMm > 1e-9 ? unmeasured : noPilot(unmeasured);
  }
  const overMm = pilotMm - limitMm;
  const passes = overMm < -1e-9;
  const answer = {
    symbol: 'D1,min',
    value: limitMm,
    unit: 'mm',
    how: [
      {
        formula: 'pilot < D1,min',
        numbers: `${printNumber(pilotMm, 2)} mm against ${printNumber(limitMm, 3)} mm`,
        source: base.source,
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      ...base,
      status: passes ? 'pass' : 'fail',
      value: pilotMm,
      sentence: passes
        ? `The stud pilot, ${mm(pilotMm)}, passes through the nut; the bore is at least ${mm(limitMm)}.`
        : `The stud pilot, ${mm(pilotMm)}, does not pass through every ${name} nut: the bore can be as small as ${mm(limitMm)}.`,
      answer,
    },
    field,
    missMm: passes ? 0 : Math.max(0, overMm),
    short: 'its stud pilot does not pass through the nut',
    mend: `Needs a stud pilot at least ${atLeast(Math.max(0, overMm), unit, { more: true })} thinner.`,
    counts: true,
    answers: { nutLeastMinorMm: answer },
  };
}

/** Where the thread runs to the tip there is nothing to measure, and nothing to pass. */
function noPilot(unmeasured: Checked): Checked {
  const sentence = 'The thread runs to the stud end: there is no stud pilot.';
  const finding = { ...unmeasured.finding, status: 'pass', sentence } as const;
  return { ...unmeasured, finding, missMm: 0, short: '', mend: '' };
}
