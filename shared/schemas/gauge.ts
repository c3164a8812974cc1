import type { z } from 'zod';
import { type CatalogueGauge, GAUGE_KINDS } from '../words/catalogue.ts';
import { choice, day, extent, orNull, quantity, strict, text } from './fields.ts';

/** A gauge as the catalogue keeps it. */
export const catalogueGaugeSchema = strict('The gauge', {
  name: text('The name', { least: 1, most: 80 }),
  gaugeKind: choice('The kind of gauge', GAUGE_KINDS),
  resolutionMm: orNull(extent('The resolution')),
  calibrationUMm: orNull(extent('The expanded uncertainty of its calibration')),
  coverageFactor: quantity('The coverage factor', '', { least: 1, most: 4 }),
  repeatabilityMm: orNull(extent('The repeatability')),
  dueOn: orNull(day('The day its calibration is due')),
  note: text('The note', { most: 2000, lines: true }),
}) satisfies z.ZodType<CatalogueGauge>;
