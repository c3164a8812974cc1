import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { replacedStudSchema, retorqueSchema } from '../../../shared/schemas/studWork.ts';
import { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import type { ReplacedStudAsked, RetorqueAsked } from '../../../shared/words/job.ts';
import { REMOVE } from '../../../views/pages/job/studWorkForms.tsx';
import { type About, replacedExpected, retorqueExpected } from '../../shop/studs/studsExpected.ts';
import { askDay } from '../request/askedDay.ts';
import { askAboutFigures } from '../request/askFigures.ts';
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
  askAboutFigures(form, REPLACED_STUD, replacedExpected());
  if (form.faults.length > 0) return null;
  const parsed = replacedStudSchema.safeParse(read);
  if (parsed.success) return { stud: read.stud, entry: parsed.data };
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(REPLACED_STUD, path) ?? path);
  return null;
}

export function readRetorque(form: TypedForm, today: string, about: About): RetorqueAsked | null {
  const read = readBody(form, RETORQUE, { ifEmpty: { on: today } });
  askDay(form, RETORQUE.on.box, 'The re-torque day', { today });
  if (form.faults.length > 0) return null;
  askAboutFigures(form, RETORQUE, retorqueExpected(about));
  if (form.faults.length > 0) return null;
  const parsed = retorqueSchema.safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(RETORQUE, path) ?? path);
  return null;
}
