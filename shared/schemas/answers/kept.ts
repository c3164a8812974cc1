import * as z from 'zod';

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

type Kept<Shape> = { [K in keyof Shape]: z.ZodType<z.output<Shape[K]>> };

/** The same for the fields of a request schema, with others beside them; each is made when it is first needed. */
export function keptFields<Shape extends z.core.$ZodLooseShape>(shape: Shape): Kept<Shape>;
export function keptFields<Shape extends z.core.$ZodLooseShape, More extends object>(
  shape: Shape,
  more: More,
): Omit<Kept<Shape>, keyof More> & More;
export function keptFields(shape: z.core.$ZodLooseShape, more: object = {}): object {
  const fields = {};
  for (const name of Object.keys(shape)) {
    const get = () => asKept(shape[name] as z.ZodType);
    Object.defineProperty(fields, name, { enumerable: true, configurable: true, get });
  }
  return Object.defineProperties(fields, Object.getOwnPropertyDescriptors(more));
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
