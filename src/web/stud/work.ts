import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { replacedStudSchema, retighteningSchema } from '../../../shared/schemas/studWork.ts';
import { REPLACED_STUD, RETIGHTENING } from '../../../shared/words/fields/studWork.ts';
import type { ReplacedStudAsked, RetighteningAsked } from '../../../shared/words/job.ts';
import { REMOVE } from '../../../views/pages/job/studWorkForms.tsx';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

/** One replaced stud as typed, or the number of one to take off the list. null with the sentences in the form. */
export function readReplaced(
  form: TypedForm,
): { readonly stud: number; readonly entry: ReplacedStudAsked | null } | null {
  if (form.has(REMOVE)) {
    const { stud } = readBody(form, { stud: REPLACED_STUD.stud });
    return stud === null ? null : { stud, entry: null };
  }
  const read = readBody(form, REPLACED_STUD);
  if (form.faults.length > 0 || read.stud === null) return null;
  const parsed = replacedStudSchema.safeParse(read);
  if (parsed.success) return { stud: read.stud, entry: parsed.data };
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(REPLACED_STUD, path) ?? path);
  return null;
}

export function readRetightening(form: TypedForm, today: string): RetighteningAsked | null {
  const read = readBody(form, RETIGHTENING, { ifEmpty: { on: today } });
  if (form.faults.length > 0) return null;
  const parsed = retighteningSchema.safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(RETIGHTENING, path) ?? path);
  return null;
}
