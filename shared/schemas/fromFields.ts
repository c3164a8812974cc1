import type * as z from 'zod';
import { KINDS } from '../quantity/units.ts';
import {
  type AnyField,
  type AnyFields,
  type BodyOf,
  entriesOf,
  type InUnits,
  inUnit,
  type MeasuredField,
  subjectOf,
} from '../words/fields/field.ts';
import {
  choice,
  count,
  day,
  extent,
  height,
  list,
  orElse,
  orNull,
  quantity,
  size,
  strict,
  text,
  yesNo,
} from './fields.ts';

const LENGTH = { size, extent, height } as const;

/** The unit a quantity is kept and sent in. */
function unitOf(kind: MeasuredField['kind']): string {
  return kind === 'stress' ? KINDS.pressure.keptIn : kind === 'angle' ? 'degrees' : KINDS[kind].keptIn;
}

/** What is sent is in the units the records keep. */
function adviceOf({ advice }: { readonly advice?: InUnits }): string | undefined {
  return advice === undefined ? undefined : inUnit(advice, 'mm');
}

function given(field: AnyField): z.ZodType | null {
  const name = subjectOf(field);
  switch (field.kind) {
    case 'made':
      return null;
    case 'size':
    case 'extent':
    case 'height':
      return LENGTH[field.kind](name);
    case 'lengths':
      return list(name, LENGTH[field.each](name), { most: field.most });
    case 'count':
      return count(name, field.least, field.most);
    case 'share':
      return quantity(name, '', field);
    case 'number':
      return quantity(name, field.unit, field, adviceOf(field));
    case 'text':
    case 'formula':
      return text(name, field);
    case 'day':
      return day(name);
    case 'choice':
      return choice(name, Object.keys(field.options) as [string, ...string[]]);
    case 'yes-no':
      return yesNo(name);
    case 'part':
      return strict(name, shapeOf(field.fields));
    default:
      return quantity(name, unitOf(field.kind), field, adviceOf(field));
  }
}

function schemaOf(field: AnyField): z.ZodType | null {
  const schema = given(field);
  if (schema === null) return null;
  if (field.optional) return orNull(schema);
  return field.ifLeftOut === undefined ? schema : orElse(schema, field.ifLeftOut);
}

type Shape<F extends AnyFields> = { [Key in keyof BodyOf<F>]: z.ZodType<BodyOf<F>[Key]> };

/**
 * What a record of fields takes, field by field, and what else it takes: what nobody types is left to whoever makes it.
 * The schema of a field is made when it is first needed: the program starts without them.
 */
export function shapeOf<F extends AnyFields>(fields: F): Shape<F>;
export function shapeOf<F extends AnyFields, More extends object>(
  fields: F,
  more: More,
): Omit<Shape<F>, keyof More> & More;
export function shapeOf(fields: AnyFields, more: object = {}): object {
  const shape = {};
  for (const [key, field] of entriesOf(fields)) {
    if (field.kind !== 'made')
      Object.defineProperty(shape, key, { enumerable: true, configurable: true, get: () => schemaOf(field) });
  }
  return Object.defineProperties(shape, Object.getOwnPropertyDescriptors(more));
}
