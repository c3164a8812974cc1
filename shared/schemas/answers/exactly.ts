import * as z from 'zod';

/** A schema for every field of a type, and for nothing else. */
export type SchemaOf<T> = {
  readonly [K in keyof T]-?: undefined extends T[K] ? z.ZodType<T[K] | undefined> : z.ZodType<T[K]>;
};

/**
 * The schema of an answer: exactly the fields of its type. One forgotten or one too many does not compile, and an
 * answer with a field that is not here does not hold.
 */
export function exactly<T extends object>(fields: SchemaOf<T>): z.ZodType<T> {
  return z.strictObject(fields as z.core.$ZodLooseShape) as unknown as z.ZodType<T>;
}

interface Named {
  readonly [key: string]: unknown;
  /** As the interface document calls it. */
  readonly id: string;
}

/** The answers that stand under a name of their own in the interface document, and are referred to by it. */
export const namedAnswers = z.registry<Named>();

export function named<S extends z.ZodType>(id: string, schema: S): S {
  namedAnswers.add(schema, { id });
  return schema;
}
