import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { GAUGE_FIGURES } from '../../../shared/words/fields/setup.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { gaugeInWords } from '../catalogue/gaugeInWords.ts';

/** What is known of how well it is measured; without it the answer cannot say how sure it is. */
export function GaugeFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  writing: Writing;
  gauges: readonly Entry<'gauge'>[];
}) {
  const { fields, faults, writing, gauges } = props;
  const choose = (label: string, name: string, indicators: boolean) => (
    <Choice
      label={label}
      name={name}
      value={fields[name] ?? ''}
      options={[
        { value: '', label: 'none from the catalog' },
        ...gauges
          .filter(({ body }) => (body.gaugeKind === 'indicator') === indicators)
          .map(({ id, body }) => ({
            value: id,
            label: `${body.name}: ${gaugeInWords(body, writing.lengthUnit)}`,
          })),
      ]}
    />
  );
  const known = ['wallGauge', 'faceGauge', ...Object.values(GAUGE_FIGURES).map(({ box }) => box)].some(
    (name) => (fields[name] ?? '') !== '',
  );
  return (
    <details class="change" open={known}>
      <summary>Gauge figures, to say how sure the answer is</summary>
      {gauges.length > 0 && (
        <div class="fields">
          {choose('Gauge for the wall', 'wallGauge', false)}
          {choose('Indicator for the face', 'faceGauge', true)}
        </div>
      )}
      <p class="hint">
        {gauges.length > 0
          ? 'Typed figures replace the gauge’s own. With no gauge chosen, blank counts as zero.'
          : 'Blank counts as zero.'}
      </p>
      <div class="fields">
        <Boxes of={GAUGE_FIGURES} fields={fields} faults={faults} writing={writing} />
      </div>
    </details>
  );
}
