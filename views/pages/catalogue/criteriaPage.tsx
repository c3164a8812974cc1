import { UNIT_WORD } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  EntryHistory,
  type EntryRevisionTold,
  type EntryStale,
  EntryStaleShown,
} from '../../parts/entryHistory.tsx';
import { ChangeForm } from '../../parts/form/changeForm.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { BendingFields } from '../bending/bendingFields.tsx';
import { LatheFields } from './latheFields.tsx';

export interface CriteriaProps {
  readonly frame: Frame;
  /** 0 while none were saved. */
  readonly revision: number;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly stale: EntryStale | null;
  readonly history: readonly EntryRevisionTold[];
}

/** The shop's own limits and habits: who set them, and when. */
export function CriteriaPage({ frame, revision, fields, faults, stale, history }: CriteriaProps) {
  const error = errorsOf(faults);
  const unit = frame.lengthUnit;
  const mayChange = may(frame, 'keeper');
  const field = (
    label: string,
    name: string,
    more: { unit?: string; hint?: string; optional?: boolean } = {},
  ) => <Field label={label} name={name} value={fields[name]} error={error(name)} {...more} />;
  return (
    <Layout title="Criteria" here="criteria" {...frame}>
      <h1>The shop's criteria</h1>
      <p class="why">
        The program ships no limit of its own. What is set here is the shop's, signed and dated; a decision
        keeps the criteria as they were when it was made.
      </p>
      <ChangeForm action="/criteria" mayChange={mayChange}>
        {stale !== null && <EntryStaleShown stale={stale} />}
        <ErrorSummary faults={faults} />
        <input type="hidden" name="from" value={revision} />
        <input type="hidden" name="unit" value={unit} />
        <fieldset class="group">
          <legend>The cover</legend>
          <div class="fields">
            {field('Minimum wall, any family', 'minimum', {
              unit,
              optional: true,
              hint: "A family's own figure goes before it",
            })}
            {field('Clean-up allowance', 'allowance', { unit, hint: 'Cut this much below the deepest mark' })}
            {field('Runout allowed after the cut', 'runout', {
              unit,
              optional: true,
              hint: 'Over the track',
            })}
            {field('Typical cut', 'typical', { unit, optional: true, hint: 'To count the cuts left' })}
            {field('How sure to be', 'confidence', {
              unit: '%',
              hint: 'That no station is below the minimum',
            })}
          </div>
        </fieldset>
        <fieldset class="group">
          <legend>The stud</legend>
          <div class="fields">
            {field('Threads beyond the nut', 'protrusion', { unit: 'threads' })}
            {field('Threads showing to start the nut by hand', 'start', { unit: 'threads' })}
            {field('Set anew: lean allowed, 25 mm above the pad', 'studLean', { unit, optional: true })}
            {field('Set anew: foot out of place, at most', 'studOff', { unit, optional: true })}
            {field('Set anew: proof torque asked', 'studProof', {
              unit: 'N·m',
              optional: true,
              hint: 'On a spacer; the maker’s figure comes first',
            })}
            <Field
              label="Shims there are"
              name="shims"
              value={fields.shims}
              error={error('shims')}
              optional
              size="words"
              hint={`Thicknesses in ${UNIT_WORD[unit]}, parted by semicolons`}
            />
          </div>
        </fieldset>
        <LatheFields fields={fields} faults={faults} unit={unit} />
        <BendingFields fields={fields} faults={faults} unit={unit} />
        <fieldset class="group">
          <legend>The shop</legend>
          <div class="fields">
            {field('Name of the shop', 'shopName')}
            <Choice
              label="Bare numbers are in"
              name="lengthUnit"
              value={fields.lengthUnit}
              options={[
                { value: 'mm', label: 'millimetres' },
                { value: 'in', label: 'inches' },
              ]}
            />
            <Choice
              label="Decimals are written with a"
              name="decimalSign"
              value={fields.decimalSign}
              options={[
                { value: 'point', label: 'point, 4.92' },
                { value: 'comma', label: 'comma, 4,92' },
              ]}
            />
          </div>
        </fieldset>
        {mayChange && (
          <>
            <div class="fields">
              <Field
                label="Why"
                name="why"
                value={fields.why}
                error={error('why')}
                size="full"
                hint="Kept with the change"
              />
              <Field
                label="Your initials"
                name="who"
                value={fields.who ?? frame.initials}
                error={error('who')}
                size="figure"
                input={{ maxLength: 8 }}
              />
            </div>
            <div class="actions">
              <button class="button first" type="submit" id="save">
                Save as a new revision
              </button>
            </div>
          </>
        )}
      </ChangeForm>
      <section>
        <h2>Every revision</h2>
        {history.length === 0 ? (
          <p>None yet: the program's starting values apply, and they set no minimum wall.</p>
        ) : (
          <EntryHistory revisions={history} />
        )}
      </section>
    </Layout>
  );
}
