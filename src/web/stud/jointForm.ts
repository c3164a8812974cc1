import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { jointSchema, jointTypedSchema } from '../../../shared/schemas/studParts.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import type { JointFrom } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { StudRing } from '../../../shared/words/stud/choices.ts';
import type { Joint } from '../../../shared/words/stud/stud.ts';
import { asConfirmed } from '../../../views/parts/form/questionAt.tsx';
import { JOINT_FIGURES } from '../../shop/studs/joint.ts';
import { aboutStack } from '../../shop/studs/studsExpected.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';
import { askAboutJoint } from './asked.ts';

/** The joint as typed; null when nothing of it was, or when it cannot be used, with the sentences in the form. */
export function readJoint(form: TypedForm, ring: StudRing, stack: CatalogueStack | null): Joint | null {
  const before = form.faults.length;
  const begun = form.has(JOINT.torqueNm.box) || form.has(JOINT.engineTorqueNm.box);
  const read = readBody(form, JOINT, {
    known: JOINT_FIGURES,
    ifEmpty: { studCount: ring.count, studCircleDiameterMm: ring.circleMm },
    idle: !begun,
  });
  if (!begun || form.faults.length > before) return null;
  const ofStack = [
    ...(form.has(JOINT.studCount.box) ? [] : ['count' as const]),
    ...(form.has(JOINT.studCircleDiameterMm.box) ? [] : ['circle' as const]),
  ];
  const parsed = jointSchema.safeParse(read);
  if (parsed.success) {
    askAboutJoint(form, aboutStack(stack));
    if (form.faults.length > before) return null;
    return { ...parsed.data, ...(ring.of === 'stack' && ofStack.length > 0 && { ofStack }) };
  }
  form.addFaults(faultsOf(parsed.error), (path) => jointField(`joint.${path}`));
  return null;
}

/** What is typed of a joint where no stack is chosen yet: what can't be used is told, and nothing is missing. */
export function readJointAlone(form: TypedForm): void {
  const parsed = jointTypedSchema.safeParse(readBody(form, JOINT, { known: JOINT_FIGURES, idle: true }));
  if (!parsed.success) form.addFaults(faultsOf(parsed.error), (path) => jointField(`joint.${path}`));
  else askAboutJoint(form, {});
}

/** Whose torque it is, as chosen on the form. */
export function torqueFromOf(form: TypedForm): JointFrom['torque'] {
  return form.choice('torqueFrom', ['maker', 'other'] as const);
}

/** A joint that was kept, as its form would have it typed. */
export function jointAsTyped(
  joint: Joint,
  torque: JointFrom['torque'],
  writing: Writing,
): Record<string, string> {
  return {
    ...asConfirmed(asTyped(JOINT, joint, writing, { known: JOINT_FIGURES })),
    torqueFrom: torque ?? '',
  };
}

/** What the calculation refused of the joint, beside the field it was typed in. */
export function onJointField({ path, message }: Fault): Fault {
  return { path: jointField(path), message };
}

/** The form's field for a path of the calculation. */
export function jointField(path: string): string {
  const ofJoint = path.startsWith('joint.') ? boxAt(JOINT, path.slice('joint.'.length)) : null;
  return ofJoint ?? (path === 'pullForwardMm' ? 'pull' : path);
}
