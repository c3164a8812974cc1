import type { Usual } from '../../../shared/quantity/figureDoubt.ts';
import type { InspectionItem } from '../../../shared/words/inspection.ts';

/** What is found of an item at all: about its limits, by factors of common practice, no source; null where it has none. */
export function itemExpected({ least, most }: Pick<InspectionItem, 'least' | 'most'>): Usual | null {
  if (least !== null && most !== null) return { least: least / 2, most: 1.5 * most, signed: true };
  if (least !== null) return { least: least / 2, most: 3 * least, signed: true };
  return most === null ? null : { least: 0, most: 2 * most, signed: true };
}
