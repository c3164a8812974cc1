import { z } from 'zod';

/**
 * What a request schema takes, as it comes back out of the records: the same fields without their bounds, because
 * what was kept under earlier bounds still reads. A field that may be left out when it is sent may be missing in what
 * was kept before it was there. A new field of a request is so in its answer too.
 */
export function asKept<S extends z.ZodType>(schema: S): z.ZodType<z.output<S>> {
  const { description } = schema;
  const kept = withoutBounds(schema);
  return (description === undefined ? kept : kept.describe(description)) as unknown as z.ZodType<z.output<S>>;
}

/** The same for the fields of a request schema, to put others beside them. */
export function keptFields<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const fields = Object.entries(shape).map(([name, schema]) => [name, asKept(schema as z.ZodType)]);
  return Object.fromEntries(fields) as { [K in keyof Shape]: z.ZodType<z.output<Shape[K]>> };
}

function withoutBounds(schema: z.ZodType): z.ZodType {
  if (schema instanceof z.ZodObject) return z.strictObject(keptFields(schema.shape));
  if (schema instanceof z.ZodArray) return z.array(asKept(schema.element as z.ZodType));
  if (schema instanceof z.ZodNullable) return asKept(schema.unwrap() as z.ZodType).nullable();
  if (schema instanceof z.ZodOptional) return asKept(schema.unwrap() as z.ZodType).optional();
  if (schema instanceof z.ZodPipe) return withoutTransform(schema);
  if (schema instanceof z.ZodNumber) return schema.format === 'safeint' ? z.int() : z.number();
  if (schema instanceof z.ZodString) return z.string();
  if (schema instanceof z.ZodBoolean || schema instanceof z.ZodEnum) return schema;
  throw new Error(`A request schema of the type ${schema.type} has no form in which it is kept.`);
}

/** A list that is counted before it is read, or a field that may be left out: then null, or what stands for it. */
function withoutTransform({ in: before, out: after }: z.ZodPipe): z.ZodType {
  if (before instanceof z.ZodTransform) return asKept(after as z.ZodType);
  if (!(before instanceof z.ZodOptional) || !(after instanceof z.ZodTransform))
    return asKept(before as z.ZodType);
  const given = asKept((before.unwrap() as z.ZodNullable).unwrap() as z.ZodType);
  const leftOut: unknown = before.pipe(after).parse(undefined);
  return leftOut === null ? given.nullish() : given.optional();
}
