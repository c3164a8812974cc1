import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import type { Entry, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import type { Job, StudsChosen } from '../../../shared/words/job.ts';
import type { KeptSlip } from '../../../shared/words/stud/slip.ts';
import type { Frame } from '../../../views/frame.ts';
import type { StudsAsked } from '../../../views/pages/job/studs.tsx';
import { resurfacedMmOf, studsForJob } from '../../shop/studs/forJob.ts';
import { JOINT_FIGURES, studRing } from '../../shop/studs/joint.ts';
import { noteBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { type Fields, TypedForm } from '../request/typed.ts';
import { jointAsTyped, jointField, readJoint } from '../stud/jointForm.ts';
import { readGap } from '../stud/stackForm.ts';

/** What the studs of a job are chosen from, and every stud held against the stack that is looked at. */
export function jobStuds(asked: {
  readonly job: Job;
  readonly fields: Fields;
  readonly stacks: readonly Entry<'stack'>[];
  readonly studs: readonly Entry<'stud'>[];
  readonly criteria: ShopCriteria;
  readonly criteriaRevision: number;
  readonly frame: Frame;
}): Omit<StudsAsked, 'otherwise' | 'slip'> {
  const { job, fields, stacks, studs, criteria, criteriaRevision, frame } = asked;
  const unit = frame.lengthUnit;
  const kept = job.sections.studs?.body ?? null;
  const family = job.sections.received?.body.family ?? null;
  const stackId = fields.stack ?? '';
  const entry = stacks.find((one) => one.id === stackId);
  const stack = entry?.body ?? null;
  const form = new TypedForm(fields, frame);
  const pullForwardMm = readGap(form, stack?.pullForwardMm ?? null);
  const gapDoubted = form.doubts.length > 0;
  const ring = studRing(family, stack?.stack ?? null);
  const joint = stack && readJoint(form, ring, stack);
  const held = studsForJob(
    job,
    studs,
    // A gap in doubt would make the answer so too: it waits until the person has said.
    { stack: gapDoubted ? null : stack, pullForwardMm, joint, criteria },
    unit,
    fields.stud ?? null,
  );
  if (form.faults.length === 0) form.addFaults(held.faults, jointField);
  return {
    stacks: stacks.map(({ id, body }) => ({ id, stack: body })),
    stackId,
    fields,
    choices: held.choices,
    skipped: held.skipped,
    leftOut: held.leftOut,
    revisions: {
      criteria: criteriaRevision,
      stack: entry?.revision ?? 0,
      studs: Object.fromEntries(studs.map(({ id, revision }) => [id, revision])),
    },
    resurfacedMm: resurfacedMmOf(job),
    joint,
    pullForwardMm,
    writing: form.writing,
    figures: JOINT_FIGURES,
    ring,
    prevailing: stack?.nut?.prevailing ?? false,
    faults: form.faults,
    doubts: form.doubts,
    againQuery: kept && againQuery(kept, frame),
  };
}

/** The frame of a job's page: what was typed to choose its studs lies in the address. */
export function studsFrame(fields: Fields, frame: Frame): Frame {
  const form = new TypedForm(fields, frame);
  noteBody(form, { pullForwardMm: CATALOGUE_STACK.pullForwardMm });
  noteBody(form, JOINT);
  return keepingUnits(frame, form);
}

/** What was kept, as the form would have it typed: to look at it again with one figure changed. */
function againQuery(kept: StudsChosen, frame: Frame): string {
  const joint = kept.input?.joint ?? null;
  return new URLSearchParams({
    stack: kept.stackId,
    stud: kept.studId,
    note: kept.note,
    pull:
      kept.pullForwardMm === null ? '' : writeLength(kept.pullForwardMm, frame.lengthUnit, frame.decimalSign),
    ...(joint ? jointAsTyped(joint, kept.jointFrom?.torque ?? null, frame) : {}),
  }).toString();
}

/** What the counter asked and answered, as the form of the job would have it typed. */
export function studsOnSlip(slip: KeptSlip | null, frame: Frame): Fields {
  if (slip === null) return {};
  const { asked, answered } = slip;
  const { joint, pullForwardMm } = answered.input;
  const gap = answered.gapMeasured ? pullForwardMm : null;
  return {
    stack: asked.stackId,
    stud: asked.studId,
    pull: gap === null ? '' : writeLength(gap, frame.lengthUnit, frame.decimalSign),
    ...(joint ? jointAsTyped(joint, answered.torqueFrom, frame) : {}),
  };
}
