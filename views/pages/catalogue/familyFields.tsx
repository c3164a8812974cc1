import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, TextArea, Tick } from '../../parts/form/fieldBox.tsx';
import { FamilyBendingFields } from '../bending/bendingFields.tsx';
import { FitLimitsFields } from './fitLimitsFields.tsx';

/** What the shop knows of one kind of cover. */
export function FamilyFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  unit: LengthUnit;
}) {
  const { fields, faults, unit } = props;
  const error = errorsOf(faults);
  const field = (
    label: string,
    name: string,
    more: { unit?: string; hint?: string; optional?: boolean } = {},
  ) => <Field label={label} name={name} value={fields[name]} error={error(name)} {...more} />;
  return (
    <>
      <fieldset class="group">
        <legend>The cover</legend>
        <div class="fields">
          {field('Name', 'name')}
          <Choice
            label="Made"
            name="make"
            value={fields.make ?? 'stamped'}
            options={[
              { value: 'stamped', label: 'stamped' },
              { value: 'from-solid', label: 'machined from solid' },
            ]}
          />
          <Choice
            label="Side wall"
            name="sideWall"
            value={fields.sideWall ?? 'plain'}
            hint="Tells nothing of how many clutch faces are inside"
            options={[
              { value: 'plain', label: 'plain' },
              { value: 'ribbed', label: 'with vertical ribs' },
            ]}
          />
          {field('Number of studs', 'studCount')}
          {field('Stud circle Ø', 'circle', { unit })}
          {field('Track inner Ø', 'trackInner', { unit })}
          {field('Track outer Ø', 'trackOuter', { unit })}
          {field('Wall when new', 'nominal', { unit })}
          {field('Boss Ø', 'boss', { unit, optional: true })}
          {field('Rim Ø', 'rim', { unit, optional: true })}
          {field('Pad Ø', 'pad', { unit, optional: true })}
          {field('Pad thickness', 'padThickness', { unit, optional: true })}
        </div>
      </fieldset>
      <FamilyBendingFields fields={fields} faults={faults} unit={unit} />
      <FitLimitsFields fields={fields} faults={faults} unit={unit} />
      <fieldset class="group">
        <legend>Minimum wall</legend>
        <p class="hint">
          The maker's figure with its source, or the shop's own with who set it. Where both stand, the larger
          governs. Without either, the answer is advice only.
        </p>
        <div class="fields">
          {field("Maker's minimum", 'makerMinimum', { unit, optional: true })}
          {field('Where it is printed', 'makerSource', { optional: true })}
          {field("The shop's minimum", 'shopMinimum', { unit, optional: true })}
          {field('Who set it, and when', 'shopSource', { optional: true })}
          <Tick
            label="A stiffening ring may be welded to it"
            name="ring"
            value="1"
            checked={fields.ring === '1'}
          />
          <TextArea label="Note" name="note" value={fields.note} error={error('note')} rows={2} optional />
        </div>
      </fieldset>
    </>
  );
}
