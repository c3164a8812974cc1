import type { NamedStack } from '../../../../shared/words/stud/stud.ts';
import { stackSum } from './stackSum.ts';

export interface StackByThickness {
  readonly id: string;
  readonly totalMm: number;
  /** The stack's total less what was measured. */
  readonly offMm: number;
  /** True when it may be the one that was measured. */
  readonly within: boolean;
}

/**
 * Which stacks of the catalog have the thickness that was measured, nearest first.
 *   within: |S − measured| ≤ how well it was measured + Σ tolerances of the layers      [mm]
 *   Valid: measured from the pad's seating face to the engine side, at a stud hole, shims included.
 *   Source: worst case by arithmetic, first principles
 *   Example: 12.9 ± 0.3 measured, 3.2 ± 0.1 and 9.5 ± 0.15 → 0.2 off, within (calc/stud/numbers/stacksByThickness.test.ts)
 */
export function stacksByThickness({
  measuredMm,
  toleranceMm,
  stacks,
}: {
  measuredMm: number;
  toleranceMm: number;
  stacks: readonly Pick<NamedStack, 'id' | 'stack'>[];
}): StackByThickness[] {
  return stacks
    .map(({ id, stack }) => {
      const { nominal, most } = stackSum(stack.layers);
      const offMm = nominal - measuredMm;
      const within = Math.abs(offMm) <= toleranceMm + (most - nominal) + 1e-9;
      return { id, totalMm: nominal, offMm, within };
    })
    .sort((a, b) => Math.abs(a.offMm) - Math.abs(b.offMm));
}
