import type * as z from 'zod';
import { DECISION_KINDS } from '../words/job.ts';
import { isNoAddress, noAddress } from '../words/jobNumber.ts';
import { choice, count, list, orElse, orNull, size, strict, text, yesNo } from './fields.ts';
import {
  cutsSchema,
  lookedSchema,
  planSchema,
  readingAskedSchema,
  receivedSchema,
  sentId,
  setupSchema,
} from './job.ts';
import { jointSchema } from './studParts.ts';
import { replacedStudsSchema, retorqueSchema } from './studWork.ts';

const MOST_READINGS = 1200;
const key = (what: string) => text(what, { least: 1, most: 80 });

const who = text('The initials of whoever makes the change', { least: 1, most: 8 });
const why = orElse(text('The reason', { most: 2000, lines: true }), '');
/** The revision the sender has seen, so that nothing is decided on something nobody looked at. */
const seen = (what: string, least: number) =>
  count(`The revision of ${what} that was seen`, least, 1_000_000_000);
const edit = { fromRevision: count('The revision the change starts from', 1, 1_000_000_000), who, why };

const { familyId, customerReference, receivedOn, coverNumber, comebackOf, note } = receivedSchema.shape;
/** Places of what was asked about and is right all the same: `received.receivedOn`, `setup.ringWelded.on`, `readings.3`, `cuts.cuts.1.depthMm`. */
const confirmed = orElse(
  list('What is confirmed', text('The place', { least: 1, most: 80 }), { most: MOST_READINGS }),
  [],
);

/** The family is taken from the catalog, as it is on that day. */
const receivedAsked = strict('What came in', {
  familyId,
  customerReference: orElse(customerReference, ''),
  receivedOn,
  coverNumber,
  comebackOf,
  note: orElse(note, ''),
});

/** What makes a job: JSON sends it, and a form is read into it. */
export const receiveJobSchema = strict('The request', {
  id: orNull(sentId('The id of the request')),
  number: orNull(
    text('The job number', { least: 1, most: 40 }).refine((number) => !isNoAddress(number), {
      error: (sent) => noAddress(String(sent.input)),
    }),
  ),
  who,
  received: receivedAsked,
  confirmed,
});

/** What each section's call takes; the section itself stands under its own name. */
export const sectionCallSchemas = {
  received: strict('The request', { ...edit, received: receivedAsked, confirmed }),
  looked: strict('The request', { ...edit, looked: lookedSchema }),
  setup: strict('The request', { ...edit, setup: setupSchema, confirmed }),
  plan: strict('The request', { ...edit, plan: planSchema, confirmed }),
  cuts: strict('The request', { ...edit, cuts: cutsSchema, confirmed }),
  decision: strict('The request', {
    ...edit,
    decision: strict('The decision', {
      decision: choice('The decision', DECISION_KINDS),
      reason: orElse(text('The reason for the decision', { most: 2000, lines: true }), ''),
      criteriaRevision: seen('the shop limits', 0),
    }),
  }),
  studs: strict('The request', {
    ...edit,
    studs: strict('The studs', {
      stackId: key('The stack'),
      studId: key('The stud'),
      stackRevision: seen('the stack', 1),
      studRevision: seen('the stud', 1),
      criteriaRevision: seen('the shop limits', 0),
      pullForwardMm: orNull(size('The pull-forward gap')),
      note: orElse(text('The note', { most: 2000, lines: true }), ''),
      joint: orNull(jointSchema),
      replaced: orNull(replacedStudsSchema),
      retightening: orNull(retorqueSchema),
      torqueFrom: orNull(choice('Whose torque it is', ['maker', 'other'])),
    }),
    confirmed,
  }),
  signature: strict('The request', {
    ...edit,
    signature: strict('The signature', {
      statement: orElse(text('The statement', { most: 2000, lines: true }), ''),
    }),
  }),
  closed: strict('The request', {
    ...edit,
    closed: strict('The closing', { closed: yesNo('Whether the job is closed') }),
  }),
} as const;

export type SectionCall<S extends keyof typeof sectionCallSchemas> = z.output<(typeof sectionCallSchemas)[S]>;

export const addReadingsSchema = strict('The request', {
  who,
  why,
  readings: list('The readings', readingAskedSchema, { least: 1, most: MOST_READINGS }),
  confirmed,
});
