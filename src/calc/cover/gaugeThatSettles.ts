import type { GaugeAtHand } from '../../../shared/words/cover.ts';
import { conformanceProbability } from '../measure/conformanceProbability.ts';
import type { Doubt } from './whatWouldSettle.ts';

/** Nobody reads one wall more often than this. */
const MOST_READINGS = 30;

/**
 * Which gauge of the shop would bring a doubtful wall over its confidence, and with how many readings at every station.
 *   P(u_cal, a, s/√n of the gauge; u_cut, u_z as they are) ≥ p, for the least n; of gauges with one n the coarsest
 *
 * P conformance probability · u_cal = U/k, a resolution, s spread of one reading, of the gauge asked about [mm]; what
 * is not known of it is taken as the present gauge's. u_cut cut setting, u_z indicator.
 * Valid: no margin negative, and the walls read the same. null when no gauge would.
 * Source: first principles, on conformanceProbability
 * Example: tests/calc/cover/gaugeThatSettles.test.ts
 */
export function gaugeThatSettles(
  doubt: Doubt,
  atHand: readonly GaugeAtHand[],
): { readonly name: string; readonly readings: number } | null {
  const found = atHand.flatMap((gauge) => {
    const calibrationMm = gauge.standardUncertaintyMm ?? doubt.calibrationMm;
    const resolutionMm = gauge.resolutionMm ?? doubt.resolutionMm;
    const spreadMm = gauge.repeatabilityMm ?? doubt.repeatabilityMm;
    const sure = (readings: number) =>
      conformanceProbability({
        marginsMm: doubt.marginsMm,
        commonMm: Math.hypot(calibrationMm, doubt.cutSettingMm),
        ownMm: doubt.marginsMm.map(() =>
          Math.hypot(resolutionMm / Math.sqrt(12), spreadMm / Math.sqrt(readings), doubt.indicatorMm),
        ),
      }) >= doubt.confidence;
    if (!sure(MOST_READINGS)) return [];
    let readings = 1;
    while (!sure(readings)) readings++;
    return [{ name: gauge.name, readings, coarse: Math.hypot(calibrationMm, resolutionMm, spreadMm) }];
  });
  const [best] = found.sort((a, b) => a.readings - b.readings || b.coarse - a.coarse);
  return best ? { name: best.name, readings: best.readings } : null;
}
