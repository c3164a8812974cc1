import type { FieldLine, Telling } from '../../../shared/quantity/fieldLines.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { catalogueGaugeSchema } from '../../../shared/schemas/gauge.ts';
import { type CatalogueGauge, GAUGE_KINDS } from '../../../shared/words/catalogue.ts';
import { lengthsOf } from '../request/fieldLines.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

const FIELD: Readonly<Record<string, string>> = {
  name: 'name',
  gaugeKind: 'gaugeKind',
  resolutionMm: 'resolution',
  calibrationUMm: 'calibration',
  coverageFactor: 'coverage',
  repeatabilityMm: 'repeatability',
  dueOn: 'due',
  note: 'note',
};

export const gaugeFieldOf = (path: string): string => FIELD[path] ?? 'name';

/** A gauge as typed on a form; null when something cannot be used, with the sentences in the form. */
export function readGaugeEntry(form: TypedForm, name: string): CatalogueGauge | null {
  const coverage = form.number('coverage', 'Coverage factor k');
  const raw = {
    name,
    gaugeKind: form.choice('gaugeKind', GAUGE_KINDS) ?? 'micrometer',
    resolutionMm: form.length('resolution', 'Resolution'),
    calibrationUMm: form.length('calibration', 'Expanded uncertainty U'),
    coverageFactor: coverage ?? 2,
    repeatabilityMm: form.length('repeatability', 'Repeatability'),
    dueOn: form.text('due') || null,
    note: form.text('note'),
  };
  if (form.faults.length > 0) return null;
  const parsed = catalogueGaugeSchema.safeParse(raw);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), gaugeFieldOf);
  return null;
}

export function gaugeAsEntered(body: CatalogueGauge, text: (mm: number | null) => string): Fields {
  return {
    name: body.name,
    gaugeKind: body.gaugeKind,
    resolution: text(body.resolutionMm),
    calibration: text(body.calibrationUMm),
    coverage: String(body.coverageFactor),
    repeatability: text(body.repeatabilityMm),
    due: body.dueOn ?? '',
    note: body.note,
  };
}

export function gaugeFields(body: CatalogueGauge, telling: Telling): FieldLine[] {
  const line = (label: string, value: string): FieldLine => ({ label, value });
  const length = lengthsOf(body, '', telling);
  return [
    line('Name', body.name),
    line('Kind', body.gaugeKind),
    line('Resolution', length('resolutionMm')),
    line('Expanded uncertainty U', length('calibrationUMm')),
    line('Coverage factor k', String(body.coverageFactor)),
    line('Repeatability', length('repeatabilityMm')),
    line('Calibration due', body.dueOn ?? 'not said'),
    line('Note', body.note),
  ];
}
