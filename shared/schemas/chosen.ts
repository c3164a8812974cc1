import * as z from 'zod';
import type { CatalogueLathe, CatalogueLining, Chosen, LatheSettings } from '../words/catalogue.ts';
import { CATALOGUE_LATHE } from '../words/fields/lathe.ts';
import { LINING } from '../words/fields/lining.ts';
import { STEEL } from '../words/fields/steel.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { across } from './studParts.ts';

/** A lining as the catalog keeps it. */
export const catalogueLiningSchema = strict(
  'The lining',
  shapeOf(LINING),
) satisfies z.ZodType<CatalogueLining>;

/** A lathe as the catalog keeps it. */
export const catalogueLatheSchema = strict('The lathe', shapeOf(CATALOGUE_LATHE)).superRefine(
  across<CatalogueLathe>((lathe, refuse) => refuseRange(lathe, (key, message) => refuse([key], message))),
) satisfies z.ZodType<CatalogueLathe>;

/** The range of a lathe, of the catalog's and of the shop's. */
export function refuseRange(
  { leastRpm, mostRpm }: LatheSettings,
  refuse: (key: 'leastRpm', message: string) => void,
): void {
  if (leastRpm <= mostRpm) return;
  refuse(
    'leastRpm',
    `The minimum rpm is ${leastRpm} rpm; it must be no more than the maximum, ${mostRpm} rpm.`,
  );
}

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

export const latheChosenSchema = strict('The lathe of the cut plan', {
  ...at,
  lathe: catalogueLatheSchema,
}) satisfies z.ZodType<Chosen<'lathe'>>;
