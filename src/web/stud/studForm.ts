import { catalogueStudSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import { CATALOGUE_STUD, THREAD_BOX } from '../../../shared/words/fields/stud.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { studMarked } from '../../shop/studs/markings.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';
import { readThreadField } from './stackForm.ts';

/** A stud as typed on a form; null when something is missing or cannot be used, with the sentences in the form. */
export function readStud(form: TypedForm, name?: string): CatalogueStud | null {
  const thread = readThreadField(form, THREAD_BOX, 'external');
  const grade = gradeOf(form, thread);
  const read = readBody(form, CATALOGUE_STUD, { ifEmpty: { name } });
  if (form.faults.length > 0) return null;
  const parsed = catalogueStudSchema.safeParse({
    ...read,
    stud: {
      ...read.stud,
      thread,
      tensileMPa: read.stud?.tensileMPa ?? grade?.tensileMPa,
      proofMPa: read.stud?.proofMPa ?? grade?.proofMPa,
    },
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(CATALOGUE_STUD, path) ?? THREAD_BOX);
  return null;
}

/** Tensile and proof stress of the class or grade marked on it; what is typed beside it counts before. */
function gradeOf(form: TypedForm, thread: ThreadSpec | null) {
  const name = form.text('grade');
  if (name === '' || thread === null) return null;
  const found = studMarked(name, thread);
  if (found === null)
    form.fault(
      'grade',
      `There is no strength for ${name} at this diameter. Enter tensile strength and proof stress.`,
    );
  return found;
}
