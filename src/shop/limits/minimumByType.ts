import type { Entry, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { type LengthUnit, listInWords, printLength } from '../../../shared/words/print.ts';
import { shopMinimum } from '../limitsFor.ts';
import { minimumByFormula } from './minimumFormula.ts';

/** The shop’s minimum wall of one cover type, as it stands and under limits that are not saved. */
export interface MinimumByType {
  readonly coverType: string;
  readonly before: string;
  readonly after: string;
}

type CoverTypes = readonly Entry<'family'>[];

/** What stands for every cover type, beside what other limits would give it. */
export function minimumsByType(
  types: CoverTypes,
  now: ShopCriteria,
  then: ShopCriteria,
  unit: LengthUnit,
): readonly MinimumByType[] {
  return types.map((type) => ({
    coverType: type.name,
    before: minimumInWords(type, now, unit),
    after: minimumInWords(type, then, unit),
  }));
}

function minimumInWords({ body }: CoverTypes[number], limits: ShopCriteria, unit: LengthUnit): string {
  const { mm, formula, working } = shopMinimum(body, { ...limits, lengthUnit: unit });
  if (formula !== null) return mm === null ? `none: ${working}` : (working ?? '');
  if (mm === null) return 'none';
  return `${printLength(mm, unit)}${body.shopMinimumWallMm === mm ? ', its own' : ''}`;
}

const MOST_NAMED = 3;

/** Which cover types a kept formula gives no length above zero for, in a sentence; null where it gives every type one. */
export function typesWithoutMinimum(formula: string, types: CoverTypes, unit: LengthUnit): string | null {
  const without = types.flatMap(({ name, body }) => {
    const { mm, working } = minimumByFormula(formula, body, unit);
    return mm === null ? [`${name}: ${working}`] : [];
  });
  if (without.length === 0) return null;
  const more = without.length - MOST_NAMED;
  const named = without.slice(0, MOST_NAMED);
  return `It gives no minimum for ${listInWords(more > 0 ? [...named, `${more} more`] : named)}.`;
}
