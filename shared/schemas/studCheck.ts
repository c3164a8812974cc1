import type * as z from 'zod';
import type { Nut, Stud, StudCheckInput } from '../words/stud/stud.ts';
import { orNull, strict } from './fields.ts';
import {
  across,
  confirmedPlaces,
  nutFields,
  refuseNut,
  refuseStud,
  stackSchema,
  studFields,
  studSurroundings,
} from './studParts.ts';
import { threadCallout } from './thread.ts';

export const nutAsSent = strict('The nut', nutFields(orNull(threadCallout('internal')))).superRefine(
  across<Nut>(refuseNut),
);

/** A stud in its stack. null and left out are the same. */
export const studCheckSchema = strict('The request', {
  stud: strict('The stud', studFields(threadCallout('external'))).superRefine(across<Stud>(refuseStud)),
  stack: stackSchema,
  nut: orNull(nutAsSent),
  ...studSurroundings,
}) satisfies z.ZodType<StudCheckInput>;

/** What `POST /api/stud/check` takes. */
export const studCheckRequestSchema = strict('The request', {
  ...studCheckSchema.shape,
  confirmed: confirmedPlaces,
});
