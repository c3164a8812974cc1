import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { type MeasuringProps, orderFields } from './measuringProps.ts';

/** A heat mark between stations, where it is typed. */
export function MarkBetween({ job, pass, order, frame, fields, faults }: MeasuringProps) {
  const error = errorsOf(faults);
  return (
    <details class="change" open={error('ma') !== null || error('mr') !== null}>
      <summary>Heat mark between stations</summary>
      <p class="hint" id="touch-hint" hidden>
        Press Heat mark and touch the drawing, or enter where it is.
      </p>
      <form method="get" action={`/jobs/${encodeURIComponent(job.number)}/measure`} id="mark-form">
        <Hidden fields={{ pass, ...orderFields(order) }} />
        <div class="fields">
          <Field
            label="Angle from stud 1"
            name="ma"
            value={fields.ma}
            unit="°"
            error={error('ma')}
            hint="Clockwise"
          />
          <Field label="Radius" name="mr" value={fields.mr} unit={frame.lengthUnit} error={error('mr')} />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="place-mark">
            Measure this heat mark
          </button>
        </div>
      </form>
    </details>
  );
}

/** Part of the form of the reading, so that initials typed beside it go along. */
const BESIDE_THE_READING = { form: 'reading-form' };

/** Which station follows which, what is read at each and how often: chosen once, and remembered on this tablet. */
export function OrderForm({ job, order }: MeasuringProps) {
  return (
    <details class="change">
      <summary>Readings per station, order, and what to measure</summary>
      <div id="order-form">
        <div class="fields">
          <Choice
            label="Stations"
            name="round"
            value={order.round}
            select={BESIDE_THE_READING}
            options={[
              { value: 'numbered', label: 'as numbered' },
              { value: 'clockwise', label: 'clockwise from stud 1, both rows' },
              { value: 'anticlockwise', label: 'counterclockwise from stud 1, both rows' },
              { value: 'across', label: 'each, then the one across' },
            ]}
          />
          <Choice
            label="Readings"
            name="by"
            value={order.by}
            select={BESIDE_THE_READING}
            options={[
              { value: 'kind', label: 'all walls, then all indicator readings, then heat marks' },
              { value: 'station', label: 'all of one station, then the next' },
            ]}
          />
          <Choice
            label="Measure"
            name="asks"
            value={order.asks}
            select={BESIDE_THE_READING}
            options={[
              { value: 'w', label: 'walls' },
              { value: 'wf', label: 'walls and indicator readings' },
              { value: 'wfm', label: 'walls, indicator readings and heat marks' },
            ]}
          />
          <Choice
            label="Wall readings per station"
            name="times"
            value={String(order.times)}
            select={BESIDE_THE_READING}
            options={[
              { value: '1', label: '1' },
              { value: '2', label: '2' },
              { value: '3', label: '3' },
            ]}
          />
          <Choice
            label="Second and third reading"
            name="repeats"
            value={order.repeats}
            select={BESIDE_THE_READING}
            options={[
              { value: 'together', label: 'right after the first' },
              { value: 'rounds', label: 'in another round of all stations' },
            ]}
          />
        </div>
        <div class="actions">
          <button
            class="button"
            type="submit"
            id="set-order"
            form="reading-form"
            formaction={`/jobs/${encodeURIComponent(job.number)}/measure/order`}
            formnovalidate
          >
            Measure in this order
          </button>
        </div>
      </div>
    </details>
  );
}
