import type { CatalogueGauge, Entry, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import type { GaugeTyped } from '../../../views/parts/entryDrawnPart.tsx';
import { gaugeExpected } from '../../shop/doubts/coverExpected.ts';
import { gaugeReading, leastSpare } from '../../shop/gauges.ts';
import type { TypedForm } from '../request/typed.ts';
import { figuresDrawn, notDrawn } from './figuresDrawn.ts';

const { resolutionMm, calibrationUMm, coverageFactor, repeatabilityMm } = GAUGE;
const DRAWN = { resolutionMm, calibrationUMm, coverageFactor, repeatabilityMm };

/** How sure one reading with the gauge in these boxes is, beside what it is used for. */
export function gaugeDrawn(
  form: TypedForm,
  limits: ShopCriteria,
  families: readonly Entry<'family'>[],
): GaugeTyped {
  const kinds = Object.keys(GAUGE.gaugeKind.options) as CatalogueGauge['gaugeKind'][];
  const gaugeKind = form.choice('gaugeKind', kinds) ?? GAUGE.gaugeKind.ifEmpty;
  const figures = figuresDrawn(form, DRAWN, gaugeExpected(gaugeKind));
  const k = figures.coverageFactor ?? GAUGE.coverageFactor.ifEmpty;
  const reading = gaugeReading(
    { ...figures, gaugeKind, coverageFactor: k },
    limits,
    leastSpare(
      families.map(({ body }) => body),
      limits,
    ),
  );
  return { kind: 'gauge', reading, leftOut: notDrawn(form) };
}
