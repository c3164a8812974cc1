import { catalogueNutSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueNut } from '../../../shared/words/catalogue.ts';
import { CATALOGUE_NUT, NUT_THREAD_BOX } from '../../../shared/words/fields/stud.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';
import { nutClassMarked, readThreadField } from './stackForm.ts';

/** A nut as typed on a form; null when something is missing or cannot be used, with the sentences in the form. */
export function readNut(form: TypedForm): CatalogueNut | null {
  const thread = readThreadField(form, NUT_THREAD_BOX, 'internal');
  const marked = nutClassMarked(form, thread);
  const read = readBody(form, CATALOGUE_NUT);
  if (form.faults.length > 0) return null;
  const parsed = catalogueNutSchema.safeParse({
    ...read,
    nut: { ...read.nut, thread, proofMPa: read.nut?.proofMPa ?? marked?.proofMPa },
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(CATALOGUE_NUT, path) ?? NUT_THREAD_BOX);
  return null;
}
