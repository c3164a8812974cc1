import { BARE_UNIT } from '../../../shared/quantity/bareUnit.ts';
import { typedAs } from '../../../shared/quantity/fieldText.ts';
import {
  type AnyField,
  type AnyFields,
  entriesOf,
  lowerFirst,
  type MadeKeys,
} from '../../../shared/words/fields/field.ts';
import type { Cell, Column } from './csv.ts';

type Made<F, Row> = Readonly<Record<MadeKeys<F>, readonly Column<Row>[]>>;

/** The fields of a body as columns of a list, in the units they are kept in; what nobody types comes from `made`. */
export function columnsOf<F extends AnyFields, Row>(
  fields: F,
  bodyOf: (row: Row) => object | null | undefined,
  ...[made]: [MadeKeys<F>] extends [never] ? [] : [made: Made<F, Row>]
): Column<Row>[] {
  const others: Partial<Record<string, readonly Column<Row>[]>> = made ?? {};
  return entriesOf(fields).flatMap(([key, field]): readonly Column<Row>[] => {
    const valueIn = (row: Row): unknown => (bodyOf(row) as Record<string, unknown> | null)?.[key] ?? null;
    if (field.kind === 'made') return others[key] ?? [];
    if (field.kind === 'part') return columnsOf(field.fields, (row: Row) => valueIn(row) as object | null);
    const unit = keptIn(field);
    const name = `${lowerFirst(field.label)}${unit === '' ? '' : ` (${unit})`}`;
    return [{ name, of: (row) => cellOf(field, valueIn(row)) }];
  });
}

function keptIn(field: AnyField): string {
  switch (field.kind) {
    case 'number':
      return field.unit;
    case 'lengths':
      return 'mm';
    case 'share':
    case 'count':
    case 'text':
    case 'day':
    case 'choice':
    case 'yes-no':
    case 'part':
    case 'made':
      return '';
    default:
      return BARE_UNIT[typedAs(field)].mm;
  }
}

function cellOf(field: AnyField, value: unknown): Cell {
  if (Array.isArray(value)) return value.join('; ');
  if (field.kind === 'choice' && typeof value === 'string') return field.options[value] ?? value;
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
}
