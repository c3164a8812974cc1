import { writeLength } from '../../../shared/quantity/writeLength.ts';
import type { Gauge } from '../../../shared/words/cover.ts';
import type { Fields, TypedForm, Writing } from '../request/typed.ts';

const FIELD = {
  standardUncertaintyMm: ['gaugeU', "The gauge's standard uncertainty"],
  resolutionMm: ['gaugeStep', "The gauge's resolution"],
  repeatabilityMm: ['gaugeSpread', "The gauge's repeatability"],
  faceStandardUncertaintyMm: ['faceU', "The indicator's standard uncertainty"],
  cutSettingStandardUncertaintyMm: ['cutU', 'The standard uncertainty of setting the cut'],
} as const satisfies Record<keyof Gauge, readonly [string, string]>;

const ENTRIES = Object.entries(FIELD) as [keyof Gauge, readonly [string, string]][];

/** How well the gauge measures, as typed; null when nothing is known of it. What is not given contributes nothing. */
export function readGauge(form: TypedForm): Gauge | null {
  const values = ENTRIES.map(([key, [name, label]]) => {
    const value = form.length(name, label);
    if (value !== null && value < 0)
      form.fault(name, `${label} is ${value} mm; it cannot be below 0. Type it without the sign.`);
    return [key, value] as const;
  });
  return values.every(([, value]) => value === null)
    ? null
    : (Object.fromEntries(values) as unknown as Gauge);
}

export function gaugeAsTyped(gauge: Gauge | null, writing: Writing): Fields {
  if (gauge === null) return {};
  return Object.fromEntries(
    ENTRIES.map(([key, [name]]) => {
      const mm = gauge[key];
      return [name, mm === null ? '' : writeLength(mm, writing.lengthUnit, writing.decimalSign)];
    }),
  );
}
