import type { z } from 'zod';
import type { CatalogueGauge } from '../words/catalogue.ts';
import { GAUGE } from '../words/fields/gauge.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';

/** A gauge as the catalog keeps it. */
export const catalogueGaugeSchema = strict('The gauge', shapeOf(GAUGE)) satisfies z.ZodType<CatalogueGauge>;
