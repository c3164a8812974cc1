import type { LengthUnit } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { errorsOf } from '../parts/errorsOf.ts';
import { Field } from '../parts/field.tsx';

/** What is known of how well it is measured; without it the answer cannot say how sure it is. */
export function GaugeFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  unit: LengthUnit;
}) {
  const { fields, faults, unit } = props;
  const error = errorsOf(faults);
  const field = (label: string, name: string, hint: string) => (
    <Field label={label} name={name} value={fields[name]} unit={unit} error={error(name)} hint={hint} />
  );
  const known = ['gaugeU', 'gaugeStep', 'gaugeSpread', 'faceU', 'cutU'].some(
    (name) => (fields[name] ?? '') !== '',
  );
  return (
    <details class="change" open={known}>
      <summary>How well it measures, to say how sure the answer is</summary>
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
