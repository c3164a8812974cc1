import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * Torque at which the flexplate slips on the pads.   T = µ N F r
 *   µ friction between pad and plate [-] · N studs [-] · F preload of each [N] · r bolt circle radius [mm]
 *   Valid: equal preloads, one slipping face; a preload below 0 holds nothing.   Source: first principles
 *   Example: µ 0.15, 6 studs, 7300 N, r 143 → 939 N·m (calc/stud/joint/joint.test.ts)
 */
export function slipTorque({
  friction,
  studCount,
  preloadN,
  radiusMm,
}: {
  friction: number;
  studCount: number;
  preloadN: number;
  radiusMm: number;
}): Answer & { readonly value: number } {
  const F = Math.max(0, preloadN);
  const value = (friction * studCount * F * radiusMm) / 1000;
  return {
    symbol: 'T_slip',
    value,
    unit: 'N·m',
    how: [
      {
        formula: 'T = µ N F r',
        numbers: `T = ${friction} · ${studCount} · ${printNumber(F, 0)} N · ${printNumber(radiusMm, 1)} mm = ${printNumber(value, 0)} N·m`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
}
