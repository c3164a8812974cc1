import { conformanceProbability } from '../measure/conformanceProbability.ts';

export interface Doubt {
  readonly marginsMm: readonly number[];
  readonly confidence: number;
  readonly calibrationMm: number;
  readonly cutSettingMm: number;
  readonly indicatorMm: number;
  readonly resolutionMm: number;
  /** Spread of one reading. */
  readonly repeatabilityMm: number;
  /** How many readings each station has. */
  readonly readings: readonly number[];
}

export type Settled =
  | { readonly by: 'repeats'; readonly readings: number }
  /** A gauge and an indicator whose uncertainties are at most this share of the present ones. */
  | { readonly by: 'gauge'; readonly share: number }
  | { readonly by: 'nothing' };

/** Nobody reads one wall more often than this. */
const MOST_READINGS = 30;
/** A gauge twenty times better is not to be had. */
const FINEST_SHARE = 0.05;

/**
 * What would bring a doubtful wall over the shop's confidence, were the means to stay as they are.
 *   least n with P(s/√n) ≥ p;  else the largest share k with P(k·u_cal, k·a, k·s, k·u_z) ≥ p;  else nothing
 *
 * P conformance probability · s spread of one reading, n readings at every station · u_cal, a, u_z gauge
 * calibration, resolution, indicator [mm]. The setting of the cut is no matter of measuring and stays.
 * Valid: no margin negative.   Source: first principles, on conformanceProbability
 * Example: tests/calc/cover/whatWouldSettle.test.ts
 */
export function whatWouldSettle(doubt: Doubt): Settled {
  const probability = (readings: number, share: number) =>
    conformanceProbability({
      marginsMm: doubt.marginsMm,
      commonMm: Math.hypot(share * doubt.calibrationMm, doubt.cutSettingMm),
      ownMm: doubt.readings.map((n) =>
        Math.hypot(
          (share * doubt.resolutionMm) / Math.sqrt(12),
          (share * doubt.repeatabilityMm) / Math.sqrt(Math.max(n, readings)),
          share * doubt.indicatorMm,
        ),
      ),
    });
  const sure = (readings: number, share: number) => probability(readings, share) >= doubt.confidence;

  if (doubt.repeatabilityMm > 0 && sure(MOST_READINGS, 1)) {
    let [low, high] = [1, MOST_READINGS];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (sure(middle, 1)) high = middle;
      else low = middle;
    }
    return { by: 'repeats', readings: high };
  }
  if (!sure(1, FINEST_SHARE)) return { by: 'nothing' };
  let [low, high] = [FINEST_SHARE, 1];
  while (high - low > 0.005) {
    const middle = (low + high) / 2;
    if (sure(1, middle)) low = middle;
    else high = middle;
  }
  return { by: 'gauge', share: low };
}
