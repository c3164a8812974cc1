import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import { DECISION_KINDS, type Job, type SectionName } from '../../../shared/words/job.ts';
import type { Frame } from '../../../views/frame.ts';
import { getEntry, listEntries } from '../../records/catalogue.ts';
import { jobCleanUpMm } from '../../shop/doubts/coverFigures.ts';
import { listsFor } from '../../shop/inspection/listFindings.ts';
import { decisionFrom, type Edit, signatureFrom, studWorkFrom } from '../../shop/jobEdits.ts';
import { ringWeldedFrom } from '../../shop/ringWelded.ts';
import { studRing } from '../../shop/studs/joint.ts';
import { aboutStack } from '../../shop/studs/studsExpected.ts';
import { studsFrom } from '../../shop/studs/studsFrom.ts';
import { gaugesSeen } from '../measuring/gaugesOnForm.ts';
import { askDay } from '../request/askedDay.ts';
import { readBody } from '../request/bodyForm.ts';
import { type PageContext, todayIn } from '../request/pageContext.ts';
import { revisionIn, type TypedForm } from '../request/typed.ts';
import { jointField, readJoint, torqueFromOf } from '../stud/jointForm.ts';
import { readGap } from '../stud/stackForm.ts';
import { readReplaced, readRetorque } from '../stud/work.ts';
import { readCuts, readPassPutRight, readPlan } from './cutForm.ts';
import { readLooked } from './inspectionForm.ts';
import { fromOf } from './jobRequest.ts';
import { readInspected } from './listAnswers.ts';
import { readReceived } from './receivedForm.ts';
import { readSetup } from './setupForm.ts';

/** What one form of the job page wants to write; null when something typed cannot be used, or nothing is to be written. */
type ReadEdit = (context: PageContext, job: Job, form: TypedForm, frame: Frame) => Promise<Edit | null>;

/** The forms of a job's page that change it, by the last part of where each is sent. */
export const EDITS: Readonly<Record<SectionName | 'pass' | 'welded' | 'replaced' | 'retightened', ReadEdit>> =
  {
    received: readReceivedEdit,
    looked: readLookedEdit,
    inspected: readInspectedEdit,
    setup: readSetupEdit,
    plan: readPlanEdit,
    decision: readDecision,
    cuts: readCutsEdit,
    pass: readPassEdit,
    welded: readWelded,
    studs: readStuds,
    replaced: readReplacedEdit,
    retightened: readRetorqueEdit,
    signature: readSignature,
    closed: readClosing,
  };

const RING_DAY = 'The day the ring was welded on';

async function readReceivedEdit(context: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  const standing = job.sections.received?.body.receivedOn;
  const read = await readReceived(context.shop.db, form.fields, { today: todayIn(context), standing });
  return { what: 'received', body: read.received };
}

async function readLookedEdit(_house: PageContext, _job: Job, form: TypedForm): Promise<Edit | null> {
  const body = readLooked(form);
  return body && { what: 'looked', body };
}

async function readInspectedEdit(context: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  const lists = await listsFor(context.shop.db, job.sections.received?.body);
  const by = { who: form.text('who').normalize('NFC'), at: context.now().toISOString() };
  const body = readInspected(form, lists, job.sections.inspected?.body ?? null, by);
  return body && { what: 'inspected', body };
}

async function readSetupEdit(context: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  const { db } = context.shop;
  const kept = job.sections.setup?.body ?? null;
  askDay(form, RING_WELDED.on.box, RING_DAY, { today: todayIn(context), standing: kept?.ringWelded?.on });
  const family = job.sections.received?.body.family ?? null;
  const body = readSetup(form, await listEntries(db, 'gauge'), kept, family);
  return body && { what: 'setup', body, seen: gaugesSeen(form.fields, body.gauges ?? []) };
}

async function readPlanEdit(
  { shop }: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const body = readPlan(
    form,
    job.sections.plan?.body ?? null,
    await jobCleanUpMm(shop.db, job, frame),
    await listEntries(shop.db, 'lathe'),
  );
  return body && { what: 'plan', body };
}

async function readDecision(
  context: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const { db } = context.shop;
  const decision = form.choice('decision', DECISION_KINDS);
  if (decision === null) {
    form.fault('decision', 'No decision is chosen. Choose one.');
    return null;
  }
  const asked = {
    decision,
    reason: form.text('reason'),
    fromRevision: fromOf(form.fields),
    criteriaRevision: revisionIn(form.fields.criteria),
  };
  return decisionFrom(db, job, asked, frame, 'decision');
}

async function readCutsEdit(_house: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  return readCuts(job, form);
}

async function readPassEdit(_house: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  return readPassPutRight(job, form);
}

async function readWelded(context: PageContext, job: Job, form: TypedForm): Promise<Edit | null> {
  const read = readBody(form, RING_WELDED, { ifEmpty: { on: todayIn(context) } });
  askDay(form, RING_WELDED.on.box, RING_DAY, { today: todayIn(context) });
  if (form.faults.length > 0) return null;
  return ringWeldedFrom(job, { ...read, on: read.on ?? todayIn(context), note: read.note ?? '' });
}

async function readStuds(
  context: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const { db } = context.shop;
  const stack = await getEntry(db, 'stack', form.text('stack'));
  const pullForwardMm = readGap(form, stack?.body.pullForwardMm ?? null);
  const ring = studRing(job.sections.received?.body.family ?? null, stack?.body.stack ?? null);
  const joint = readJoint(form, ring, stack?.body ?? null);
  if (form.faults.length > 0) return null;
  const asked = {
    stackId: form.text('stack'),
    studId: form.text('stud'),
    pullForwardMm,
    note: form.text('note'),
    joint,
    torqueFrom: torqueFromOf(form),
    revisions: {
      stack: revisionIn(form.fields.stackRevision),
      stud: revisionIn(form.fields[`studRevision.${form.text('stud')}`]),
      criteria: revisionIn(form.fields.criteria),
    },
    replaced: null,
    retightening: null,
  };
  return studsFrom(db, job, asked, frame.lengthUnit, {
    stack: 'stack',
    stud: 'stud',
    note: 'note',
    criteria: 'stud',
    joint: jointField,
    replaced: () => 'stud',
  });
}

async function readReplacedEdit(
  context: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const { db } = context.shop;
  const read = readReplaced(form);
  if (read === null) return null;
  const { stud, entry } = read;
  return studWorkFrom(
    db,
    job,
    (work) => ({
      ...work,
      replaced: [...work.replaced.filter((one) => one.stud !== stud), ...(entry ? [entry] : [])],
    }),
    frame.lengthUnit,
  );
}

async function readRetorqueEdit(
  context: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const { db } = context.shop;
  const about = aboutStack(job.sections.studs?.body.stack ?? null);
  const retightening = readRetorque(form, todayIn(context), about);
  if (retightening === null) return null;
  return studWorkFrom(db, job, (work) => ({ ...work, retightening }), frame.lengthUnit);
}

async function readSignature(
  context: PageContext,
  job: Job,
  form: TypedForm,
  frame: Frame,
): Promise<Edit | null> {
  const { db } = context.shop;
  const asked = { statement: form.text('statement'), fromRevision: fromOf(form.fields) };
  return signatureFrom(db, job, asked, frame);
}

async function readClosing(_house: PageContext, _job: Job, form: TypedForm): Promise<Edit | null> {
  return { what: 'closed', body: { closed: form.text('closed') === '1' } };
}
