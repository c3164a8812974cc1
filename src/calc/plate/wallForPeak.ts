import type { Warning } from '../../../shared/words/answer.ts';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { solveCover } from './solveCover.ts';

/** Of the cover's wall; nobody faces thinner. */
const THINNEST = 0.3;
const NEAR_MM = 0.002;
const MOST_TRIES = 30;
/** Of the contact, over all tries; a wall is usually found in forty. */
const MOST_ROUNDS = 300;

const TOO_MANY =
  'Finding the wall for this limit takes too long: the lining’s contact hardly settles. Check the lining modulus and the walls, or leave the limit out.';

export interface WallForPeak {
  readonly wallMm: number | null;
  /** Why there is none. */
  readonly warnings: readonly Warning[];
}

/**
 * The wall on the friction surface at which the pressure peak reaches a limit: peak(t) = limit, everything else as it is.
 *
 * Looked for from 0.3 × wall to wall by false position with halved ends (Illinois), to 0.002 mm.
 * Valid: a peak that falls as the wall grows.   Source: Dowell & Jarratt 1971, the Illinois method (from memory)
 * Throws: a Refusal where the bending cannot be solved at one of the walls tried, or takes more rounds of contact than
 * it may.
 * Example: at the wall found, the peak is the limit (tests/calc/plate/wallForPeak.test.ts)
 */
export function wallForPeak({
  input,
  peakLimit,
  mostRounds = MOST_ROUNDS,
}: {
  readonly input: StiffnessInput;
  readonly peakLimit: number;
  readonly mostRounds?: number;
}): WallForPeak {
  let rounds = 0;
  const excess = (trackWallMm: number) => {
    if (rounds > mostRounds) throw new Refusal('plate-unsolved', [{ path: 'peakLimit', message: TOO_MANY }]);
    const { peak, pressed } = solveCover({ ...input, trackWallMm });
    rounds += pressed.rounds;
    return peak.peakOverMean - peakLimit;
  };
  let [thin, thick] = [THINNEST * input.wallMm, input.wallMm];
  let [overThin, overThick] = [excess(thin), excess(thick)];
  const none = (code: string, text: string): WallForPeak => ({ wallMm: null, warnings: [{ code, text }] });
  if (overThick > 0) {
    return none(
      'peak-above-limit-at-full-wall',
      `Even with the full wall of ${input.wallMm} mm on the friction surface the peak is ${(peakLimit + overThick).toFixed(3)} times the mean, above the limit of ${peakLimit}.`,
    );
  }
  if (overThin < 0) {
    return none(
      'peak-below-limit',
      `Down to ${thin.toFixed(2)} mm on the friction surface the peak stays at ${(peakLimit + overThin).toFixed(3)} times the mean, below the limit of ${peakLimit}.`,
    );
  }
  let side = 0;
  let middle = thick;
  for (let tries = 0; tries < MOST_TRIES && thick - thin > NEAR_MM; tries++) {
    middle = (thin * overThick - thick * overThin) / (overThick - overThin);
    const over = excess(middle);
    if (Math.abs(over) < 1e-5) break;
    if (over > 0) {
      [thin, overThin] = [middle, over];
      if (side === 1) overThick /= 2;
      side = 1;
    } else {
      [thick, overThick] = [middle, over];
      if (side === -1) overThin /= 2;
      side = -1;
    }
  }
  return { wallMm: middle, warnings: [] };
}
