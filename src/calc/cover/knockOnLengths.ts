import type { Answer } from '../../../shared/words/answer.ts';
import type { KnockOn } from '../../../shared/words/cover.ts';
import { printNumber } from '../../../shared/words/print.ts';

export interface KnockOnLengths {
  readonly padThickness: Answer | null;
  readonly pullForward: Answer | null;
  readonly hubEngagement: Answer | null;
  readonly pilotEngaged: Answer | null;
}

/**
 * What resurfacing the pads and shimming them does to the lengths round them.
 *   pad t' = t − x;   gap g' = g + x − s;   hub engagement e' = e − g';   crank pilot engaged l' = l + x − s
 *
 * x taken off the pads · s shims under them, the same under each · t pad thickness · g pull-forward gap with the converter
 * fully back · e hub in the pump with the converter fully back · l pilot in the crank. All [mm].
 * The studs' start, end and tip reach x farther too; they are checked with the stud.
 * Valid: pads taken off evenly. null where a length needed was not given.   Source: geometry (first principles)
 * Example: x 0.5, s 1, g 4, e 12, l 8, t 9 → 8.5, 3.5, 8.5, 7.5 (tests/calc/cover/knockOn.test.ts)
 */
export function knockOnLengths(given: KnockOn): KnockOnLengths {
  const x = given.padsResurfacedMm ?? 0;
  const s = given.shimsMm ?? 0;
  const gap = given.pullForwardMm === null ? null : given.pullForwardMm + x - s;
  const mm = (value: number) => printNumber(value, 3);
  return {
    padThickness: answer('t′', given.padThicknessMm, (t) => [t - x, 't′ = t − x', `${mm(t)} − ${mm(x)}`]),
    pullForward: answer('g′', given.pullForwardMm, (g) => [
      g + x - s,
      'g′ = g + x − s',
      `${mm(g)} + ${mm(x)} − ${mm(s)}`,
    ]),
    hubEngagement: answer('e′', gap === null ? null : given.hubEngagementMm, (e) => [
      e - gap!,
      'e′ = e − g′',
      `${mm(e)} − ${mm(gap!)}`,
    ]),
    pilotEngaged: answer('l′', given.pilotEngagedMm, (l) => [
      l + x - s,
      'l′ = l + x − s',
      `${mm(l)} + ${mm(x)} − ${mm(s)}`,
    ]),
  };
}

function answer(
  symbol: string,
  from: number | null,
  work: (from: number) => [value: number, formula: string, numbers: string],
): Answer | null {
  if (from === null) return null;
  const [value, formula, numbers] = work(from);
  const step = {
    formula,
    numbers: `${symbol} = ${numbers} = ${printNumber(value, 3)} mm`,
    source: 'geometry (first principles)',
  };
  return { symbol, value, unit: 'mm', how: [step], warnings: [] };
}
