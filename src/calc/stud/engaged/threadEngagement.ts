import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import { lengthMargin, type Margin } from '../numbers/lengthMargin.ts';

export interface EngagementLengths {
  readonly threadStartMm: number;
  readonly threadEndMm: number;
  readonly lengthToleranceMm: number;
  /** S + w, from the pad's seating face to the nut's bearing face. */
  readonly gripMm: number;
  readonly layerTolerancesMm: readonly number[];
  readonly nutHeightMm: number;
  readonly nutToleranceMm: number;
  readonly countersinkMm: number;
}

export interface Engagement {
  readonly nominalMm: number;
  readonly leastMm: number;
  readonly fullMm: number;
  /** How far the thread runs on beyond the nut's last thread (outer), and begins before its first (inner). */
  readonly outer: Margin;
  readonly inner: Margin;
  readonly nominal: Answer;
  readonly least: Answer;
}

/**
 * Length over which the stud's full thread and the nut's lie in each other.
 *   Le = max(0, min(end, S + H − cs) − max(start, S + cs))      full = H − 2 cs
 *   start, end first and last full thread from the pad face [mm] · S stack and washer [mm] · H nut height [mm] ·
 *   cs countersink at each side of the nut [mm]. The least takes each size at whichever end of its tolerance hurts;
 *   as Le is the least of four differences, that is the least of the four differences' least values.
 *   Valid: full threads only; run-outs count for nothing.   Source: first principles
 *   Example: start 1.0, end 20.0 ± 0.25, S 3.2 ± 0.1, H 8.3 ± 0.2, cs 0.1 → 8.10, least 7.90 (calc/stud/checkStud.test.ts)
 */
export function threadEngagement(lengths: EngagementLengths): Engagement {
  const { threadStartMm: start, threadEndMm: end, gripMm: S, nutHeightMm: H, countersinkMm: cs } = lengths;
  const tl = lengths.lengthToleranceMm;
  const tS = lengths.layerTolerancesMm.reduce((sum, t) => sum + t, 0);
  const tH = lengths.nutToleranceMm;
  const nominalMm = Math.max(0, Math.min(end, S + H - cs) - Math.max(start, S + cs));
  const leastMm = Math.max(
    0,
    Math.min(
      end - start - 2 * tl,
      end - S - cs - tl - tS,
      S + H - cs - start - tS - tH - tl,
      H - 2 * cs - tH,
    ),
  );
  const p = (x: number) => printNumber(x, 2);
  const answer = (value: number, formula: string, numbers: string): Answer => ({
    symbol: 'Le',
    value,
    unit: 'mm',
    how: [{ formula, numbers, source: 'first principles' }],
    warnings: [],
  });
  return {
    nominalMm,
    leastMm,
    fullMm: H - 2 * cs,
    outer: lengthMargin({
      marginMm: end - (S + H - cs),
      tolerancesMm: [tl, ...lengths.layerTolerancesMm, tH],
    }),
    inner: lengthMargin({ marginMm: S + cs - start, tolerancesMm: [tl, ...lengths.layerTolerancesMm] }),
    nominal: answer(
      nominalMm,
      'Le = max(0, min(end, S + H − cs) − max(start, S + cs))',
      `max(0, min(${p(end)}, ${p(S + H - cs)}) − max(${p(start)}, ${p(S + cs)})) = ${p(nominalMm)} mm of ${p(H - 2 * cs)} mm`,
    ),
    least: answer(
      leastMm,
      'least of Le over every size within its tolerance',
      `ends ± ${p(tl)}, S ± ${p(tS)}, H ± ${p(tH)}: ${p(leastMm)} mm`,
    ),
  };
}
