import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { GAUGE_FIGURES, SETUP } from '../../../shared/words/fields/setup.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { anyWrong, EnteredCount } from '../../parts/form/entered.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { FoldedBoxes } from '../../parts/form/foldedBoxes.tsx';
import { gaugeInWords } from '../catalogue/gaugeInWords.ts';

interface GaugeProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  readonly gauges: readonly Entry<'gauge'>[];
}

/** The gauges of the catalog, chosen once: name and figures come with them. */
export function ChosenGauges({ fields, writing, gauges }: GaugeProps) {
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
  return (
    <>
      {gauges.map(({ id, revision }) => (
        <input type="hidden" name={`gaugeRevision.${id}`} value={revision} />
      ))}
      {choose('Gauge for the wall', 'wallGauge', false)}
      {choose('Indicator for the face', 'faceGauge', true)}
    </>
  );
}

/** What is known of how well it is measured; without it the answer cannot say how sure it is. */
export function GaugeFields(props: GaugeProps) {
  const { fields, gauges } = props;
  return (
    <details class="change" id="gauge-figures" open={anyWrong(props.faults, GAUGE_BOXES)}>
      <summary>
        Gauge figures, to say how sure it is
        <EnteredCount fields={fields} names={GAUGE_BOXES} />
      </summary>
      {gauges.length > 0 && (
        <div class="fields">
          <ChosenGauges {...props} />
        </div>
      )}
      <TypedFigures {...props} />
    </details>
  );
}

/** A gauge that is not in the catalog, by its name and its figures. */
export function OtherGauge(props: GaugeProps) {
  const { gauges, ...boxes } = props;
  const { gauge } = SETUP;
  return (
    <FoldedBoxes
      {...boxes}
      head={gauges.length === 0 ? 'The gauge and its figures' : 'A gauge that is not in the catalog'}
      says={`Needed to say how sure it is${gauges.length === 0 ? '' : ', where no gauge is chosen above'}. ${whatBlankIs(gauges)}`}
      names={['gauge', ...FIGURES]}
      open={gauges.length === 0}
    >
      <Boxes of={{ gauge }} {...boxes} />
      <Boxes of={GAUGE_FIGURES} {...boxes} />
    </FoldedBoxes>
  );
}

const FIGURES: readonly string[] = Object.values(GAUGE_FIGURES).map(({ box }) => box);

const GAUGE_BOXES = ['wallGauge', 'faceGauge', ...FIGURES];

function whatBlankIs(gauges: GaugeProps['gauges']): string {
  return gauges.length > 0
    ? 'Typed figures replace the gauge’s own. With no gauge chosen, blank counts as zero.'
    : 'Blank counts as zero.';
}

function TypedFigures({ fields, faults, writing, gauges }: GaugeProps) {
  return (
    <>
      <p class="hint">{whatBlankIs(gauges)}</p>
      <div class="fields">
        <Boxes of={GAUGE_FIGURES} fields={fields} faults={faults} writing={writing} />
      </div>
    </>
  );
}
