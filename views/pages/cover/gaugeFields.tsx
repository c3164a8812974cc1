import type { Entry } from '../../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { gaugeInWords } from '../catalogue/gaugeEntryFields.tsx';

/** What is known of how well it is measured; without it the answer cannot say how sure it is. */
export function GaugeFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  unit: LengthUnit;
  gauges: readonly Entry<'gauge'>[];
}) {
  const { fields, faults, unit, gauges } = props;
  const error = errorsOf(faults);
  const field = (label: string, name: string, hint: string) => (
    <Field label={label} name={name} value={fields[name]} unit={unit} error={error(name)} hint={hint} />
  );
  const choose = (label: string, name: string, indicators: boolean) => (
    <Choice
      label={label}
      name={name}
      value={fields[name] ?? ''}
      options={[
        { value: '', label: 'none of the catalogue' },
        ...gauges
          .filter(({ body }) => (body.gaugeKind === 'indicator') === indicators)
          .map(({ id, body }) => ({ value: id, label: `${body.name}: ${gaugeInWords(body, unit)}` })),
      ]}
    />
  );
  const known = ['wallGauge', 'faceGauge', 'gaugeU', 'gaugeStep', 'gaugeSpread', 'faceU', 'cutU'].some(
    (name) => (fields[name] ?? '') !== '',
  );
  return (
    <details class="change" open={known}>
      <summary>How well it measures, to say how sure the answer is</summary>
      {gauges.length > 0 && (
        <div class="fields">
          {choose('Gauge for the wall', 'wallGauge', false)}
          {choose('Indicator for the face', 'faceGauge', true)}
        </div>
      )}
      <p class="hint">
        {gauges.length > 0 ? 'What is typed here goes before what the catalogue has of the gauge. ' : ''}What
        is not given counts as nothing.
      </p>
      <div class="fields">
        {field('Gauge, standard uncertainty', 'gaugeU', 'Of its calibration: U divided by k')}
        {field('Gauge, resolution', 'gaugeStep', 'The smallest step it shows')}
        {field('Gauge, repeatability', 'gaugeSpread', 'Standard deviation of one reading')}
        {field('Indicator, standard uncertainty', 'faceU', 'Of a face height')}
        {field('Setting the cut, standard uncertainty', 'cutU', 'How well the lathe takes what is dialled')}
      </div>
    </details>
  );
}
