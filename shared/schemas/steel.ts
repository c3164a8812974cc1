import type * as z from 'zod';
import type { CatalogueSteel } from '../words/catalogue.ts';
import { STEEL } from '../words/fields/steel.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { across, type Refuse } from './studParts.ts';

/** A steel as the catalog keeps it. */
export const catalogueSteelSchema = strict('The steel', shapeOf(STEEL)).superRefine(
  across<CatalogueSteel>(refuseHalfHeat),
) satisfies z.ZodType<CatalogueSteel>;

/** A slab's heat takes all three: from one source, or from the shop. */
function refuseHalfHeat(steel: CatalogueSteel, refuse: Refuse): void {
  const three = ['conductivityWPerMK', 'densityKgPerM3', 'specificHeatJPerKgK'] as const;
  const blank = three.filter((key) => steel[key] === null);
  if (blank.length === 0 || blank.length === three.length) return;
  const [first] = blank;
  refuse(
    [first!],
    `The ${blank.map((key) => STEEL[key].label.toLowerCase()).join(' and the ')} ${blank.length === 1 ? 'is' : 'are'} blank. Enter conductivity, density and specific heat, or leave all three blank.`,
  );
}
