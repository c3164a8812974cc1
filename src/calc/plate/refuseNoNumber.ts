import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import { Refusal } from '../../../shared/words/refusal.ts';

/** What of an answer must be a number, and what it is called. */
const NUMBERS = {
  meanPressureMPa: 'mean pressure',
  peakOverMean: 'pressure peak over the mean',
  touchingShare: 'share that touches',
  rippleMm: 'ripple',
  bossDeflectionMm: 'deflection of the center',
  greatestStressMPa: 'greatest stress',
} as const satisfies Partial<Record<keyof StiffnessAnswer, string>>;

/**
 * The answer, once every figure in it is a number.
 *
 * Throws: a Refusal that names the figure without a number: sizes beyond what floating numbers hold.
 */
export function refuseNoNumber(answer: StiffnessAnswer): StiffnessAnswer {
  const fields = Object.keys(NUMBERS) as (keyof typeof NUMBERS)[];
  const without = fields.find((name) => !Number.isFinite(answer[name]));
  if (without === undefined) return answer;
  throw new Refusal('no-number', [
    {
      path: '',
      message: `The ${NUMBERS[without]} cannot be worked out: these sizes are too far apart. Check the walls, the lining’s modulus and Young’s modulus, and their units.`,
    },
  ]);
}
