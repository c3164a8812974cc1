import { figureDoubt } from '../../../shared/quantity/figureDoubt.ts';
import { KINDS, type Kind, type UnitName } from '../../../shared/quantity/units.ts';
import { type AnyField, type AnyFields, entriesOf } from '../../../shared/words/fields/field.ts';
import type { DoubtedFigure } from '../../../shared/words/finding.ts';
import type { AnyExpected, Expected, FigureExpected } from './expectedFigures.ts';

/** Of a body’s figures, its parts’ too, those that look like a slip: sent without a unit, in that of the records. */
export function figuresDoubted<F extends AnyFields>(
  fields: F,
  body: object,
  expected: Expected<F>,
  at: string,
): DoubtedFigure[] {
  const values = body as Readonly<Record<string, unknown>>;
  return entriesOf(fields).flatMap(([key, field]) => {
    const usual = (expected as Readonly<Record<string, AnyExpected | undefined>>)[key];
    const path = at === '' ? key : `${at}.${key}`;
    const value = values[key];
    if (field.kind === 'part' && usual !== undefined && typeof value === 'object' && value !== null) {
      return figuresDoubted(field.fields, value, usual as never, path);
    }
    if (usual === undefined || 'any' in usual) return [];
    const all = Array.isArray(value) ? value.map((one, i) => [`${path}.${i}`, one]) : [[path, value]];
    return all.flatMap(([where, one]) => doubted(where, one, field, usual));
  });
}

function doubted(path: string, value: unknown, field: AnyField, usual: FigureExpected): DoubtedFigure[] {
  if (typeof value !== 'number') return [];
  const unit = keptUnit(field);
  const doubt = figureDoubt({ value, typed: String(value), unit, decimalSign: 'point', bare: true }, usual);
  return doubt === null ? [] : [{ path, value, probably: doubt.meant, unit, question: doubt.question }];
}

const KEPT: Partial<Record<AnyField['kind'], Kind>> = {
  lengths: 'length',
  size: 'length',
  extent: 'length',
  height: 'length',
  stress: 'pressure',
  share: 'number',
};

function keptUnit({ kind }: AnyField): UnitName {
  const of = KEPT[kind] ?? (kind as Kind);
  return KINDS[of].keptIn as UnitName;
}
