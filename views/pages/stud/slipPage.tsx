import type { Fault } from '../../../shared/words/refusal.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { SlipSheet } from './slipSheet.tsx';

export interface SlipPageProps {
  readonly frame: Frame;
  readonly slip: CounterSlip;
  /** An instant. */
  readonly at: string;
  /** The question as it was typed. */
  readonly typed: Readonly<Record<string, string>>;
  /** What is typed to save it, its own id, and a mark of the answer that was seen. */
  readonly saving: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** The answer is no longer the one that was seen. */
  readonly changed?: boolean;
}

/** The answer as a slip: to read out, to print, and to save under a number. */
export function SlipPage(props: SlipPageProps) {
  const { frame, slip, at, typed, saving, faults, changed = false } = props;
  const error = errorsOf(faults);
  const who = frame.person?.initials ?? saving.who ?? frame.initials;
  return (
    <Layout title="Counter slip" here="studs" {...frame}>
      <link rel="stylesheet" href="/assets/slip.css" />
      <SlipSheet
        slip={slip}
        unit={frame.lengthUnit}
        shopName={frame.shopName}
        customerReference={saving.customer ?? ''}
        who={who}
        at={at}
        number={null}
      />
      {changed && (
        <p class="note" id="changed">
          The catalog or the shop limits changed since you opened this slip. Nothing was saved. This is the
          answer now: check it, then save it.
        </p>
      )}
      <form method="post" action="/slips" id="slip-form" class="no-print">
        <ErrorSummary faults={faults} />
        {Object.entries({ ...typed, sentId: saving.sentId ?? '', seen: saving.seen ?? '' }).map(
          ([name, value]) => (
            <input type="hidden" name={name} value={value} />
          ),
        )}
        <div class="fields">
          <Field
            label="Customer reference"
            name="customer"
            value={saving.customer}
            error={error('customer')}
            hint="A name or an order number"
            optional
          />
          <Field
            label="Your initials"
            name="who"
            value={who}
            error={error('who')}
            size="figure"
            input={{ maxLength: 8 }}
          />
        </div>
        <div class="actions">
          <button class="button first" type="submit" id="save-slip">
            Save this slip
          </button>
          <button class="button" type="button" id="print" data-print>
            Print without saving
          </button>
          <a class="button" href="/stud">
            Next caller
          </a>
        </div>
      </form>
    </Layout>
  );
}
