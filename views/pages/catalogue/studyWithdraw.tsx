import { type KeptStudy, standingReadings } from '../../../shared/words/gauges/gaugeStudies.ts';
import { briefLength } from '../../../shared/words/print.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import type { StudyPageProps } from './studyPageProps.ts';
import { stationInWords } from './studyWords.ts';

/** A mistyped reading is taken back with a reason; `blind`: its figure is not shown. */
export function WithdrawReading(props: StudyPageProps & { readonly blind?: boolean }) {
  const { study, frame, fields, faults, act, blind = false } = props;
  const here = act === 'withdraw';
  const error = here ? errorsOf(faults) : () => null;
  const options = standingNewestFirst(study).map(({ id, place, valueMm }) => ({
    value: id,
    label: `${readingInWords(study, place)}${blind ? '' : `: ${briefLength(valueMm, frame.lengthUnit)}`}`,
  }));
  return (
    <details class="change no-print" open={here}>
      <summary>Withdraw a mistyped reading</summary>
      <form method="post" action={`/studies/${study.number}/withdraw`}>
        <p class="hint">
          {study.stopped === null
            ? 'It stays readable as withdrawn, and the station is read again.'
            : 'It stays readable as withdrawn.'}
        </p>
        {here && <ErrorSummary faults={faults} idOf={(path) => `withdraw-${path}`} />}
        <div class="fields">
          <Choice
            id="withdraw-id"
            label="Reading, the last one first"
            name="id"
            value={here ? fields.id : undefined}
            options={options}
            error={error('id')}
          />
          <Field
            id="withdraw-why"
            label="Why it is withdrawn"
            name="why"
            value={here ? fields.why : ''}
            error={error('why')}
          />
          <Field
            id="withdraw-who"
            label="Your initials"
            name="who"
            value={here ? fields.who : frame.initials}
            error={error('who')}
            size="figure"
            input={{ maxLength: 8 }}
          />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="withdraw-reading">
            Withdraw the reading
          </button>
        </div>
      </form>
    </details>
  );
}

function standingNewestFirst(study: KeptStudy) {
  const standing = new Set(standingReadings(study));
  return study.readings.filter((one) => standing.has(one)).toReversed();
}

/** "Cover 3, AA, round 2". */
export function readingInWords(study: KeptStudy, place: number): string {
  const { station, person, round } = study.order[place]!;
  return `${stationInWords(study, station)}, ${study.plan.people[person]}, round ${round + 1}`;
}
