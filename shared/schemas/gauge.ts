import * as z from 'zod';
import type { CatalogueGauge } from '../words/catalogue.ts';
import { GAUGE } from '../words/fields/gauge.ts';
import { GAUGE_STUDY } from '../words/fields/gaugeStudy.ts';
import type { StudyPlan } from '../words/gauges/gaugeStudies.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';

/** A gauge as the catalog keeps it. */
export const catalogueGaugeSchema = strict('The gauge', shapeOf(GAUGE)) satisfies z.ZodType<CatalogueGauge>;

/** What is read in a study of a gauge, and by whom; the initials are checked one by one where they are typed. */
export const studyPlanSchema = strict(
  'The study',
  shapeOf(GAUGE_STUDY, {
    people: z.array(z.string()),
  }),
) satisfies z.ZodType<StudyPlan>;
