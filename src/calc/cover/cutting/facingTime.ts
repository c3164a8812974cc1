import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';

/**
 * Time of one facing pass at constant spindle speed.   t = (r_o − r_i)/(f·N)
 *
 * r_o, r_i outer and inner radius of the friction surface [mm] · f feed [mm/rev] · N spindle speed [rpm]; t in seconds.
 * Valid: cutting time only; approach and return are not in it.   Source: first principles
 * Example: Ø 264 to 214, f 0.1, N 200 → 75 s (tests/published/machining.test.ts)
 */
export function facingTime({
  trackInnerDiameterMm,
  trackOuterDiameterMm,
  feedMm,
  spindleRpm,
}: {
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly feedMm: number;
  readonly spindleRpm: number;
}): Answer {
  const wayMm = (trackOuterDiameterMm - trackInnerDiameterMm) / 2;
  const value = (60 * wayMm) / (feedMm * spindleRpm);
  return {
    symbol: 't',
    value,
    unit: 's',
    how: [
      {
        formula: 't = (r_o − r_i)/(f·N)',
        numbers: `t = 60 s/min · ${printNumber(wayMm, 1)} mm / (${feedMm} mm · ${printNumber(spindleRpm, 1)} rpm) = ${printNumber(value, 1)} s`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
}
