import { BARE_UNIT, type TypedKind } from '../../../shared/quantity/bareUnit.ts';
import { boxOf, inPart, type Place, typedAs } from '../../../shared/quantity/fieldText.ts';
import { inUnit } from '../../../shared/quantity/writeQuantity.ts';
import {
  type AnyField,
  type AnyFields,
  entriesOf,
  lowerFirst,
  type MadeKeys,
} from '../../../shared/words/fields/field.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Cell, Column } from './csv.ts';

/** A column of a list of bodies that a form could type: what a file that comes in is read by. */
export interface BodyColumn<Row> extends Column<Row> {
  /** Its name without the unit. */
  readonly label: string;
  /** The unit in its name; '' where it has none. */
  readonly unit: string;
  /** The box of the form; null where none has it. */
  readonly box: string | null;
  readonly field: Exclude<AnyField, { kind: 'part' | 'made' }>;
}

type Made<F, Row> = Readonly<Record<MadeKeys<F>, readonly BodyColumn<Row>[]>>;

/** The fields of a body as columns of a list, in the reader’s units; what nobody types comes from `made`. */
export function columnsOf<F extends AnyFields, Row>(
  fields: F,
  bodyOf: (row: Row) => object | null | undefined,
  unit: LengthUnit,
  ...[made, place = {}]: [MadeKeys<F>] extends [never]
    ? [made?: Record<never, never>, place?: Place]
    : [made: Made<F, Row>, place?: Place]
): BodyColumn<Row>[] {
  const others: Partial<Record<string, readonly BodyColumn<Row>[]>> = made ?? {};
  return entriesOf(fields).flatMap(([key, field]): readonly BodyColumn<Row>[] => {
    const valueIn = (row: Row): unknown => (bodyOf(row) as Record<string, unknown> | null)?.[key] ?? null;
    if (field.kind === 'made') return others[key] ?? [];
    if (field.kind === 'part') {
      const below = inPart(field, place);
      return columnsOf(field.fields, (row: Row) => valueIn(row) as object | null, unit, {}, below);
    }
    const kind = quantityOf(field);
    const told = kind === null ? (field.kind === 'number' ? field.unit : '') : BARE_UNIT[kind][unit];
    const label = lowerFirst(field.label);
    const of = (row: Row) => cellOf(field, valueIn(row), (value) => figureIn(value, kind, unit));
    return [{ ...headed(label, told), of, box: boxOf(key, field, place), field }];
  });
}

/** What a column is called. */
export function headed(label: string, unit = '') {
  return { label, unit, name: unit === '' ? label : `${label} (${unit})` };
}

/** What a field of quantities is typed as; null for one that is kept and shown in one unit. */
function quantityOf(field: AnyField): TypedKind | null {
  switch (field.kind) {
    case 'lengths':
      return 'length';
    case 'number':
    case 'share':
    case 'count':
    case 'text':
    case 'formula':
    case 'day':
    case 'choice':
    case 'yes-no':
    case 'part':
    case 'made':
      return null;
    default:
      return typedAs(field);
  }
}

/** Finer than any gauge; a figure typed in the unit comes out as it was typed. */
const FIGURES = 9;

/** A figure of a list, in the reader’s unit: as it is kept where that is the unit, else with nine figures. */
export function figureIn(kept: number, kind: TypedKind | null, unit: LengthUnit): number {
  if (kind === null || BARE_UNIT[kind].mm === BARE_UNIT[kind][unit]) return kept;
  return Number(inUnit(kept, kind, BARE_UNIT[kind][unit]).toPrecision(FIGURES));
}

function cellOf(field: AnyField, value: unknown, figure: (kept: number) => number): Cell {
  if (Array.isArray(value))
    return value.map((one) => (typeof one === 'number' ? figure(one) : one)).join('; ');
  if (field.kind === 'choice' && typeof value === 'string') return field.options[value] ?? value;
  if (typeof value === 'number') return figure(value);
  return typeof value === 'string' || typeof value === 'boolean' ? value : null;
}
