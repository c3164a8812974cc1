import { z } from 'zod';
import { faultsOf } from '../../shared/schemas/faultsOf.ts';
import type { Fault } from '../../shared/words/refusal.ts';

/** A deep copy of a plain object with one field set, by dotted path; `undefined` takes the field out. */
export function changed<T>(whole: T, path: string, value: unknown): unknown {
  const copy: unknown = structuredClone(whole);
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  let at = copy as Record<string, unknown>;
  for (const step of steps) at = at[step] as Record<string, unknown>;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return copy;
}

/** The faults a schema finds; none when it takes the value. */
export function faults(schema: z.ZodType, value: unknown): Fault[] {
  const read = schema.safeParse(value);
  return read.success ? [] : faultsOf(read.error);
}

/** The value a schema makes of it; throws with the faults when it refuses. */
export function taken<T>(schema: z.ZodType<T>, value: unknown): T {
  const read = schema.safeParse(value);
  if (!read.success) throw new Error(z.prettifyError(read.error));
  return read.data;
}
