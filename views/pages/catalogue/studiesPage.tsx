import type { Entry } from '../../../shared/words/catalogue.ts';
import { printDay } from '../../../shared/words/day.ts';
import { GAUGE_STUDY } from '../../../shared/words/fields/gaugeStudy.ts';
import {
  type KeptStudy,
  nextPlace,
  type RepeatsTold,
  standingReadings,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { briefLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Working } from '../../parts/findingList.tsx';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { ListTable } from '../../parts/listTable.tsx';
import { planInWords } from './studyWords.ts';

export interface StudiesProps {
  readonly frame: Frame;
  readonly gauge: Entry<'gauge'>;
  /** Newest first. */
  readonly studies: readonly KeptStudy[];
  /** null where no station was read twice in one job. */
  readonly inJobs: RepeatsTold | null;
  readonly sentId: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** The studies of a gauge, and the way to another. */
export function StudiesPage(props: StudiesProps) {
  const { frame, gauge, studies } = props;
  return (
    <Layout title={`${gauge.name}: gauge and hands`} here="catalogue" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>{gauge.name}: gauge and hands</h1>
      <p class="why">
        Several people read the same covers several times, without seeing what was read before. That tells how
        much readings differ by the gauge, by the person and by the cover.{' '}
        <a href={`/catalogue/gauge/${encodeURIComponent(gauge.id)}`}>The gauge in the catalog</a>
      </p>
      {studies.length > 0 && <Studies studies={studies} />}
      <InJobs {...props} />
      {may(frame, 'keeper') ? (
        <NewStudy {...props} />
      ) : (
        <p class="note">Only a manager can set up a study.</p>
      )}
    </Layout>
  );
}

/** Of ordinary jobs: repeatability alone. */
function InJobs({ frame, inJobs }: StudiesProps) {
  const unit = frame.lengthUnit;
  return (
    <section id="in-jobs">
      <h2>From ordinary jobs</h2>
      {inJobs === null ? (
        <p>No station was read twice in one job with this gauge, so its jobs say nothing of it.</p>
      ) : (
        <>
          <p>
            Repeatability <b>{briefLength(inJobs.repeatability.value!, unit)}</b>: one standard deviation,{' '}
            {inJobs.degreesOfFreedom} degrees of freedom, pooled over {inJobs.stations} stations read more
            than once in {inJobs.jobs === 1 ? '1 job' : `${inJobs.jobs} jobs`}.
          </p>
          <details class="change no-print">
            <summary>Working</summary>
            <Working answer={inJobs.repeatability} unit={unit} />
          </details>
        </>
      )}
      <p class="hint">
        How people differ can’t be told from jobs: each cover is read by one person, so a difference may be
        the cover’s or the person’s. Only a study tells them apart.
      </p>
    </section>
  );
}

function Studies({ studies }: Pick<StudiesProps, 'studies'>) {
  return (
    <section>
      <h2>Studies of this gauge</h2>
      <ListTable
        caption="Studies of this gauge"
        columns={[{ label: 'Study' }, { label: 'Day' }, { label: 'What is read' }, { label: 'State' }]}
        rows={studies.map((study) => ({
          id: `study-${study.number}`,
          href: `/studies/${study.number}`,
          name: `Study ${study.number}`,
          cells: [printDay(study.day), planInWords(study), stateOf(study)],
        }))}
      />
    </section>
  );
}

function stateOf(study: KeptStudy): string {
  if (study.stopped !== null) return 'Stopped early';
  if (nextPlace(study) === null) return 'Complete';
  const taken = standingReadings(study).filter((one) => one !== null).length;
  return `${taken} of ${study.order.length} read`;
}

function NewStudy({ frame, gauge, sentId, fields, faults }: StudiesProps) {
  const error = errorsOf(faults);
  const { label, box } = GAUGE_STUDY.people;
  return (
    <form method="post" action={`/gauges/${encodeURIComponent(gauge.id)}/studies`} id="study-form">
      <h2>Set up a study</h2>
      <p class="hint">
        Choose covers that differ as covers do here. The order is drawn by lot and saved; the tablet then
        leads from reading to reading, and shows no figures until all are taken.
      </p>
      <ErrorSummary faults={faults} />
      <Hidden fields={{ sentId, unit: frame.lengthUnit }} />
      <div class="fields">
        <Boxes of={GAUGE_STUDY} fields={fields} faults={faults} writing={frame} />
        <Field
          label={label}
          name={box}
          value={fields[box]}
          error={error(box)}
          hint="Initials of 2 to 6 people, with commas between"
        />
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="start-study">
          Save and begin
        </button>
      </div>
    </form>
  );
}
