import type { Job, ReplacedStudKept, RetighteningKept, StudsChosen } from '../../../shared/words/job.ts';
import { type LengthUnit, printLength, printTorque } from '../../../shared/words/print.ts';
import { Caution } from '../../parts/caution.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, Tick } from '../../parts/form/fieldBox.tsx';
import { day } from '../../parts/when.tsx';
import type { TorqueUnit } from '../stud/jointFields.tsx';
import { JobForm, type Refused } from './section.tsx';

export interface StudWorkProps {
  readonly job: Job;
  readonly studs: StudsChosen;
  readonly unit: LengthUnit;
  readonly torqueUnit: TorqueUnit;
  readonly initials: string;
  readonly refusedReplaced: Refused | null;
  readonly refusedRetightened: Refused | null;
  readonly readOnly: boolean;
}

const HOW = { welded: 'welded in', pressed: 'pressed in' } as const;

/** Studs that were set anew, and nuts that were tightened again: what was recorded, what was found, the forms. */
export function StudWork(props: StudWorkProps) {
  const { studs, readOnly, unit } = props;
  const replaced = studs.replaced ?? [];
  const again = studs.retightening ?? null;
  return (
    <>
      <h3 id="replaced">Studs set anew</h3>
      {replaced.length === 0 && <p>None is recorded.</p>}
      {replaced.map((one) => (
        <section aria-label={`Stud ${one.stud}`} id={`replaced-${one.stud}`}>
          <p>
            <b>Stud {one.stud}:</b> {replacedInWords(one, unit)}.
          </p>
          <FindingList findings={one.findings} unit={unit} id={`replaced-${one.stud}-finding`} />
        </section>
      ))}
      {!readOnly && <ReplacedForm {...props} />}
      <h3 id="retightened">Tightened again</h3>
      {again === null ? (
        <p>
          {studs.input?.joint?.retightened
            ? 'Half the settling is counted in the joint above, and tightening again is not recorded yet.'
            : 'Not recorded.'}
        </p>
      ) : (
        <>
          <p>{retightenedInWords(again, unit)}</p>
          <FindingList findings={again.findings} unit={unit} id="retightened-finding" />
        </>
      )}
      {!readOnly && <RetightenedForm {...props} />}
    </>
  );
}

/** "welded in; leans 0.20 mm at 20.00 mm; foot 0.10 mm out; held 45.0 N·m". What was not measured is left out. */
export function replacedInWords(one: ReplacedStudKept, unit: LengthUnit): string {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  return [
    HOW[one.how],
    ...(one.leanMm === null || one.leanAtMm === null
      ? []
      : [`leans ${mm(one.leanMm)} at ${mm(one.leanAtMm)}`]),
    ...(one.offMm === null ? [] : [`foot ${mm(one.offMm)} out of place`]),
    ...(one.filletMm === null ? [] : [`weld or fillet ${mm(one.filletMm)}`]),
    ...(one.provedNm === null
      ? []
      : [`${one.heldIt ? 'held' : 'did not hold'} ${printTorque(one.provedNm, unit, 1)}`]),
    ...(one.note === '' ? [] : [one.note.replace(/\.$/, '')]),
  ].join('; ');
}

export function retightenedInWords(one: RetighteningKept, unit: LengthUnit): string {
  const note = one.note === '' ? '' : ` ${one.note}`;
  return `To ${printTorque(one.torqueNm, unit, 1)}, on ${day(one.on)}.${note}`;
}

function ReplacedForm({ job, unit, torqueUnit, initials, refusedReplaced: refused }: StudWorkProps) {
  const typed = refused?.fields ?? {};
  const error = errorsOf(refused?.faults ?? []);
  const count = job.sections.received?.body.family.studCount ?? 24;
  const field = (label: string, name: string, more: Partial<Parameters<typeof Field>[0]> = {}) => (
    <Field label={label} name={name} value={typed[name]} error={error(name)} optional {...more} />
  );
  return (
    <details class="change" open={refused !== null}>
      <summary>Record a stud set anew</summary>
      <Caution kind="weld" />
      <JobForm
        id="replaced-form"
        action={`/jobs/${encodeURIComponent(job.number)}/replaced`}
        revision={job.revision}
        initials={initials}
        signed={job.stage === 'signed'}
        refused={refused}
        submit="Keep this stud"
        first={false}
      >
        <input type="hidden" name="torqueUnit" value={torqueUnit} />
        <div class="fields">
          <Choice
            label="Stud"
            name="studNumber"
            value={typed.studNumber ?? ''}
            error={error('studNumber')}
            options={[
              { value: '', label: 'choose' },
              ...Array.from({ length: count }, (_, i) => ({ value: `${i + 1}`, label: `stud ${i + 1}` })),
            ]}
          />
          <Choice
            label="How it was set"
            name="setHow"
            value={typed.setHow ?? 'welded'}
            error={error('setHow')}
            options={[
              { value: 'welded', label: 'welded in' },
              { value: 'pressed', label: 'pressed in' },
              { value: 'none', label: 'not set anew after all: take it off the list' },
            ]}
          />
          {field('It leans', 'lean', { unit, hint: 'From square, with a square on the pad' })}
          {field('Measured at height', 'leanAt', { unit, hint: 'Above the pad' })}
          {field('Its foot is out of place by', 'off', { unit })}
          {field('Weld or fillet at its foot', 'fillet', { unit, hint: 'Beyond the stud’s own radius' })}
          {field('Proved with', 'proved', { unit: torqueUnit, hint: 'A nut on a spacer' })}
          <Choice
            label="It held that"
            name="held"
            value={typed.held ?? ''}
            error={error('held')}
            options={[
              { value: '', label: 'not proved' },
              { value: 'yes', label: 'yes, without turning or pulling' },
              { value: 'no', label: 'no' },
            ]}
          />
          {field('Note', 'setNote', { size: 'full' })}
        </div>
      </JobForm>
    </details>
  );
}

function RetightenedForm({ job, torqueUnit, initials, refusedRetightened: refused }: StudWorkProps) {
  const typed = refused?.fields ?? {};
  const error = errorsOf(refused?.faults ?? []);
  return (
    <details class="change" open={refused !== null}>
      <summary>Record that the nuts were tightened again</summary>
      <p class="note">
        Only after the first heat cycle, only where the vehicle's maker allows it, and never on thread-locker.
      </p>
      <JobForm
        id="retightened-form"
        action={`/jobs/${encodeURIComponent(job.number)}/retightened`}
        revision={job.revision}
        initials={initials}
        signed={job.stage === 'signed'}
        refused={refused}
        submit="Keep this"
        first={false}
      >
        <input type="hidden" name="torqueUnit" value={torqueUnit} />
        <div class="fields">
          <Field
            label="Torque"
            name="againTorque"
            value={typed.againTorque}
            error={error('againTorque')}
            unit={torqueUnit}
          />
          <Field
            label="On"
            name="againOn"
            type="date"
            value={typed.againOn}
            error={error('againOn')}
            optional
            hint="Empty: today"
          />
          <Choice
            label="The vehicle's maker allows it"
            name="makerAllows"
            value={typed.makerAllows ?? 'not-said'}
            options={[
              { value: 'not-said', label: 'not looked up' },
              { value: 'yes', label: 'yes' },
              { value: 'no', label: 'no' },
            ]}
          />
          <Field
            label="Note"
            name="againNote"
            value={typed.againNote}
            error={error('againNote')}
            optional
            size="full"
          />
        </div>
        <Tick
          label="There is thread-locker on the threads"
          name="locker"
          value="1"
          checked={typed.locker === '1'}
        />
      </JobForm>
    </details>
  );
}
