import * as z from 'zod';
import type { Fault } from '../../words/refusal.ts';
import { exactly, named } from './exactly.ts';
import { text } from './finding.ts';

const error = z.strictObject({
  code: text,
  message: text.describe('One sentence.'),
  fields: z.array(
    exactly<Fault>({
      path: text.describe('Dotted, as in stations.3.faceMm; empty for the whole.'),
      message: text,
    }),
  ),
});

/** The one shape errors have. */
export const errorAnswer = named('Error', z.strictObject({ error }));

/** An error with something beside it: for a change that came too late, both versions. */
export function errorBeside<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject({ error, ...shape });
}
