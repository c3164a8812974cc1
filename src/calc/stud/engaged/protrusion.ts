import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Nut } from '../../../../shared/words/stud.ts';
import type { Checked } from '../numbers/checked.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

export interface Protrusion extends Checked {
  readonly threads: { readonly nominal: number; readonly least: number; readonly leastRss: number };
}

/**
 * Threads standing out of the nut.   p = (end − (S + w + H))/P
 *   end last full thread from the pad face, S stack, w washer, H nut height [mm] · P pitch [mm]
 *   Valid: full threads; the pilot counts for nothing.
 *   Source of the formula: first principles; of the limit: the shop's criterion. Others' rules, to compare: one thread
 *   past a fibre locknut, FAA AC 43.13-1B ¶7-64(f); at least one pitch, EN 1090-2 §8.2.2 (from memory)
 *   Example: end 20.0, S 3.2, H 8.3, 3/8-24 → 8.03 threads (calc/stud/checkStud.test.ts)
 */
export function protrusion(numbers: StudNumbers, nut: Nut, unit: LengthUnit): Protrusion {
  const { stud, criteria } = numbers.input;
  const { pitchMm: P } = numbers;
  const beyondMm = stud.threadEndMm - (numbers.gripMm + nut.heightMm);
  const margin = lengthMargin({
    marginMm: beyondMm - criteria.protrusionThreads * P,
    tolerancesMm: [stud.lengthToleranceMm, ...numbers.layerTolerancesMm, nut.toleranceMm],
  });
  const inThreads = (leftMm: number) => leftMm / P + criteria.protrusionThreads;
  const threads = {
    nominal: beyondMm / P,
    least: inThreads(margin.worstMm),
    leastRss: inThreads(margin.rssMm),
  };
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const t = (x: number) => printNumber(x, 1);
  const stands =
    beyondMm < 0
      ? `The last full thread ends ${mm(-beyondMm)} inside the nut`
      : `${t(threads.nominal)} threads stand out of the nut`;
  const answer = {
    symbol: 'p',
    value: threads.nominal,
    unit: 'threads',
    how: [
      {
        formula: 'p = (end − (S + w + H))/P',
        numbers: `p = (${printNumber(stud.threadEndMm, 2)} − ${printNumber(numbers.gripMm + nut.heightMm, 2)})/${printNumber(P, 3)} = ${printNumber(threads.nominal, 2)}; RSS ${printNumber(threads.leastRss, 2)}, worst ${printNumber(threads.least, 2)}`,
        source: 'first principles',
      },
    ],
    warnings: [],
  } as const;
  return {
    threads,
    finding: {
      id: 'protrusion',
      title: 'Protrusion',
      status: margin.status,
      value: threads.nominal,
      limit: criteria.protrusionThreads,
      unit: 'threads',
      sentence: `${stands}; the shop wants ${t(criteria.protrusionThreads)}${spreadInWords(margin, unit)}.`,
      source: 'the shop’s criterion',
      answer,
    },
    field: 'threadEndMm',
    missMm: margin.missMm,
    short: 'too little thread stands out of the nut',
    mend: `A thread reaching ${mm(margin.missMm)} farther would do.`,
    counts: true,
    answers: { protrusionThreads: answer },
  };
}
