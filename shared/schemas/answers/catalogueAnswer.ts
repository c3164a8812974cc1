import { z } from 'zod';
import type { CatalogueStack, CatalogueStud, Entry, EntryBodies, EntryKind } from '../../words/catalogue.ts';
import { keptFamilySchema, shopCriteriaSchema } from '../catalogue.ts';
import { catalogueGaugeSchema } from '../gauge.ts';
import { exactly, named } from './exactly.ts';
import { number, numberOrNull, text, textOrNull, yes } from './finding.ts';
import { asKept } from './kept.ts';
import { keptNut, keptStack, keptStud } from './studAnswer.ts';

/** What the catalogue keeps, by kind, as it leaves. */
export const entryBodies: { readonly [K in EntryKind]: z.ZodType<EntryBodies[K]> } = {
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
      note: text,
    }),
  ),
  gauge: named('CatalogueGauge', asKept(catalogueGaugeSchema)),
  criteria: named('Criteria', asKept(shopCriteriaSchema)),
};

function entryOf<K extends EntryKind>(kind: K) {
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
};
