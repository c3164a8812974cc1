import type * as z from 'zod';
import type { NamedStud, Stud, StudCheckInput } from '../words/stud/stud.ts';
import { list, orNull, strict, text } from './fields.ts';
import { nutAsSent } from './studCheck.ts';
import {
  across,
  confirmedPlaces,
  refuseStud,
  stackSchema,
  studFields,
  studSurroundings,
} from './studParts.ts';
import { threadCallout } from './thread.ts';

const MOST_STUDS = 500;

export interface StudMatchInput extends Omit<StudCheckInput, 'stud'> {
  /** null: those of the catalogue. */
  readonly studs: readonly NamedStud[] | null;
}

const namedStud = strict('The entry', {
  id: text('The id', { least: 1, most: 80 }),
  ...studFields(threadCallout('external')),
})
  .superRefine(across<Stud & { id: string }>(refuseStud))
  .transform(({ id, ...stud }): NamedStud => ({ id, stud }));

const ASKED = {
  stack: stackSchema,
  nut: orNull(nutAsSent),
  ...studSurroundings,
  studs: orNull(
    list('The studs', namedStud, {
      least: 1,
      most: MOST_STUDS,
      empty: 'The list of studs is empty. Leave it out to match every stud of the catalog.',
    }),
  ),
};

const eachOnce = across<Pick<StudMatchInput, 'studs'>>(({ studs }, refuse) => {
  const seen = new Set<string>();
  for (const [i, { id }] of (studs ?? []).entries()) {
    if (seen.has(id))
      refuse(['studs', i, 'id'], `The id "${id}" is listed twice among the studs; make each one different.`);
    seen.add(id);
  }
});

/** Studs in a stack. null and left out are the same. */
export const studMatchSchema = strict('The request', ASKED).superRefine(
  eachOnce,
) satisfies z.ZodType<StudMatchInput>;

/** What `POST /api/stud/match` takes. */
export const studMatchRequestSchema = strict('The request', {
  ...ASKED,
  confirmed: confirmedPlaces,
}).superRefine(eachOnce);
