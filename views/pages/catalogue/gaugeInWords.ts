import type { CatalogueGauge } from '../../../shared/words/catalogue.ts';
import { printDay } from '../../../shared/words/day.ts';
import { briefLength, type LengthUnit } from '../../../shared/words/print.ts';

export function gaugeInWords(gauge: CatalogueGauge, unit: LengthUnit): string {
  const length = (mm: number) => briefLength(mm, unit);
  return [
    gauge.gaugeKind,
    ...(gauge.resolutionMm === null ? [] : [`steps of ${length(gauge.resolutionMm)}`]),
    ...(gauge.calibrationUMm === null
      ? ['no certificate']
      : [`U ${length(gauge.calibrationUMm)}, k ${gauge.coverageFactor}`]),
    gauge.dueOn === null ? 'no calibration date' : `calibration due ${printDay(gauge.dueOn)}`,
  ].join('; ');
}
