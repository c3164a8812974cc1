import type { z } from 'zod';
import { type CatalogueGauge, GAUGE_KINDS } from '../words/catalogue.ts';
import { choice, extent, orNull, quantity, strict, text } from './fields.ts';

/** A gauge as the catalogue keeps it. */
export const catalogueGaugeSchema = strict('The gauge', {
  name: text('The name', { least: 1, most: 80 }),
  gaugeKind: choice('The kind of gauge', GAUGE_KINDS),
  resolutionMm: orNull(extent('The resolution')),
  calibrationUMm: orNull(extent('The expanded uncertainty of its calibration')),
  coverageFactor: quantity('The coverage factor', '', { least: 1, most: 4 }),
  repeatabilityMm: orNull(extent('The repeatability')),
  dueOn: orNull(
    text('The day its calibration is due', { least: 10, most: 10 }).refine(isDay, {
      error: 'The day its calibration is due must be a day of the calendar, written as in 2026-11-24.',
    }),
  ),
  note: text('The note', { most: 2000, lines: true }),
}) satisfies z.ZodType<CatalogueGauge>;

function isDay(value: string): boolean {
  const date = /^\d{4}-\d\d-\d\d$/.test(value) ? new Date(`${value}T00:00:00Z`) : new Date(Number.NaN);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(value);
}
