import type * as z from 'zod';
import { CUT, INSPECTED, LOOKED, PLAN, RECEIVED } from '../words/fields/job.ts';
import { SETUP } from '../words/fields/setup.ts';
import { RING_WELDED } from '../words/fields/weld.ts';
import {
  type CutPlan,
  type CutsMade,
  LOOK_ITEMS,
  type Looked,
  type MeasuringSetup,
  type NewReading,
  type Received,
} from '../words/job.ts';
import { keptFamilySchema } from './catalogue.ts';
import { latheChosenSchema } from './chosen.ts';
import { angle, choice, count, height, list, orElse, orNull, radius, strict, text, yesNo } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { catalogueGaugeSchema } from './gauge.ts';
import { across } from './studParts.ts';
import { notTypedFor } from './typedAs.ts';

const MOST_STATIONS = 400;
const typed = text('What was typed', { most: 60 });
const key = (what: string) => text(what, { least: 1, most: 80 });

export const receivedSchema = strict(
  'What came in',
  shapeOf(RECEIVED, {
    familyId: key('The cover type'),
    familyRevision: count('The cover type’s revision', 1, 1_000_000),
    family: keptFamilySchema,
  }),
) satisfies z.ZodType<Received>;

export const lookedSchema = strict(
  'The inspection',
  shapeOf(LOOKED, {
    items: list(
      'The items inspected',
      strict('The entry', { ...shapeOf(INSPECTED), item: choice('The name', LOOK_ITEMS) }),
      { most: LOOK_ITEMS.length },
    ),
  }),
).superRefine(
  across<Looked>(({ items }, refuse) => {
    for (const [i, { item, result, final }] of items.entries()) {
      if (items.findIndex((other) => other.item === item) < i) {
        refuse(['items', i, 'item'], `"${item}" is listed twice among the items looked at; give it once.`);
      }
      if (final && result !== 'fault') {
        refuse(
          ['items', i, 'final'],
          `"${item}" is marked beyond repair but not as a fault; mark it as a fault, or take the mark off.`,
        );
      }
    }
  }),
) satisfies z.ZodType<Looked>;

export const setupSchema = strict(
  'How it is measured',
  shapeOf(SETUP, {
    gauges: orElse(
      list(
        'The gauges chosen',
        strict('The entry', {
          use: choice('The use', ['wall', 'face']),
          id: key('The gauge'),
          revision: count('The gauge’s revision', 1, 1_000_000),
          gauge: catalogueGaugeSchema,
        }),
        { most: 2 },
      ),
      [],
    ),
    stations: list(
      'The stations',
      strict('The entry', { angleDeg: angle('The angle'), radiusMm: radius('The radius') }),
      {
        most: MOST_STATIONS,
      },
    ),
    ringWelded: orNull(strict('The welding of the ring', shapeOf(RING_WELDED))),
  }),
) satisfies z.ZodType<Required<MeasuringSetup>>;

export const planSchema = strict(
  'The cut plan',
  shapeOf(PLAN, { typed, lathe: orNull(latheChosenSchema) }),
).superRefine(
  across<CutPlan>(({ plannedCutMm, typed }, refuse) => {
    const fault = notTypedFor('the planned cut', typed, plannedCutMm);
    if (fault !== null) refuse(['typed'], fault);
  }),
) satisfies z.ZodType<CutPlan>;

export const cutsSchema = strict('The cuts made', {
  cuts: list('The cuts', strict('The entry', shapeOf(CUT, { typed })), { most: 100 }),
}).superRefine(
  across<CutsMade>(({ cuts }, refuse) => {
    for (const [i, { depthMm, typed }] of cuts.entries()) {
      const fault = notTypedFor(`pass ${i + 1}`, typed, depthMm);
      if (fault !== null) refuse(['cuts', i, 'typed'], fault);
    }
  }),
) satisfies z.ZodType<CutsMade>;

/** An id made by whoever sends something, so that sending it twice is harmless. */
export const sentId = (what: string) =>
  text(what, { least: 1, most: 64 }).refine((value) => /^[A-Za-z0-9-]{16,64}$/.test(value), {
    error: `${what} must be 16 to 64 letters, digits or hyphens, as a UUID is.`,
  });

/** A reading on its way into the records. No value withdraws the reading it replaces. */
const READING = {
  pass: choice('The pass', ['before', 'after']),
  kind: choice('The kind of reading', ['wall', 'face', 'mark']),
  angleDeg: angle('The angle'),
  radiusMm: radius('The radius'),
  valueMm: orNull(height('The reading')),
  typed,
  gauge: text('The gauge', { most: 120 }),
  doubtful: orElse(yesNo('Whether the reading is doubtful'), false),
  replaces: orNull(sentId('The id of the reading it replaces')),
};

const soundReading = across<NewReading>(({ id: own, kind, valueMm, typed, replaces }, refuse) => {
  if (kind === 'wall' && valueMm !== null && valueMm <= 0) {
    refuse(['valueMm'], `The wall is ${valueMm} mm; it must be more than 0 mm.`);
  } else if (kind === 'mark' && valueMm !== null && valueMm < 0) {
    refuse(['valueMm'], `The depth of the mark is ${valueMm} mm; it must be at least 0 mm.`);
  } else if (valueMm !== null) {
    const fault = notTypedFor('the reading', typed, valueMm);
    if (fault !== null) refuse(['typed'], fault);
  } else if (replaces === null) {
    refuse(['valueMm'], 'The reading has no value; give it in mm, or name the reading it withdraws.');
  }
  if (replaces === own) refuse(['replaces'], 'The reading replaces itself; name the earlier one.');
});

export const readingSchema = strict('The reading', {
  id: sentId('The reading’s id'),
  ...READING,
}).superRefine(soundReading) satisfies z.ZodType<NewReading>;

/** As a call sends it: without an id it gets one, and is then added anew each time it is sent. */
export const readingAskedSchema = strict('The reading', {
  id: sentId('The reading’s id')
    .nullish()
    .transform((id) => id ?? globalThis.crypto.randomUUID()),
  ...READING,
}).superRefine(soundReading) satisfies z.ZodType<NewReading>;
