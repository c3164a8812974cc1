import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';

export interface StudFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
  /** Ask how many there are and where they lie. */
  readonly onShelf?: boolean;
}

/** As marked on the stud; ISO 898-1 and SAE J429. */
const GRADES = [
  '8.8',
  '9.8',
  '10.9',
  '12.9',
  'grade 5',
  'grade 8',
  '4.6',
  '4.8',
  '5.6',
  '5.8',
  '6.8',
  'grade 1',
  'grade 2',
];

/** A stud measured from the pad's seating face toward the engine. */
export function StudFields({ fields, faults, unit, onShelf = false }: StudFieldsProps) {
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
        <Choice
          label="Strength class or grade, as marked"
          name="grade"
          value={fields.grade ?? ''}
          error={error('grade')}
          hint="Never a guess by looks. Figures typed beside it count before it"
          options={[
            { value: '', label: 'not known, or typed in figures' },
            ...GRADES.map((grade) => ({ value: grade, label: grade })),
          ]}
        />
        {field('Tensile strength', 'tensile', { unit: 'MPa', optional: true })}
        {field('Proof stress', 'proof', { unit: 'MPa', optional: true })}
        {field('Weld or fillet at the pad', 'fillet', { unit, optional: true })}
        {field('Pitch diameter, measured', 'pitchDiameter', {
          unit,
          optional: true,
          hint: 'Of a used stud: a worn thread is weaker',
        })}
        {onShelf && field('Number in stock', 'stock', { optional: true })}
        {onShelf && field('Shelf place', 'shelf', { optional: true })}
      </div>
    </fieldset>
  );
}
