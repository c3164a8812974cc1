import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { RECEIVED } from '../../../shared/words/fields/job.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { CoverJob } from '../../../shared/words/sameCover.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { day } from '../../parts/when.tsx';
import { familyInWords } from '../cover/coverFields.tsx';
import { SameCover } from './sameCoverPart.tsx';
import { JobForm, type Refused, Who } from './section.tsx';

export interface ReceiveProps {
  readonly job: Job;
  /** Every job of the cover with this number of its own. */
  readonly coverJobs: readonly CoverJob[];
  readonly families: readonly { readonly id: string; readonly name: string }[];
  /** Whoever keeps the catalog may add a cover type on the way. */
  readonly mayAddType: boolean;
  readonly unit: LengthUnit;
  readonly writing: Writing;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

export function receivedSummary(job: Job): string {
  const received = job.sections.received?.body;
  return received ? `${received.family.name}, ${day(received.receivedOn)}` : 'not yet';
}

export function Receive(props: ReceiveProps) {
  const { writing, job, families, mayAddType, unit, initials, refused, readOnly } = props;
  const kept = job.sections.received;
  const body = kept?.body;
  return (
    <>
      {body && (
        <dl class="facts">
          <dt>Cover type</dt>
          <dd>
            {body.family.name}: {familyInWords(body.family, unit)}
          </dd>
          <dt>Received</dt>
          <dd>{day(body.receivedOn)}</dd>
          {body.customerReference !== '' && (
            <>
              <dt>Customer reference</dt>
              <dd>{body.customerReference}</dd>
            </>
          )}
          {body.coverNumber && (
            <>
              <dt>{RECEIVED.coverNumber.label}</dt>
              <dd>{body.coverNumber}</dd>
            </>
          )}
          {body.comebackOf && (
            <>
              <dt>{RECEIVED.comebackOf.label}</dt>
              <dd>
                <a href={`/jobs/${encodeURIComponent(body.comebackOf)}`}>{body.comebackOf}</a>
              </dd>
            </>
          )}
          {body.note !== '' && (
            <>
              <dt>Note</dt>
              <dd>{body.note}</dd>
            </>
          )}
        </dl>
      )}
      {body?.coverNumber && (
        <SameCover jobs={props.coverJobs} coverNumber={body.coverNumber} here={job.number} unit={unit} />
      )}
      {kept && <Who kept={kept} />}
      {!readOnly && (
        <details class="change" open={refused !== null}>
          <summary>Change</summary>
          <JobForm
            id="received-form"
            action={`/jobs/${encodeURIComponent(job.number)}/received`}
            revision={refused?.fields.again ? Number(refused.fields.from) : job.revision}
            initials={initials}
            signed={job.stage === 'signed'}
            refused={refused}
            submit="Save as a new revision"
            {...(mayAddType && { also: { label: 'Add a cover type', name: 'addType' } })}
          >
            <ReceivedFields
              families={families}
              fields={
                refused?.fields ?? {
                  ...asTyped(RECEIVED, body, writing),
                  [RECEIVED.family.box]: body?.familyId ?? '',
                }
              }
              kept={asTyped(RECEIVED, body, writing)}
              writing={writing}
              faults={refused?.faults ?? []}
            />
          </JobForm>
        </details>
      )}
    </>
  );
}

export function ReceivedFields(props: {
  families: readonly { readonly id: string; readonly name: string }[];
  fields: Readonly<Record<string, string>>;
  /** What is kept, box by box. */
  kept?: Readonly<Record<string, string>>;
  faults: Refused['faults'];
  writing: Writing;
}) {
  const { families, ...boxes } = props;
  const family = (
    <Choice
      label={RECEIVED.family.label}
      name={RECEIVED.family.box}
      value={boxes.fields[RECEIVED.family.box]}
      error={errorsOf(boxes.faults)(RECEIVED.family.box)}
      options={families.map(({ id, name }) => ({ value: id, label: name }))}
    />
  );
  return <BodyFields of={RECEIVED} {...boxes} before={{ receivedOn: family }} />;
}
