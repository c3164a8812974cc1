import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { ReachGrade } from '../../../../shared/words/stud/stud.ts';

const DUST = 1e-9;

export interface ReachLengths {
  readonly projectionMm: number;
  readonly threadEndMm: number;
  readonly stackMm: number;
  /** g: the pull-forward gap that remains with shims fitted. */
  readonly gapMm: number;
  readonly pitchMm: number;
  readonly startThreads: number;
  readonly prevailing: boolean;
}

export interface Reach {
  readonly tipBeyondMm: number;
  readonly threadsShowing: number;
  readonly grade: ReachGrade;
  readonly answer: Answer;
}

/**
 * What of the stud stands out of the engine-side face with the converter pushed back.
 *   tip = projection − g − S      threads = (end − g − S)/P
 *   starts-by-hand: threads ≥ start threads; pilot-shows: tip > 0; blind: tip inside the stack. A prevailing-torque nut
 *   cannot be run on by hand, so it grades pilot-shows at best.
 *   projection tip, end last full thread from the pad face, S stack without washer, g gap [mm] · P pitch [mm]
 *   Valid: g measured with the converter fully back on the pump, shims fitted.
 *   Source: first principles; how many threads start a nut by hand is the shop's limit
 *   Example: projection 23, end 20, g 4, S 3.2, 3/8-24 → tip 15.8 mm, 12.1 threads, starts-by-hand (calc/stud/reach/reach.test.ts)
 */
export function reach(lengths: ReachLengths): Reach {
  const { projectionMm, threadEndMm, stackMm: S, gapMm: g, pitchMm: P, startThreads, prevailing } = lengths;
  const tipBeyondMm = projectionMm - g - S;
  const threadsShowing = (threadEndMm - g - S) / P;
  const grade: ReachGrade =
    tipBeyondMm <= DUST
      ? 'blind'
      : threadsShowing < startThreads - DUST || prevailing
        ? 'pilot-shows'
        : 'starts-by-hand';
  const p = (x: number) => printNumber(x, 2);
  return {
    tipBeyondMm,
    threadsShowing,
    grade,
    answer: {
      symbol: 'tip',
      value: tipBeyondMm,
      unit: 'mm',
      how: [
        {
          formula: 'tip = projection − g − S',
          numbers: `tip = ${p(projectionMm)} − ${p(g)} − ${p(S)} = ${p(tipBeyondMm)} mm`,
          source: 'first principles',
        },
        {
          formula: 'threads = (end − g − S)/P',
          numbers: `threads = (${p(threadEndMm)} − ${p(g)} − ${p(S)})/${printNumber(P, 3)} = ${printNumber(threadsShowing, 1)}; ${startThreads} start a nut by hand${prevailing ? '; not a prevailing-torque nut' : ''}`,
          source: 'first principles; the shop limit',
        },
      ],
      warnings: [],
    },
  };
}
