import * as z from 'zod';
import type { CatalogueLining, Chosen } from '../words/catalogue.ts';
import { LINING } from '../words/fields/lining.ts';
import { STEEL } from '../words/fields/steel.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';

/** A lining as the catalog keeps it. */
export const catalogueLiningSchema = strict(
  'The lining',
  shapeOf(LINING),
) satisfies z.ZodType<CatalogueLining>;

/** An entry at the revision it was chosen at. */
const at = { id: z.string(), revision: z.int() };

export const steelChosenSchema = strict('The steel of the cover type', {
  ...at,
  steel: strict('The steel', shapeOf(STEEL)),
}) satisfies z.ZodType<Chosen<'steel'>>;

export const liningChosenSchema = strict('The lining of the cover type', {
  ...at,
  lining: catalogueLiningSchema,
}) satisfies z.ZodType<Chosen<'lining'>>;
