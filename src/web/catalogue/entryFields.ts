import { type FieldLine, linesOf, type Telling } from '../../../shared/quantity/fieldLines.ts';
import type {
  CatalogueNut,
  CatalogueStack,
  CatalogueStud,
  EntryBodies,
  EntryKind,
  Family,
  ShopCriteria,
} from '../../../shared/words/catalogue.ts';
import { COVER_LIMITS, CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { lowerFirst } from '../../../shared/words/fields/field.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import { LINING } from '../../../shared/words/fields/lining.ts';
import { STEEL } from '../../../shared/words/fields/steel.ts';
import {
  CATALOGUE_NUT,
  CATALOGUE_STACK,
  CATALOGUE_STUD,
  CATALOGUE_WASHER,
  LAYER,
} from '../../../shared/words/fields/stud.ts';
import { type InspectionList, ITEM_KIND_WORD, limitsOfItem } from '../../../shared/words/inspection.ts';
import { type NamedKind, namedText } from './chosen.ts';

/** An entry of the catalog or the shop's criteria, field by field with units. */
export function entryFields<K extends EntryKind>(
  kind: K,
  body: EntryBodies[K],
  telling: Telling,
): FieldLine[] {
  switch (kind) {
    case 'family':
      return familyFields(body as Family, telling);
    case 'stud':
      return studFields(body as CatalogueStud, telling);
    case 'stack':
      return stackFields(body as CatalogueStack, telling);
    case 'nut':
      return nutFields(body as CatalogueNut, telling);
    case 'washer':
      return linesOf(CATALOGUE_WASHER, body, telling);
    case 'gauge':
      return linesOf(GAUGE, body, telling);
    case 'steel':
      return linesOf(STEEL, body, telling);
    case 'lining':
      return linesOf(LINING, body, telling);
    case 'lathe':
      return linesOf(CATALOGUE_LATHE, body, telling);
    case 'checklist':
      return listFields(body as InspectionList, telling);
    default:
      return criteriaFields(body as ShopCriteria, telling);
  }
}

/** An inspection list, item by item. */
function listFields(body: InspectionList, { lengthUnit }: Telling): FieldLine[] {
  return [
    { label: 'Name', value: body.name },
    {
      label: 'Cover types',
      value: body.familyIds.length === 0 ? 'every cover type' : body.familyIds.join(', '),
    },
    ...body.items.map((item) => ({
      label: item.name,
      value: [ITEM_KIND_WORD[item.kind], limitsOfItem(item, lengthUnit), item.how]
        .filter((one) => one !== '')
        .join('; '),
    })),
    { label: 'Source', value: body.source },
    { label: 'Note', value: body.note },
  ];
}

export function familyFields(body: Family, telling: Telling): FieldLine[] {
  const line = (kind: NamedKind) => [{ label: FAMILY[kind].label, value: namedText(kind, body) }];
  return linesOf(FAMILY, body, telling, { made: { steel: line('steel'), lining: line('lining') } });
}

export function studFields(body: CatalogueStud, telling: Telling): FieldLine[] {
  const { designation } = body.stud.thread;
  const read = designation === body.threadTyped ? undefined : designation;
  return linesOf(CATALOGUE_STUD, body, telling, { beside: { threadTyped: read } });
}

function nutFields(body: CatalogueNut, telling: Telling): FieldLine[] {
  const designation = body.nut.thread?.designation;
  const read = designation === body.threadTyped ? undefined : designation;
  return linesOf(CATALOGUE_NUT, body, telling, { beside: { threadTyped: read } });
}

export function stackFields(body: CatalogueStack, telling: Telling): FieldLine[] {
  const { name, stack, ...rest } = CATALOGUE_STACK;
  const layers = body.stack.layers.flatMap((layer, i) => {
    const [layerName, ...figures] = linesOf(LAYER, layer, telling, { at: `stack.layers.${i}.` });
    const of = `${LAYER.name.label} ${i + 1}`;
    return [
      { label: of, value: layerName?.value ?? '' },
      ...figures.map(({ label, value }) => ({ label: `${of}: ${lowerFirst(label)}`, value })),
    ];
  });
  return [
    ...linesOf({ name }, body, telling),
    ...linesOf(stack.fields, body.stack, telling, { at: 'stack.', made: { layers } }),
    ...linesOf(rest, body, telling),
  ];
}

export function criteriaFields(body: ShopCriteria, telling: Telling): FieldLine[] {
  return linesOf(CRITERIA, body, telling);
}

/** The limits a cover is judged by, as the sheet of a job prints them, with how its formula gave the minimum. */
export function coverLimitFields(body: ShopCriteria, working: string | null, telling: Telling): FieldLine[] {
  const minimumWallFormula = working === null ? undefined : `here ${working}`;
  return linesOf(COVER_LIMITS, body, telling, { beside: { minimumWallFormula } });
}
