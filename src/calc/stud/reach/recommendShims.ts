import type { PullForwardInput, ShimChoice } from '../../../../shared/words/stud/gap.ts';
import { pullForward } from './pullForward.ts';

const MOST_CHOICES = 3;

/**
 * Equal shims under every pad, out of those there are, that bring the gap within its limits and keep the hub deep enough
 * in the pump.
 *   every thickness, and every two on each other, with least ≤ total ≤ most; fewest shims first, then the total nearest
 *   the middle of those two, which are pullForward's
 *   Valid: as pullForward.ts; the same shims at every pad.   Source: pullForward.ts; the order is this program's own rule
 *   Throws: a Refusal, as pullForward.
 *   Example: gap 6, limits 3.2 to 4.8, shims 0.5, 1, 2 → 2, gap 4 (calc/stud/reach/recommendShims.test.ts)
 */
export function recommendShims(
  input: Omit<PullForwardInput, 'shimMm'>,
  thicknessesMm: readonly number[],
): ShimChoice[] {
  const bare = pullForward({ ...input, shimMm: 0 });
  if (bare.shimsMm === null) return [];
  const { least, most } = bare.shimsMm;
  const middle = (least + most) / 2;
  const sizes = [...new Set(thicknessesMm)].filter((mm) => mm > 0).sort((a, b) => a - b);
  const stacks = [[], ...sizes.map((mm) => [mm]), ...pairsOf(sizes)];
  return stacks
    .map((stack) => {
      const totalMm = stack.reduce((sum, mm) => sum + mm, 0);
      return { thicknessesMm: stack, totalMm, gapMm: bare.bareGapMm - totalMm };
    })
    .filter(({ totalMm }) => totalMm >= least - 1e-9 && totalMm <= most + 1e-9)
    .sort(
      (a, b) =>
        a.thicknessesMm.length - b.thicknessesMm.length ||
        Math.abs(a.totalMm - middle) - Math.abs(b.totalMm - middle),
    )
    .slice(0, MOST_CHOICES);
}

function pairsOf(sizes: readonly number[]): number[][] {
  return sizes.flatMap((a, i) => sizes.slice(i).map((b) => [a, b]));
}
