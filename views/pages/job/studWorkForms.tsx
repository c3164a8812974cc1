import { type FieldLine, linesOf, type Telling } from '../../../shared/quantity/fieldLines.ts';
import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import type { Job, ReplacedStudKept, RetorqueKept, StudsChosen } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { Caution } from '../../parts/caution.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { asConfirmed } from '../../parts/form/questionAt.tsx';
import { JobForm, type Refused } from './section.tsx';

export interface StudWorkProps {
  readonly job: Job;
  readonly studs: StudsChosen;
  readonly unit: LengthUnit;
  readonly writing: Writing;
  readonly initials: string;
  readonly refusedReplaced: Refused | null;
  readonly refusedRetorque: Refused | null;
  readonly readOnly: boolean;
}

/** Pressed instead of the save: the stud is no replaced one after all. */
export const REMOVE = 'remove';
const MOST_STUDS = 24;

/** Studs that were replaced, and nuts that were re-torqued: what was recorded, what was found, the forms. */
export function StudWork(props: StudWorkProps) {
  const { studs, readOnly, unit, writing } = props;
  const replaced = studs.replaced ?? [];
  const again = studs.retightening ?? null;
  return (
    <>
      <h3 id="replaced">Replaced studs</h3>
      {replaced.length === 0 && <p>None recorded.</p>}
      {replaced.map((one) => (
        <section aria-label={`Stud ${one.stud}`} id={`replaced-${one.stud}`}>
          <p>
            <b>Stud {one.stud}:</b> {replacedInWords(one, writing)}.
          </p>
          <FindingList findings={one.findings} unit={unit} id={`replaced-${one.stud}-finding`} />
          {!readOnly && <ReplacedForm {...props} kept={one} />}
        </section>
      ))}
      {!readOnly && <ReplacedForm {...props} kept={null} />}
      <h3 id="retightened">Re-torqued</h3>
      {again === null ? (
        <p>
          {studs.input?.joint?.retightened
            ? 'Half the settling is counted above, but no re-torque is recorded yet.'
            : 'None recorded.'}
        </p>
      ) : (
        <>
          <p>{retorqueInWords(again, writing)}.</p>
          <FindingList findings={again.findings} unit={unit} id="retightened-finding" />
        </>
      )}
      {!readOnly && <RetorqueForm {...props} />}
    </>
  );
}

/** "How it was set: welded in; Out of square: 0.05 mm; …". What was not measured is left out. */
export function replacedInWords(one: ReplacedStudKept, telling: Telling): string {
  return inOneLine(linesOf(OF_STUD, one, telling, { quiet: true }));
}

export function retorqueInWords(one: RetorqueKept, telling: Telling): string {
  return inOneLine(linesOf(RETORQUE, one, telling, { quiet: true }));
}

function inOneLine(lines: readonly FieldLine[]): string {
  return lines
    .filter(({ value }) => value !== '')
    .map(({ label, value }) => `${label}: ${value.replace(/\.$/, '')}`)
    .join('; ');
}

const { stud: _, ...OF_STUD } = REPLACED_STUD;

/** One stud to record, or one recorded to put right. */
function ReplacedForm(props: StudWorkProps & { readonly kept: ReplacedStudKept | null }) {
  const { job, writing, initials, kept } = props;
  const refused = refusedOf(props, kept?.stud ?? null);
  const count = job.sections.received?.body.family.studCount ?? MOST_STUDS;
  const { box } = REPLACED_STUD.stud;
  const fields = refused?.fields ?? (kept ? asConfirmed(asTyped(REPLACED_STUD, kept, writing)) : {});
  return (
    <details class="change" open={refused !== null}>
      <summary>{kept ? `Change stud ${kept.stud}` : 'Record a replaced stud'}</summary>
      <Caution kind="weld" />
      <JobForm
        id={kept ? `replaced-form-${kept.stud}` : 'replaced-form'}
        action={`/jobs/${encodeURIComponent(job.number)}/replaced`}
        revision={job.revision}
        initials={initials}
        signed={job.stage === 'signed'}
        unit={writing.lengthUnit}
        refused={refused}
        shown={fields}
        submit="Save this stud"
        first={false}
        {...(kept && { also: { label: 'Remove from list', name: REMOVE } })}
      >
        {kept && <input type="hidden" name={box} value={kept.stud} />}
        <BodyFields
          of={REPLACED_STUD}
          fields={fields}
          {...(kept && { kept: asTyped(REPLACED_STUD, kept, writing) })}
          faults={refused?.faults ?? []}
          writing={writing}
          {...(kept && { without: ['stud'] })}
          instead={{
            stud: (
              <Choice
                label={REPLACED_STUD.stud.label}
                name={box}
                value={refused?.fields[box] ?? ''}
                error={errorsOf(refused?.faults ?? [])(box)}
                options={[
                  { value: '', label: 'choose' },
                  ...Array.from({ length: count }, (_, i) => ({
                    value: `${i + 1}`,
                    label: `stud ${i + 1}`,
                  })),
                ]}
              />
            ),
          }}
        />
      </JobForm>
    </details>
  );
}

/** A form that was not taken is shown again where it was sent from: at its stud, or where one is added. */
function refusedOf({ studs, refusedReplaced }: StudWorkProps, stud: number | null): Refused | null {
  const sent = Number(refusedReplaced?.fields[REPLACED_STUD.stud.box]);
  const listed = (studs.replaced ?? []).some((one) => one.stud === sent);
  return (stud === null ? !listed : sent === stud) ? refusedReplaced : null;
}

function RetorqueForm({ job, studs, writing, initials, refusedRetorque: refused }: StudWorkProps) {
  const kept = studs.retightening;
  const fields = refused?.fields ?? (kept ? asConfirmed(asTyped(RETORQUE, kept, writing)) : {});
  return (
    <details class="change" open={refused !== null}>
      <summary>{kept ? 'Change the re-torque' : 'Record that the nuts were re-torqued'}</summary>
      <p class="note">
        Only after the first heat cycle, only where the vehicle's maker allows it, and never on thread-locker.
      </p>
      <JobForm
        id="retightened-form"
        action={`/jobs/${encodeURIComponent(job.number)}/retightened`}
        revision={job.revision}
        initials={initials}
        signed={job.stage === 'signed'}
        unit={writing.lengthUnit}
        refused={refused}
        shown={fields}
        submit="Save the re-torque"
        first={false}
      >
        <div class="fields">
          <Boxes of={RETORQUE} fields={fields} faults={refused?.faults ?? []} writing={writing} />
        </div>
      </JobForm>
    </details>
  );
}
