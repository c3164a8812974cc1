import type { TypedInEntry } from '../words/catalogue.ts';
import { printDay } from '../words/day.ts';
import {
  type AnyField,
  type AnyFields,
  entriesOf,
  type MadeKeys,
  type QuantityField,
} from '../words/fields/field.ts';
import { briefLength } from '../words/print.ts';
import type { TypedKind } from './bareUnit.ts';
import { bareUnitOf, numberText, typedAs, type Writing } from './fieldText.ts';
import { formulaTold } from './formulaSign.ts';
import { tellQuantity } from './writeQuantity.ts';

/** One field of something kept, in words. Within one list no two carry the same label. */
export interface FieldLine {
  readonly label: string;
  readonly value: string;
}

/** How a body is told, and what was typed for it where that is kept beside the body. */
export interface Telling extends Writing {
  readonly typed?: TypedInEntry;
  /** For paper: every quantity in the one unit, rounded as results are. */
  readonly rounded?: boolean;
}

const NOT_GIVEN = 'not given';
const FIGURES_ON_PAPER = 4;

/** A length with its unit and every figure it has, so that two that differ never read alike. */
export function lengthInWords(mm: number | null, writing: Writing, none = NOT_GIVEN): string {
  return mm === null ? none : tellQuantity(mm, 'length', bareUnitOf('length', writing), writing.decimalSign);
}

/**
 * "4.7625 mm (typed 3/16 in)"; the value alone where that was typed, or where nothing is known of it. Of one that looked
 * like a slip it says that it was confirmed.
 */
function withTyped(value: string, path: string, { typed }: Telling): string {
  const found = typed?.[path];
  if (found === undefined) return value;
  const text = found.bareUnit === null ? found.text : `${found.text} ${found.bareUnit}`;
  const told = text === value || text === '' ? value : `${value} (typed ${text})`;
  return found.confirmed ? `${told}, asked about and confirmed` : told;
}

function yesNoInWords(value: boolean): string {
  return value ? 'yes' : 'no';
}

interface Where {
  /** Where the body lies in the whole that is kept: '', 'stud.'. */
  readonly at?: string;
  /** Only what was given is told. */
  readonly quiet?: boolean;
  /** What is told after a value, by the name of its field. */
  readonly beside?: Readonly<Record<string, string | undefined>>;
}

/** How whoever makes what nobody types tells it: each such field of the body. */
interface Made<F> {
  readonly made: Readonly<Record<MadeKeys<F>, readonly FieldLine[]>>;
}

/** A body field by field, in the order of its record. */
export function linesOf<F extends AnyFields>(
  fields: F,
  body: object | null | undefined,
  telling: Telling,
  ...[where]: [MadeKeys<F>] extends [never] ? [where?: Where] : [where: Where & Made<F>]
): FieldLine[] {
  const {
    at = '',
    quiet = false,
    made = {},
    beside = {},
  }: Where & { made?: Record<string, readonly FieldLine[]> } = where ?? {};
  const values = (body ?? {}) as Readonly<Record<string, unknown>>;
  return entriesOf(fields).flatMap(([key, field]): FieldLine[] => {
    const value = values[key] ?? (body ? (field.ifLeftOut ?? null) : null);
    const path = `${at}${key}`;
    if (field.kind === 'made') return [...(made[key] ?? [])];
    if (field.kind === 'part') {
      const part = { at: `${path}.`, quiet: quiet || field.quiet === true };
      return part.quiet && value === null ? [] : linesOf(field.fields, value as object | null, telling, part);
    }
    if (quiet && (value === null || (Array.isArray(value) && value.length === 0))) return [];
    const words = valueInWords(field, value, path, telling);
    return [{ label: field.label, value: beside[key] ? `${words}, ${beside[key]}` : words }];
  });
}

/** One field’s value as it is told. */
function valueInWords(field: AnyField, value: unknown, path: string, telling: Telling): string {
  if (value === null || value === undefined) return field.none ?? NOT_GIVEN;
  switch (field.kind) {
    case 'text':
      return value === '' ? (field.none ?? '') : String(value);
    case 'formula':
      return withTyped(formulaTold(String(value), telling.decimalSign), path, telling);
    case 'day':
      return printDay(String(value));
    case 'choice':
      return field.options[String(value)] ?? String(value);
    case 'yes-no':
      return field.words ? field.words[value ? 'yes' : 'no'] : yesNoInWords(value === true);
    case 'lengths': {
      const each = (value as readonly number[]).map((mm, i) =>
        withTyped(
          telling.rounded ? tellRounded(mm, 'length', telling) : lengthInWords(mm, telling),
          `${path}.${i}`,
          telling,
        ),
      );
      return each.join('; ') || (field.none ?? NOT_GIVEN);
    }
    case 'part':
    case 'made':
      return '';
    default:
      return withTyped(quantityInWords(field, value as number, telling), path, telling);
  }
}

function quantityInWords(field: QuantityField, value: number, telling: Telling): string {
  if (field.kind === 'number') {
    const unit = field.unit === 'threads' && value === 1 ? 'thread' : field.unit;
    return `${numberText(value, field, telling)}${unit && ` ${unit}`}`;
  }
  const kind = typedAs(field);
  if (telling.rounded) return tellRounded(value, kind, telling);
  return tellQuantity(value, kind, bareUnitOf(kind, telling), telling.decimalSign);
}

function tellRounded(value: number, kind: TypedKind, telling: Telling): string {
  if (kind === 'length') return briefLength(value, telling.lengthUnit);
  return tellQuantity(value, kind, bareUnitOf(kind, telling), 'point', FIGURES_ON_PAPER);
}
