import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { COSTS } from '../../../shared/words/fields/costs.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { type Compared, SideBySide } from '../../parts/sideBySide.tsx';
import { When } from '../../parts/when.tsx';

export interface CostsProps {
  readonly frame: Frame & Writing;
  /** 0 while none were saved. */
  readonly revision: number;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** What somebody else saved meanwhile, beside what was typed. */
  readonly theirs: readonly Compared[];
  readonly saved: boolean;
  /** The newest first. */
  readonly history: readonly {
    readonly revision: number;
    readonly at: string;
    readonly who: string;
    readonly why: string;
    readonly lines: readonly { readonly label: string; readonly value: string }[];
  }[];
}

/** What facing, a ring, a new cover and a comeback cost the shop: who said so, and when. */
export function CostsPage(props: CostsProps) {
  const { frame, revision, fields, faults, theirs, saved, history } = props;
  const error = errorsOf(faults);
  return (
    <Layout title="Costs" here="criteria" {...frame}>
      <p class="back">
        <a href="/criteria">Shop limits</a>
      </p>
      <h1>Costs</h1>
      {saved && (
        <p class="note" role="status" id="saved">
          Saved as revision {revision}.
        </p>
      )}
      <p class="why">
        Shown as advice beside the verdict of a job. What is blank is left out; without the cost of a comeback
        nothing is shown.
      </p>
      {may(frame, 'keeper') ? (
        <form method="post" action="/criteria/costs" id="costs-form">
          <ErrorSummary faults={faults} />
          {theirs.length > 0 && (
            <SideBySide caption="Changed meanwhile" heads={['saved now', 'yours']} lines={theirs} />
          )}
          <input type="hidden" name="from" value={revision} />
          <BodyFields of={COSTS} fields={fields} faults={faults} writing={frame} />
          <div class="fields">
            {revision > 0 && (
              <Field label="Why it changes" name="why" value={fields.why} error={error('why')} />
            )}
            <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="save-costs">
              Save the costs
            </button>
          </div>
        </form>
      ) : (
        <p class="note">Only a manager can change the costs.</p>
      )}
      {history.length > 0 && (
        <section id="cost-history">
          <h2>Every revision</h2>
          {history.map((one) => (
            <details class="more-findings">
              <summary>
                Revision {one.revision}, by {one.who}, <When at={one.at} />
                {one.why !== '' && `: ${one.why}`}
              </summary>
              <dl class="facts">
                {one.lines.map(({ label, value }) => (
                  <>
                    <dt>{label}</dt>
                    <dd>{value}</dd>
                  </>
                ))}
              </dl>
            </details>
          ))}
        </section>
      )}
    </Layout>
  );
}
