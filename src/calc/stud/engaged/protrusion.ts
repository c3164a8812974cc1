import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Nut } from '../../../../shared/words/stud/stud.ts';
import type { Checked } from '../numbers/checked.ts';
import { atLeast, isFlush, threadsInWords } from '../numbers/inWords.ts';
import { lengthMargin, spreadInWords } from '../numbers/lengthMargin.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

export interface Protrusion extends Checked {
  readonly threads: { readonly nominal: number; readonly least: number; readonly leastRss: number };
}

/**
 * Threads standing out of the nut.   p = (end − (S + w + H))/P
 *   end last full thread from the pad face, S stack, w washer, H nut height [mm] · P pitch [mm]
 *   Valid: full threads; the pilot counts for nothing.
 *   Source of the formula: first principles; of the limit: the shop. Others' rules, to compare: one thread
 *   past a fiber locknut, FAA AC 43.13-1B ¶7-64(f); at least one pitch, EN 1090-2 §8.2.2 (from memory)
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
  const wanted = criteria.protrusionThreads;
  const ends = isFlush(beyondMm, unit)
    ? 'The stud’s thread ends flush with the nut’s far face'
    : beyondMm < 0
      ? `The stud’s thread ends ${mm(-beyondMm)} short of the nut’s far face`
      : `${threadsInWords(threads.nominal)} stand past the nut`;
  const needed =
    wanted === 0
      ? 'it must reach that face'
      : `${threadsInWords(wanted)} past the nut ${wanted === 1 ? 'is' : 'are'} needed`;
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
      title: 'Threads past the nut',
      status: margin.status,
      value: threads.nominal,
      limit: criteria.protrusionThreads,
      unit: 'threads',
      sentence: `${ends}; ${needed}.${spreadInWords(margin, unit, 'that')}`,
      source: 'the shop’s limit',
      answer,
    },
    field: 'threadEndMm',
    missMm: margin.missMm,
    short: 'too few threads stand past the nut',
    mend: `Needs a last full thread at least ${atLeast(margin.missMm, unit)} farther from the pad.`,
    counts: true,
    answers: { protrusionThreads: answer },
  };
}
