import type { CatalogueGauge } from '../../../shared/words/catalogue.ts';
import type { StudyMeans } from '../../../shared/words/gauges/gaugeStudies.ts';
import { calibrationUncertainty } from '../../calc/measure/calibrationUncertainty.ts';
import { sureMargin } from '../../calc/measure/sureMargin.ts';
import { calibrationOf } from '../gauges.ts';

/**
 * How far above the minimum one reading must be, to be as sure as the shop asks: with what the catalog has of the gauge,
 * and with what was found. What differs between people is common to all that one of them reads, as the calibration is.
 */
export function sureOfOne(
  gauge: CatalogueGauge,
  found: { readonly repeatabilityMm: number; readonly reproducibilityMm: number },
  confidence: number,
): StudyMeans {
  const calibration = calibrationOf(gauge);
  const calibrationMm = calibration === null ? 0 : calibrationUncertainty(calibration).value!;
  const stepMm = (gauge.resolutionMm ?? 0) / Math.sqrt(12);
  const margin = (commonMm: number, repeatabilityMm: number) =>
    sureMargin({
      marginsMm: [0],
      commonMm,
      ownMm: [Math.hypot(stepMm, repeatabilityMm)],
      confidence,
    });
  return {
    confidence,
    enteredMm: gauge.repeatabilityMm,
    marginEnteredMm: margin(calibrationMm, gauge.repeatabilityMm ?? 0),
    marginFoundMm: margin(Math.hypot(calibrationMm, found.reproducibilityMm), found.repeatabilityMm),
  };
}
