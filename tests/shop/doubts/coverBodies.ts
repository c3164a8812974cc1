import { COVER_SHAPE, OWN_BENDING } from '../../../shared/words/fields/cover.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { type AnyFields, entriesOf } from '../../../shared/words/fields/field.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import { LINING } from '../../../shared/words/fields/lining.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { SHELF_ASKED } from '../../../shared/words/fields/shelf.ts';
import { STEEL } from '../../../shared/words/fields/steel.ts';
import {
  FAMILY_EXPECTED,
  gaugeExpected,
  OWN_BENDING_EXPECTED,
  planExpected,
  SHAPE_EXPECTED,
  SHELF_EXPECTED,
  setupExpected,
} from '../../../src/shop/doubts/coverExpected.ts';
import type { AnyExpected } from '../../../src/shop/doubts/expectedFigures.ts';
import {
  CRITERIA_EXPECTED,
  LATHE_EXPECTED,
  LINING_EXPECTED,
} from '../../../src/shop/doubts/limitsExpected.ts';
import { STEEL_EXPECTED } from '../../../src/shop/doubts/steelExpected.ts';

export type Body = readonly [
  name: string,
  fields: AnyFields,
  expected: Readonly<Record<string, AnyExpected>>,
];

/** A body and its parts, each with its own figures. */
function withParts(name: string, fields: AnyFields, expected: object): Body[] {
  const own = expected as Readonly<Record<string, AnyExpected>>;
  const parts = entriesOf(fields).flatMap(([key, field]) =>
    field.kind === 'part' ? withParts(`${name}: ${key}`, field.fields, own[key] ?? {}) : [],
  );
  const figures = Object.fromEntries(Object.entries(own).filter(([key]) => fields[key]?.kind !== 'part'));
  return [[name, fields, figures], ...parts];
}

/** The bodies that the forms of covers, gauges, limits and jobs are made of. */
export const COVER_BODIES: readonly Body[] = [
  ...withParts('a cover type', FAMILY, FAMILY_EXPECTED),
  ...withParts('a cover of no type', COVER_SHAPE, SHAPE_EXPECTED),
  ...withParts('the bending of a cover of no type', OWN_BENDING, OWN_BENDING_EXPECTED),
  ...(['micrometer', 'caliper', 'indicator', 'ultrasound'] as const).flatMap((kind) =>
    withParts(`a gauge, ${kind}`, GAUGE, gaugeExpected(kind)),
  ),
  ...withParts('a steel', STEEL, STEEL_EXPECTED),
  ...withParts('a lining', LINING, LINING_EXPECTED),
  ...withParts('a lathe', CATALOGUE_LATHE, LATHE_EXPECTED),
  ...withParts('how a cover is measured', SETUP, setupExpected(null)),
  ...withParts('a cut to try', PLAN, planExpected(null)),
  ...withParts('a cut to try, where 0.31 mm cleans up', PLAN, planExpected(0.31)),
  ...withParts('the shop’s limits', CRITERIA, CRITERIA_EXPECTED),
  ...withParts('an order held against the shelf', SHELF_ASKED, SHELF_EXPECTED),
];
