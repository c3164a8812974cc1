import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { EntryTable } from '../../parts/entryTable.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, Tick } from '../../parts/form/fieldBox.tsx';

export interface StackFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly rows: number;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}

/** ISO 898-2 and SAE J995. */
const NUT_CLASSES = ['8', '10', '12', 'grade 5', 'grade 8', '5', '6', 'grade 2'];

/** A stack layer by layer from the pad toward the engine, and the nut that clamps it. */
export function StackFields({ fields, rows, faults, unit }: StackFieldsProps) {
  const error = errorsOf(faults);
  const cell = (name: string) => ({ name, value: fields[name] ?? '', error: error(name) });
  const field = (
    label: string,
    name: string,
    more: { unit?: string; hint?: string; optional?: boolean } = {},
  ) => <Field label={label} name={name} value={fields[name]} error={error(name)} {...more} />;
  return (
    <>
      <EntryTable
        id="layers"
        caption="Layers at the stud hole, from the pad toward the engine"
        headLabel="Layer"
        columns={[
          { key: 'name', label: 'What it is', inputmode: 'text' },
          { key: 'thickness', label: 'Thickness', unit },
          { key: 'tolerance', label: 'Tolerance ±', unit },
          { key: 'hole', label: 'Hole Ø', unit },
          { key: 'chamfer', label: 'Chamfer of the hole', unit },
        ]}
        rows={Array.from({ length: rows }, (_, i) => ({
          id: `layer-${i}`,
          head: `${i + 1}`,
          spoken: `of layer ${i + 1}`,
          cells: {
            name: cell(`ln.${i}`),
            thickness: cell(`lt.${i}`),
            tolerance: cell(`lo.${i}`),
            hole: cell(`lh.${i}`),
            chamfer: cell(`lc.${i}`),
          },
        }))}
      />
      <fieldset class="group">
        <legend>Flexplate and nut</legend>
        <div class="fields">
          <Choice
            label="Flexplate"
            name="style"
            value={fields.style ?? ''}
            options={[
              { value: '', label: 'by the count of its layers, shims apart' },
              { value: 'one-piece', label: 'one piece' },
              { value: 'two-piece', label: 'two piece' },
            ]}
          />
          {field('Number of holes', 'holeCount', { optional: true })}
          {field('Hole circle Ø', 'holeCircle', { unit, optional: true })}
          {field('Room for the tip, from the pad face', 'tipRoom', { unit, optional: true })}
          {field('Nut thread', 'nutThread', { hint: 'As 3/8-24 or M10x1.25', optional: true })}
          {field('Nut height', 'nutHeight', { unit })}
          {field('Nut height tolerance ±', 'nutTolerance', { unit, optional: true })}
          {field('Countersink, each side', 'nutCountersink', { unit, optional: true })}
          {field('Washer under the nut', 'washer', { unit, optional: true })}
          {field('Nut bearing Ø', 'nutBearing', { unit, optional: true })}
          <Choice
            label="Nut class or grade, as marked"
            name="nutClass"
            value={fields.nutClass ?? ''}
            error={error('nutClass')}
            hint="Gives its proof stress; a figure typed beside it counts before"
            options={[
              { value: '', label: 'not known, or typed in figures' },
              ...NUT_CLASSES.map((name) => ({ value: name, label: name })),
            ]}
          />
          {field('Nut proof stress', 'nutProof', { unit: 'MPa', optional: true })}
          {field('Nut tensile strength', 'nutTensile', { unit: 'MPa', optional: true })}
          <Tick
            label="It is a prevailing-torque (locking) nut"
            name="prevailing"
            value="1"
            checked={fields.prevailing === '1'}
          />
        </div>
      </fieldset>
    </>
  );
}
