import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  EntryHistory,
  type EntryRevisionTold,
  type EntryStale,
  EntryStaleShown,
} from '../../parts/entryHistory.tsx';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { ChangeForm } from '../../parts/form/changeForm.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

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
        <BodyFields of={CRITERIA} fields={fields} faults={faults} writing={frame} />
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
