import type { Fault } from '../../../shared/words/refusal.ts';
import type { CoverJob } from '../../../shared/words/sameCover.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { ReceivedFields } from './receive.tsx';
import { SameCover } from './sameCoverPart.tsx';

export interface NewJobProps {
  readonly frame: Frame;
  /** Jobs of the cover whose number is typed. */
  readonly coverJobs: readonly CoverJob[];
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** 1. Receive: the cover gets a number and a tag. */
export function NewJobPage({ frame, families, coverJobs, fields, faults }: NewJobProps) {
  const error = errorsOf(faults);
  return (
    <Layout title="Receive a cover" here="jobs" {...frame}>
      <h1>Receive a cover</h1>
      {families.length === 0 ? (
        <EmptyState
          title="No cover types yet"
          actions={
            may(frame, 'keeper')
              ? [{ label: 'Add a cover type', href: '/catalogue/family/new?back=/jobs/new' }]
              : []
          }
        >
          A job needs a cover type. {may(frame, 'keeper') ? 'Add one first.' : 'Ask a manager to add one.'}
        </EmptyState>
      ) : (
        <form method="post" action="/jobs">
          <ErrorSummary faults={faults} />
          <input type="hidden" name="sentId" value={fields.sentId} />
          {fields.slip && (
            <p id="from-slip">
              Begun from counter slip {fields.slip}: its stack and stud are offered when studs are chosen.
              <input type="hidden" name="slip" value={fields.slip} />
            </p>
          )}
          <div id="same-cover">
            <SameCover jobs={coverJobs} coverNumber={fields.coverNumber ?? ''} unit={frame.lengthUnit} />
          </div>
          <ReceivedFields families={families} fields={fields} faults={faults} writing={frame} />
          <FoldedBoxes
            head="Job number"
            says="Needed where the shop gives its own numbers. Blank: the next free number."
            names={['number']}
            fields={fields}
            faults={faults}
          >
            <Field
              label={<span class="unseen">Job number</span>}
              name="number"
              value={fields.number}
              error={error('number')}
              size="name"
            />
          </FoldedBoxes>
          <div class="fields">
            <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="receive">
              Receive it
            </button>
            <button class="button" type="submit" name="lookUp" value="1" id="look-up-cover">
              Earlier jobs of this cover
            </button>
            {may(frame, 'keeper') && (
              <button class="button" type="submit" name="addType" value="1" id="add-type">
                Add a cover type
              </button>
            )}
          </div>
        </form>
      )}
    </Layout>
  );
}
