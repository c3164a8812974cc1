import { catalogueStudSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import type { ThreadSpec } from '../../../shared/words/thread.ts';
import { studMarked } from '../../shop/studs/markings.ts';
import type { TypedForm } from '../request/typed.ts';
import { readThreadField } from './stackForm.ts';

/** A stud as typed on a form; null when something is missing or cannot be used, with the sentences in the form. */
export function readStud(form: TypedForm, name: string): CatalogueStud | null {
  const thread = readThreadField(form, 'thread', 'external');
  const grade = gradeOf(form, thread);
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
    tensileMPa: form.pressure('tensile', 'Tensile strength') ?? grade?.tensileMPa ?? null,
    proofMPa: form.pressure('proof', 'Proof stress') ?? grade?.proofMPa ?? null,
    filletMm: form.length('fillet', 'Weld or fillet at the pad'),
    pitchDiameterMeasuredMm: form.length('pitchDiameter', 'Pitch diameter measured'),
  };
  const shelved = onShelf(form);
  if (form.faults.length > 0) return null;
  const parsed = catalogueStudSchema.safeParse({
    name,
    stud,
    threadTyped: form.text('thread'),
    ...shelved,
    note: form.text('note'),
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), studFieldOf);
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
  'stud.pitchDiameterMeasuredMm': 'pitchDiameter',
  stock: 'stock',
  shelf: 'shelf',
  note: 'note',
};

export const studFieldOf = (path: string): string => STUD_FIELDS[path] ?? 'thread';

/** Tensile and proof stress of the class or grade marked on it; what is typed beside it counts before. */
function gradeOf(form: TypedForm, thread: ThreadSpec | null) {
  const name = form.text('grade');
  if (name === '' || thread === null) return null;
  const found = studMarked(name, thread);
  if (found === null)
    form.fault('grade', `No strength is known for ${name} at this diameter. Type tensile and proof stress.`);
  return found;
}

/** Only where the form asked. */
function onShelf(form: TypedForm): { stock?: number | null; shelf?: string } {
  if (form.fields.stock === undefined && form.fields.shelf === undefined) return {};
  return { stock: form.count('stock', 'Number in stock'), shelf: form.text('shelf') };
}
