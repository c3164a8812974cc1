import type { StiffnessAnswer, StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { coverAnswers } from './coverAnswers.ts';
import { refuseCover } from './model/refuseCover.ts';
import { refuseNoNumber } from './refuseNoNumber.ts';
import { solveCover } from './solveCover.ts';
import { wallForPeak } from './wallForPeak.ts';

/** Kept with every saved decision that bending was worked out for; goes up whenever a number moves. */
export const PLATE_CALC_VERSION = 'plate-3';

/**
 * How the cover bends under the lock-up pressure, and how evenly its lining presses. Advice. A ring counts only when it
 * is welded to the pads all around; any other is left out.
 *
 * Valid: thin plate, small deflection, elastic; the answer's warnings say where that is left.
 * Source: this program’s own model   Example: the example’s cover
 * (tests/calc/plate/bendCover.test.ts)
 * Throws: a Refusal of a geometry that makes no cover (refuseCover.ts), or where the bending cannot be solved.
 */
export function bendCover(input: StiffnessInput): StiffnessAnswer {
  refuseCover(input);
  const counted = input.ring?.joinedToPads === true ? input : { ...input, ring: null };
  const wall = input.peakLimit === null ? null : wallForPeak({ input: counted, peakLimit: input.peakLimit });
  return refuseNoNumber(coverAnswers(input, solveCover(counted), wall));
}
