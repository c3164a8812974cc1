import type { LengthUnit } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { errorsOf } from '../parts/errorsOf.ts';
import { Field } from '../parts/field.tsx';

export interface StudFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}

/** A stud measured from the pad's seating face toward the engine. */
export function StudFields({ fields, faults, unit }: StudFieldsProps) {
  const error = errorsOf(faults);
  const field = (
    label: string,
    name: string,
    more: { unit?: string; hint?: string; optional?: boolean } = {},
  ) => <Field label={label} name={name} value={fields[name]} error={error(name)} {...more} />;
  return (
    <fieldset class="group">
      <legend>The stud, measured from the pad's seating face</legend>
      <div class="fields">
        {field('Thread', 'thread', { hint: 'As 3/8-24, 7/16-20 UNF-2A, M10x1.25 or M10' })}
        {field('First full thread', 'threadStart', { unit })}
        {field('Last full thread', 'threadEnd', { unit })}
        {field('Tip', 'projection', { unit, hint: 'Beyond the last thread is the unthreaded pilot' })}
        {field('Tolerance ± on each', 'tolerance', { unit, optional: true })}
        {field('Pilot Ø', 'pilot', { unit, optional: true })}
        {field('Tensile strength', 'tensile', { unit: 'MPa', optional: true })}
        {field('Proof stress', 'proof', { unit: 'MPa', optional: true })}
        {field('Weld or fillet at the pad', 'fillet', { unit, optional: true })}
      </div>
    </fieldset>
  );
}
