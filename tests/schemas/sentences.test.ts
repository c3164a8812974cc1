import { expect, test } from 'vitest';
import type { z } from 'zod';
import {
  catalogueStackSchema,
  catalogueStudSchema,
  familySchema,
  shopCriteriaSchema,
} from '../../shared/schemas/catalogue.ts';
import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import {
  cutsSchema,
  lookedSchema,
  planSchema,
  readingSchema,
  receivedSchema,
  setupSchema,
} from '../../shared/schemas/job.ts';
import { studCheckSchema } from '../../shared/schemas/studCheck.ts';
import { studMatchSchema } from '../../shared/schemas/studMatch.ts';
import { threadSchema } from '../../shared/schemas/thread.ts';
import { faults } from './changed.ts';

const SCHEMAS: Record<string, z.ZodType> = {
  coverCheckSchema,
  studCheckSchema,
  studMatchSchema,
  threadSchema,
  familySchema,
  catalogueStudSchema,
  catalogueStackSchema,
  shopCriteriaSchema,
  receivedSchema,
  lookedSchema,
  setupSchema,
  planSchema,
  cutsSchema,
  readingSchema,
};
const ODD: unknown[] = [
  undefined,
  null,
  '',
  'x',
  0,
  -1,
  1.5,
  1e300,
  Number.NaN,
  true,
  [],
  [null],
  [[]],
  {},
  () => 0,
  1n,
  Symbol('s'),
];

/** Sets every field the schema has named so far to one odd value after another, and goes on from what it names then. */
function everyFault(schema: z.ZodType): string[] {
  const messages = new Set<string>();
  const fields = new Set<string>();
  const look = (value: unknown) => {
    for (const fault of faults(schema, value)) {
      messages.add(fault.message);
      fields.add(fault.path);
    }
  };
  for (const odd of ODD) look(odd);
  for (let round = 0; round < 4; round++) {
    for (const odd of ODD) {
      const whole: Record<string, unknown> = {};
      for (const path of fields) put(whole, path.split('.'), odd);
      look(whole);
      for (const path of fields) {
        const one: Record<string, unknown> = {};
        put(one, path.split('.'), odd);
        look(one);
      }
    }
  }
  return [...messages];
}

function put(into: Record<string, unknown>, [step, ...rest]: string[], value: unknown): void {
  if (step === undefined || step === '') return;
  if (rest.length === 0) {
    if (typeof into[step] !== 'object' || into[step] === null) into[step] = value;
    return;
  }
  const list = /^\d+$/.test(rest[0] ?? '');
  if (typeof into[step] !== 'object' || into[step] === null || Array.isArray(into[step]) !== list) {
    into[step] = list ? [] : {};
  }
  put(into[step] as Record<string, unknown>, rest, value);
}

test.each(Object.entries(SCHEMAS))('%s speaks in whole sentences, whatever is sent', (_name, schema) => {
  const messages = everyFault(schema);
  expect(messages.length).toBeGreaterThan(4);
  for (const message of messages) {
    expect(message).toMatch(/^["A-Z].*[.?]$/s);
    expect(message).not.toMatch(/invalid|expected|\breceived\b|undefined|NaN|\[object|null/i);
  }
});
