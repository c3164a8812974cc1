import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import { spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import type { Engagement } from './threadEngagement.ts';

const WEIGHT = { pass: 0, caution: 1, fail: 2 } as const;

/** Is the whole of the nut's thread used? The end of the thread that is farther from it decides. */
export function engagementFinding(numbers: StudNumbers, engagement: Engagement, unit: LengthUnit): Checked {
  const { nominalMm, fullMm, outer, inner } = engagement;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const innerDecides =
    WEIGHT[inner.status] > WEIGHT[outer.status] ||
    (inner.status === outer.status && inner.missMm > outer.missMm);
  const margin = innerDecides ? inner : outer;
  const much = `${printNumber(nominalMm / numbers.pitchMm, 1)} threads, ${printNumber(nominalMm / numbers.diameterMm, 2)} diameters`;
  // A thread cannot begin behind the pad's face.
  const tooNear = innerDecides && inner.missMm > numbers.input.stud.threadStartMm + 1e-9;
  const shortfall = innerDecides
    ? `the stud’s thread starts ${mm(-margin.nominalMm)} too far out`
    : `the stud’s thread ends ${mm(-margin.nominalMm)} too soon`;
  const sentence =
    margin.nominalMm >= -1e-9
      ? `All of the nut’s thread is engaged: ${mm(nominalMm)} (${much}).${spreadInWords(margin, unit, 'full engagement')}`
      : `Only ${mm(nominalMm)} of the nut’s ${mm(fullMm)} of thread is engaged: ${shortfall}.`;
  return {
    finding: {
      id: 'engagement',
      title: 'Thread engagement',
      status: margin.status,
      value: nominalMm,
      limit: fullMm,
      unit: 'mm',
      sentence,
      source: 'the whole of the nut’s thread: the nut’s rated strength is for its full height (ISO 898-2)',
      answer: engagement.nominal,
    },
    field: innerDecides ? 'threadStartMm' : 'threadEndMm',
    missMm: margin.missMm,
    short: innerDecides ? 'its thread starts too far out for the nut' : 'its thread is too short for the nut',
    mend: tooNear
      ? ''
      : innerDecides
        ? `Needs a first full thread at least ${atLeast(margin.missMm, unit)} nearer the pad.`
        : `Needs a last full thread at least ${atLeast(margin.missMm, unit)} farther from the pad.`,
    counts: true,
    answers: { engagementNominalMm: engagement.nominal, engagementLeastMm: engagement.least },
  };
}
