import { catalogueStudSchema } from '../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../shared/schemas/faultsOf.ts';
import type { CatalogueStud } from '../../shared/words/catalogue.ts';
import { readThreadField } from './stackForm.ts';
import type { TypedForm } from './typed.ts';

/** A stud as typed on a form; null when something is missing or cannot be used, with the sentences in the form. */
export function readStud(form: TypedForm, name: string): CatalogueStud | null {
  const thread = readThreadField(form, 'thread', 'external');
  const threadStartMm = form.length('threadStart', 'First full thread');
  const threadEndMm = form.length('threadEnd', 'Last full thread');
  const projectionMm = form.length('projection', 'Projection to the tip');
  const stud = {
    thread: form.has('thread') ? thread : form.needed(thread, 'thread', 'Thread'),
    threadStartMm: form.has('threadStart')
      ? threadStartMm
      : form.needed(threadStartMm, 'threadStart', 'First full thread'),
    threadEndMm: form.has('threadEnd')
      ? threadEndMm
      : form.needed(threadEndMm, 'threadEnd', 'Last full thread'),
    projectionMm: form.has('projection')
      ? projectionMm
      : form.needed(projectionMm, 'projection', 'Projection to the tip'),
    lengthToleranceMm: form.length('tolerance', 'Tolerance of the lengths') ?? 0,
    pilotDiameterMm: form.length('pilot', 'Pilot diameter'),
    tensileMPa: form.pressure('tensile', 'Tensile strength'),
    proofMPa: form.pressure('proof', 'Proof stress'),
    filletMm: form.length('fillet', 'Weld or fillet at the pad'),
  };
  if (form.faults.length > 0) return null;
  const parsed = catalogueStudSchema.safeParse({
    name,
    stud,
    threadTyped: form.text('thread'),
    note: form.text('note'),
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => STUD_FIELDS[path] ?? 'thread');
  return null;
}

const STUD_FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  'stud.thread': 'thread',
  'stud.threadStartMm': 'threadStart',
  'stud.threadEndMm': 'threadEnd',
  'stud.projectionMm': 'projection',
  'stud.lengthToleranceMm': 'tolerance',
  'stud.pilotDiameterMm': 'pilot',
  'stud.tensileMPa': 'tensile',
  'stud.proofMPa': 'proof',
  'stud.filletMm': 'fillet',
  note: 'note',
};
