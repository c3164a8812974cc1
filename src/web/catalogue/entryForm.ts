import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { familySchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { catalogueGaugeSchema } from '../../../shared/schemas/gauge.ts';
import type {
  CatalogueGauge,
  CatalogueStack,
  Entry,
  EntryBodies,
  Family,
} from '../../../shared/words/catalogue.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { CATALOGUE_STUD } from '../../../shared/words/fields/stud.ts';
import type { CatalogueKind } from '../../../views/pages/catalogue/cataloguePage.tsx';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { Fields, TypedForm, Writing } from '../request/typed.ts';
import { readStack, stackAsTyped, stackFieldOf } from '../stud/stackForm.ts';
import { readStud } from '../stud/studForm.ts';

/** An entry as typed; null when something cannot be used, with the sentences in the form. */
export function readEntry(kind: CatalogueKind, form: TypedForm): EntryBodies[CatalogueKind] | null {
  if (kind === 'stud') return readStud(form);
  if (kind === 'stack') return readStack(form);
  return kind === 'gauge' ? readGauge(form) : readFamily(form);
}

/** The box that each place in a body came from. */
export function entryBox(kind: CatalogueKind, form: TypedForm): (path: string) => string {
  if (kind === 'stack') return stackFieldOf(form);
  const fields = kind === 'stud' ? CATALOGUE_STUD : kind === 'gauge' ? GAUGE : FAMILY;
  return (path) => boxAt(fields, path) ?? 'name';
}

/** An entry as its form would have it typed. */
export function entryAsTyped({ kind, body }: Entry<CatalogueKind>, writing: Writing): Fields {
  if (kind === 'stack') return stackAsTyped(body as CatalogueStack, writing);
  return asTyped(kind === 'stud' ? CATALOGUE_STUD : kind === 'gauge' ? GAUGE : FAMILY, body, writing);
}

function readGauge(form: TypedForm): CatalogueGauge | null {
  const read = readBody(form, GAUGE);
  if (form.faults.length > 0) return null;
  const parsed = catalogueGaugeSchema.safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), entryBox('gauge', form));
  return null;
}

function readFamily(form: TypedForm): Family | null {
  const read = readBody(form, FAMILY);
  const { source: _, ...figures } = read.limits ?? { source: '' };
  if (read.limits !== null && Object.values(figures).every((mm) => mm === null))
    form.fault(
      entryBox('family', form)('limits.source'),
      'A source is given, but no figure. Give one, or leave the source empty.',
    );
  if (form.faults.length > 0) return null;
  const parsed = familySchema.safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), entryBox('family', form));
  return null;
}
