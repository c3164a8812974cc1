import { type CatalogueGauge, GAUGE_KINDS } from '../../../shared/words/catalogue.ts';
import { briefLength, type LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';

export interface GaugeEntryFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}

/** A gauge of the shop, with what its certificate says. */
export function GaugeEntryFields({ fields, faults, unit }: GaugeEntryFieldsProps) {
  const error = errorsOf(faults);
  const length = (label: string, name: string, hint: string) => (
    <Field
      label={label}
      name={name}
      value={fields[name]}
      unit={unit}
      error={error(name)}
      hint={hint}
      optional
    />
  );
  return (
    <fieldset class="group">
      <legend>The gauge</legend>
      <div class="fields">
        <Choice
          label="Kind"
          name="gaugeKind"
          value={fields.gaugeKind ?? 'micrometer'}
          options={GAUGE_KINDS.map((value) => ({ value, label: value }))}
        />
        {length('Resolution', 'resolution', 'The smallest step it shows')}
        {length('Expanded uncertainty U', 'calibration', 'From its certificate')}
        <Field
          label="Coverage factor k"
          name="coverage"
          value={fields.coverage ?? '2'}
          error={error('coverage')}
          size="figure"
          inputmode="decimal"
          hint="From its certificate; usually 2"
        />
        {length('Repeatability', 'repeatability', 'Standard deviation of one reading')}
        <Field
          label="Calibration due"
          name="due"
          type="date"
          value={fields.due}
          error={error('due')}
          size="figure"
          optional
        />
      </div>
    </fieldset>
  );
}

export function gaugeInWords(gauge: CatalogueGauge, unit: LengthUnit): string {
  const length = (mm: number) => briefLength(mm, unit);
  return [
    gauge.gaugeKind,
    ...(gauge.resolutionMm === null ? [] : [`steps of ${length(gauge.resolutionMm)}`]),
    ...(gauge.calibrationUMm === null
      ? ['no certificate']
      : [`U ${length(gauge.calibrationUMm)}, k ${gauge.coverageFactor}`]),
    gauge.dueOn === null ? 'no date due' : `due ${gauge.dueOn}`,
  ].join('; ');
}
