import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import { Caution } from '../../parts/caution.tsx';
import { errorsOf } from '../../parts/errorsOf.ts';
import { Choice, Field } from '../../parts/field.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { Sign } from '../../parts/sign.tsx';
import { FIT_STATUS, FIT_WORD, type StudChoice, stackInWords } from '../stud.tsx';
import { JobForm, type Refused, Who } from './section.tsx';

export interface StudsProps {
  readonly job: Job;
  readonly stacks: readonly { readonly id: string; readonly stack: CatalogueStack }[];
  /** The stack being looked at, and every stud held against it. */
  readonly stackId: string;
  readonly pull: string;
  readonly choices: readonly StudChoice[];
  /** What the present calculation would say otherwise of those kept; null when it says the same. */
  readonly otherwise: string | null;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

export function studsSummary(job: Job): string {
  const studs = job.sections.studs?.body;
  return studs
    ? `${studs.stud.name} in ${studs.stack.name}: ${FIT_WORD[studs.check.fits]}`
    : 'not chosen yet';
}

/** Which flexplate it goes back to, and the stud that belongs in it. */
export function Studs({
  job,
  stacks,
  stackId,
  pull,
  choices,
  otherwise,
  unit,
  initials,
  refused,
  readOnly,
}: StudsProps) {
  const kept = job.sections.studs;
  const error = errorsOf(refused?.faults ?? []);
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <>
      {kept && (
        <>
          <p>
            <Sign status={FIT_STATUS[kept.body.check.fits]} />{' '}
            <b>
              {kept.body.stud.name} in {kept.body.stack.name}: {FIT_WORD[kept.body.check.fits]}.
            </b>{' '}
            {kept.body.check.because}
            {kept.body.note !== '' && <> Note: {kept.body.note}</>}
          </p>
          {otherwise !== null && <p class="note">{otherwise}</p>}
          <p class="hint">{stackInWords(kept.body.stack, unit)}</p>
          <Who kept={kept} />
          <figure class="drawing wide">
            <StudInStack
              id="job-stud"
              stud={kept.body.stud.stud}
              stack={kept.body.stack.stack}
              nut={kept.body.stack.nut}
              check={kept.body.check}
              pullForwardMm={kept.body.pullForwardMm}
              name={kept.body.stud.name}
              unit={unit}
            />
          </figure>
          <details class="twin">
            <summary>What was checked</summary>
            <FindingList findings={kept.body.check.findings} unit={unit} id="job-stud-finding" />
          </details>
        </>
      )}
      <Caution kind="torque" />
      {!readOnly && (
        <details class="change" open={kept === null || stackId !== '' || refused !== null}>
          <summary>{kept ? 'Choose again' : 'Choose the stack and its stud'}</summary>
          <form method="get" action={`${href}#studs`} id="job-stack-form">
            <div class="fields">
              <Choice
                label="Flexplate stack"
                name="stack"
                value={stackId}
                options={[
                  ...(stackId === '' ? [{ value: '', label: 'choose' }] : []),
                  ...stacks.map(({ id, stack }) => ({ value: id, label: stack.name })),
                ]}
              />
              <Field
                label="Pull-forward gap"
                name="pull"
                value={pull}
                unit={unit}
                hint="Empty: the stack's own"
              />
            </div>
            <div class="actions">
              <button class="button" type="submit" id="hold-studs">
                Hold every stud against it
              </button>
            </div>
          </form>
          {choices.length > 0 && (
            <JobForm
              id="studs-form"
              action={`${href}/studs`}
              revision={job.revision}
              initials={initials}
              signed={job.stage === 'signed'}
              refused={refused}
              submit="Keep these studs"
              first={job.stage === 'to-sign'}
            >
              <input type="hidden" name="stack" value={stackId} />
              <input type="hidden" name="pull" value={pull} />
              <Choice
                label="Stud, best first"
                name="stud"
                as="radios"
                value={refused?.fields.stud ?? choices[0]?.match.id}
                error={error('stud')}
                options={choices.map(({ match, entry }) => ({
                  value: match.id,
                  label: (
                    <>
                      <Sign status={FIT_STATUS[match.fits]} /> <b>{entry.name}</b> {FIT_WORD[match.fits]}
                    </>
                  ),
                  hint: match.check.because,
                }))}
              />
              <Field
                label="Note"
                name="note"
                value={refused?.fields.note}
                error={error('note')}
                size="full"
                hint="Needed where the stud does not fit"
              />
            </JobForm>
          )}
        </details>
      )}
    </>
  );
}
