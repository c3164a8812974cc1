import {
  type AnyField,
  type AnyFields,
  entriesOf,
  type KnownFigures,
  OWN_FIGURE,
  type PartField,
  type QuantityField,
} from '../words/fields/field.ts';
import { BARE_UNIT, type TypedKind } from './bareUnit.ts';
import { formulaTold } from './formulaSign.ts';
import type { DecimalSign } from './plainNumber.ts';
import type { UnitName } from './units.ts';
import { writeQuantity } from './writeQuantity.ts';

/** How a person writes: the unit of bare numbers, and the decimal sign. */
export interface Writing {
  readonly lengthUnit: 'mm' | 'in';
  readonly decimalSign: DecimalSign;
  /** Where a bare torque is in another unit than the one that goes with the lengths. */
  readonly torqueUnit?: 'N·m' | 'lb·ft';
}

/** How what stands in these fields was written: a form says in which units its boxes were shown. */
export function writingIn(
  { unit, torqueUnit }: Readonly<Record<string, string | undefined>>,
  { lengthUnit, decimalSign }: Writing,
): Writing {
  return {
    lengthUnit: unit === 'in' || unit === 'mm' ? unit : lengthUnit,
    decimalSign,
    // Addresses made before November 2026 say lb-ft.
    ...(torqueUnit === 'N·m' && { torqueUnit }),
    ...((torqueUnit === 'lb·ft' || torqueUnit === 'lb-ft') && { torqueUnit: 'lb·ft' as const }),
  };
}

/** What a field that holds one number is typed as. */
export function typedAs({ kind }: Pick<QuantityField, 'kind'>): TypedKind {
  return kind === 'size' || kind === 'extent' || kind === 'height' ? 'length' : kind;
}

/** The unit a bare number of this kind takes, which is the one its box is labeled with. */
export function bareUnitOf(kind: TypedKind, { lengthUnit, torqueUnit }: Writing): UnitName {
  return kind === 'torque' && torqueUnit ? torqueUnit : BARE_UNIT[kind][lengthUnit];
}

/** The unit shown after the box of a field; undefined where it has none. */
export function unitShown(field: AnyField, writing: Writing): string | undefined {
  switch (field.kind) {
    case 'number':
      return field.unit || undefined;
    case 'lengths':
      return writing.lengthUnit;
    case 'part':
    case 'made':
    case 'text':
    case 'formula':
    case 'day':
    case 'choice':
    case 'yes-no':
    case 'count':
      return undefined;
    default: {
      const unit = bareUnitOf(typedAs(field), writing);
      return unit === 'deg' ? '°' : unit || undefined;
    }
  }
}

/** Which boxes of a form: what stands before their names, and the row of a table. */
export interface Place {
  readonly at?: string;
  readonly row?: number | string;
}

/** The name of a field's box; null where it has none. */
export function boxOf(
  key: string,
  { box }: Pick<AnyField, 'box'>,
  { at = '', row }: Place = {},
): string | null {
  if (box === null) return null;
  return `${at}${box ?? key}${row === undefined ? '' : `.${row}`}`;
}

/** The names of all boxes of a body, those that choose a figure too. */
export function boxesOf(fields: AnyFields, place: Place = {}): string[] {
  return entriesOf(fields).flatMap(([key, field]) => {
    if (field.kind === 'part') return boxesOf(field.fields, inPart(field, place));
    const box = boxOf(key, field, place);
    const chosenIn = 'chosenIn' in field ? field.chosenIn : undefined;
    return field.kind === 'made' || box === null ? [] : [box, ...(chosenIn === undefined ? [] : [chosenIn])];
  });
}

export function numberText(value: number, field: QuantityField, writing: Writing): string {
  const kind = typedAs(field);
  return writeQuantity(value, kind, bareUnitOf(kind, writing), writing.decimalSign);
}

/** The same place, in a part. */
export function inPart<P extends Place>({ at: own = '' }: Pick<PartField, 'at'>, place: P): P {
  return { ...place, at: `${place.at ?? ''}${own}` };
}

interface Writes extends Place {
  readonly known?: KnownFigures;
}

/** A body as its form would have it typed, box by box. */
export function asTyped(
  fields: AnyFields,
  body: object | null | undefined,
  writing: Writing,
  how: Writes = {},
): Record<string, string> {
  const values = (body ?? {}) as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    entriesOf(fields).flatMap(([key, field]): [string, string][] => {
      const value = values[key] ?? (body === null || body === undefined ? null : (field.ifLeftOut ?? null));
      if (field.kind === 'part') {
        return Object.entries(asTyped(field.fields, value as object | null, writing, inPart(field, how)));
      }
      const box = boxOf(key, field, how);
      if (box === null || field.kind === 'made') return [];
      const chosenIn = 'chosenIn' in field ? field.chosenIn : undefined;
      if (chosenIn === undefined || value === null) return [[box, text(field, value, writing)]];
      const figure = how.known?.[chosenIn]?.figures.find((one) => one.value === value);
      return figure
        ? [[chosenIn, figure.id]]
        : [
            [chosenIn, OWN_FIGURE],
            [box, text(field, value, writing)],
          ];
    }),
  );
}

function text(field: AnyField, value: unknown, writing: Writing): string {
  if (value === null) return '';
  switch (field.kind) {
    case 'text':
    case 'day':
    case 'choice':
      return String(value);
    case 'formula':
      return formulaTold(String(value), writing.decimalSign);
    case 'yes-no':
      return field.optional ? (value ? 'yes' : 'no') : value ? '1' : '';
    case 'lengths':
      return (value as readonly number[])
        .map((mm) => numberText(mm, { ...field, kind: field.each }, writing))
        .join('; ');
    case 'part':
    case 'made':
      return '';
    default:
      return numberText(value as number, field, writing);
  }
}
