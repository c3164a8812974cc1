import { standingReadings } from '../../../shared/words/gauges/gaugeStudies.ts';
import { may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field, FieldError } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import type { StudyPageProps } from './studyPageProps.ts';
import { WithdrawReading } from './studyWithdraw.tsx';
import { stationInWords } from './studyWords.ts';

/** Who reads what now, and one box: nothing that was read before is in sight. */
export function StudyTurnPage(
  props: StudyPageProps & { readonly place: number; readonly sentId: string; readonly typed: string },
) {
  const { frame, gauge, study, place, faults, act } = props;
  const { plan, order } = study;
  const turn = order[place]!;
  const person = plan.people[turn.person]!;
  const taken = standingReadings(study).filter((one) => one !== null).length;
  const before = order[place - 1];
  const changes = before === undefined || before.person !== turn.person;
  return (
    <Layout title={`Study ${study.number}, ${gauge.name}`} here="catalogue" {...frame} nothingSwaps>
      <link rel="stylesheet" href="/assets/bench.css" />
      <div id="measuring">
        <p class="measuring-of">
          <a href={`/gauges/${encodeURIComponent(study.gaugeId)}/studies`}>Study {study.number}</a>,{' '}
          {gauge.name}
        </p>
        <ErrorSummary
          faults={act === 'read' ? faults : []}
          idOf={(path) => (path === 'value' ? 'reading' : undefined)}
        />
        <h1 id="asked">{stationInWords(study, turn.station)}</h1>
        <p class="why" id="asked-more">
          <b>{person}’s turn</b>
          {changes && `: hand the gauge to ${person}`}. Round {turn.round + 1} of {plan.rounds}. Zero the
          gauge as on any job.
        </p>
        {may(frame, 'recorder') ? (
          <ReadingBox {...props} />
        ) : (
          <p class="note">Only who records readings can take this reading.</p>
        )}
        <p class="hint" id="study-progress">
          {taken} of {order.length} readings saved. Figures are shown when all are taken.
        </p>
        <progress class="study-progress" max={order.length} value={taken} aria-labelledby="study-progress" />
      </div>
      {may(frame, 'recorder') && taken > 0 && <WithdrawReading {...props} blind />}
      {may(frame, 'keeper') && <StopEarly {...props} />}
    </Layout>
  );
}

function ReadingBox(
  props: StudyPageProps & { readonly place: number; readonly sentId: string; readonly typed: string },
) {
  const { frame, study, place, sentId, typed, fields, faults, doubts, act } = props;
  const error = act === 'read' ? errorsOf(faults)('value') : null;
  return (
    <form
      method="post"
      action={`/studies/${study.number}`}
      id="reading-form"
      data-typed-of={`study-${study.number}`}
      data-typed-at={place}
    >
      <Hidden fields={{ sentId, unit: frame.lengthUnit, place: String(place) }} />
      <div class={`field reading${error ? ' field-wrong' : ''}`}>
        <label for="reading">Reading</label>
        <span class="box">
          <input
            id="reading"
            name="value"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            value={typed}
            enterkeyhint="next"
            autofocus
            aria-describedby={`asked asked-more reading-unit${error ? ' reading-error' : ''}`}
            aria-invalid={error ? 'true' : undefined}
          />
          <span class="unit" id="reading-unit">
            {frame.lengthUnit}
          </span>
        </span>
        {error && <FieldError id="reading-error" text={error} />}
        <p class="hint" data-typed-note hidden>
          Typed before this page was lost, and not saved yet: save it, or read again.
        </p>
      </div>
      <Questions doubts={doubts} fields={fields} />
      <div class="actions">
        <button class="button first" type="submit" id="keep-reading">
          Save and next
        </button>
      </div>
    </form>
  );
}

/** Ends it with what is then known. */
function StopEarly({ study, frame, fields, faults, act }: StudyPageProps) {
  const here = act === 'stop';
  const error = here ? errorsOf(faults) : () => null;
  return (
    <details class="change" open={here}>
      <summary>Stop the study early</summary>
      <form method="post" action={`/studies/${study.number}/stop`}>
        <p class="hint">
          Whole rounds are worked out; a round that is not finished is saved and left out. A stopped study
          can’t go on.
        </p>
        {here && <ErrorSummary faults={faults} idOf={(path) => `stop-${path}`} />}
        <div class="fields">
          <Field
            id="stop-why"
            label="Why it is stopped"
            name="why"
            value={here ? fields.why : ''}
            error={error('why')}
          />
          <Field
            id="stop-who"
            label="Your initials"
            name="who"
            value={here ? fields.who : frame.initials}
            error={error('who')}
            size="figure"
            input={{ maxLength: 8 }}
          />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="stop-study">
            Stop the study
          </button>
        </div>
      </form>
    </details>
  );
}
