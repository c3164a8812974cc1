import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
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
    ? `the thread begins ${mm(margin.missMm)} too far out`
    : `the thread ends ${mm(margin.missMm)} too soon`;
  const sentence =
    margin.nominalMm >= -1e-9
      ? `The nut is engaged over ${mm(nominalMm)}, the whole of its thread (${much})${spreadInWords(margin, unit)}.`
      : `The nut is engaged over ${mm(nominalMm)} of its ${mm(fullMm)} (${much}): ${shortfall}.`;
  return {
    finding: {
      id: 'engagement',
      title: 'Engagement',
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
    short: innerDecides ? 'its thread begins too far out for the nut' : 'its thread is too short for the nut',
    mend: tooNear
      ? ''
      : innerDecides
        ? `A first full thread ${mm(margin.missMm)} nearer the pad would do.`
        : `A thread reaching ${mm(margin.missMm)} farther would do.`,
    counts: true,
    answers: { engagementNominalMm: engagement.nominal, engagementLeastMm: engagement.least },
  };
}
