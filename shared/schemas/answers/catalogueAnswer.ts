import * as z from 'zod';
import type {
  CatalogueNut,
  CatalogueStack,
  CatalogueStud,
  Entry,
  EntryBodies,
  EntryKind,
  NutAlone,
} from '../../words/catalogue.ts';
import { catalogueWasherSchema, keptFamilySchema, shopCriteriaSchema } from '../catalogue.ts';
import { catalogueLatheSchema, catalogueLiningSchema } from '../chosen.ts';
import { catalogueGaugeSchema } from '../gauge.ts';
import { catalogueSteelSchema } from '../steel.ts';
import { exactly, named } from './exactly.ts';
import { number, numberOrNull, text, textOrNull, yes } from './finding.ts';
import { asKept } from './kept.ts';
import { keptNut, keptNutLengths, keptStack, keptStud } from './studAnswer.ts';
import { threadSpec } from './threadAnswer.ts';

const { washerMm: _, ...nutAlone } = keptNutLengths;

/** Kinds that programs are answered. */
export type AnsweredKind = Exclude<EntryKind, 'checklist'>;

/** What the catalog keeps, by kind, as it leaves. */
export const entryBodies: { readonly [K in AnsweredKind]: z.ZodType<EntryBodies[K]> } = {
  family: named('Family', asKept(keptFamilySchema)),
  stud: named(
    'CatalogueStud',
    exactly<CatalogueStud>({
      name: text,
      stud: keptStud,
      threadTyped: text.describe('The thread as typed.'),
      stock: number.nullish(),
      shelf: text.optional(),
      note: text,
    }),
  ),
  stack: named(
    'CatalogueStack',
    exactly<CatalogueStack>({
      name: text,
      stack: keptStack,
      nut: keptNut.nullable(),
      nutThreadTyped: textOrNull,
      pullForwardMm: numberOrNull,
      makerTorqueNm: number.nullish().describe('The vehicle maker’s, with its source.'),
      makerTorqueSource: text.nullish(),
      note: text,
    }),
  ),
  nut: named(
    'CatalogueNut',
    exactly<CatalogueNut>({
      name: text,
      nut: exactly<NutAlone>({ ...nutAlone, thread: threadSpec.nullable() }),
      threadTyped: text.describe('The thread as typed.'),
      stock: number.nullish(),
      shelf: text.optional(),
      note: text,
    }),
  ),
  washer: named('CatalogueWasher', asKept(catalogueWasherSchema)),
  gauge: named('CatalogueGauge', asKept(catalogueGaugeSchema)),
  steel: named('CatalogueSteel', asKept(catalogueSteelSchema)),
  lining: named('CatalogueLining', asKept(catalogueLiningSchema)),
  lathe: named('CatalogueLathe', asKept(catalogueLatheSchema)),
  criteria: named('Criteria', asKept(shopCriteriaSchema)),
};

function entryOf<K extends AnsweredKind>(kind: K) {
  return z.strictObject({
    kind: z.literal(kind),
    id: text,
    revision: z.int(),
    at: text.describe('UTC, ISO 8601.'),
    who: text,
    why: text,
    name: text,
    retired: yes,
    body: entryBodies[kind],
  } satisfies { [F in keyof Entry]: z.ZodType });
}

/** What `GET /api/catalogue/…` answers. */
export const entriesAnswers = {
  family: named('Families', z.strictObject({ entries: z.array(entryOf('family')) })),
  stud: named('Studs', z.strictObject({ entries: z.array(entryOf('stud')) })),
  stack: named('Stacks', z.strictObject({ entries: z.array(entryOf('stack')) })),
  nut: named('Nuts', z.strictObject({ entries: z.array(entryOf('nut')) })),
  washer: named('Washers', z.strictObject({ entries: z.array(entryOf('washer')) })),
  steel: named('Steels', z.strictObject({ entries: z.array(entryOf('steel')) })),
  lining: named('Linings', z.strictObject({ entries: z.array(entryOf('lining')) })),
  lathe: named('Lathes', z.strictObject({ entries: z.array(entryOf('lathe')) })),
};
