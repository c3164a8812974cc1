import { isDeepStrictEqual } from 'node:util';
import type * as z from 'zod';
import { changedAnswer, staleSections } from '../../../shared/schemas/answers/jobAnswers.ts';
import { type SectionCall, sectionCallSchemas } from '../../../shared/schemas/jobCalls.ts';
import { valueAt } from '../../../shared/schemas/valueAt.ts';
import { dayIn } from '../../../shared/words/day.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import type { DoubtedFigure } from '../../../shared/words/finding.ts';
import type { CutPlan, Job } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { NotInRecords, StaleEdit } from '../../records/database/errors.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { planExpected } from '../../shop/doubts/coverExpected.ts';
import { jobCleanUpMm, setupDoubted } from '../../shop/doubts/coverFigures.ts';
import { dayDoubt } from '../../shop/doubts/dayDoubt.ts';
import { figuresDoubted } from '../../shop/doubts/figuresDoubted.ts';
import { passesDoubted } from '../../shop/doubts/passDoubt.ts';
import { studsDoubted } from '../../shop/doubts/studDoubts.ts';
import { whereItStands } from '../../shop/jobAnswer.ts';
import { decisionFrom, type Edit, receivedFrom, signatureFrom } from '../../shop/jobEdits.ts';
import { studsFrom } from '../../shop/studs/studsFrom.ts';
import { printsFor } from '../job/papers.ts';
import { ApiError, readBody } from '../request/apiErrors.ts';
import { type JobAnswered, type JobAsked, type JobCall, type JobNeeds, ok } from './call.ts';
import { ctxOf, dayAsked, RECEIVED } from './jobChanges.ts';

/** Sections that a program may change; what was found of an inspection list is typed on the job's page. */
type SectionName = keyof typeof sectionCallSchemas;

const CONFLICT =
  'fromRevision is the revision of the job you read. If somebody changed the same section since, the answer is 409 with both versions and nothing is saved.';
const SEEN: Partial<Record<SectionName, string>> = {
  decision:
    ' criteriaRevision is the revision of the shop limits in the job you read. If they changed since, the answer is 409 with the limits as they are now.',
  studs:
    ' The revisions are those of the stack, the stud and the shop limits you read. If one changed since, the answer is 409 with it as it is now. A re-torque day later than tomorrow is refused unless confirmed names studs.retightening.on, and so is a figure that looks like a slip, as studs.joint.torqueNm.',
  setup:
    ' A ring welded later than tomorrow, or a figure that looks like a slip, is refused unless confirmed names it, as setup.ringWelded.on or setup.gaugeFigures.resolutionMm.',
  plan: ' A cut that looks like a slip is refused unless confirmed names plan.plannedCutMm.',
  cuts: ' A pass deeper than what is left of the decided cut is refused unless confirmed names it, as cuts.cuts.1.depthMm.',
};
const SUMMARY: Readonly<Record<SectionName, string>> = {
  received: 'Correct what was received.',
  looked: 'Record the inspection.',
  setup:
    'Record gauge and chucking. Send all of it: what is left out becomes empty; earlier revisions stay in the history.',
  plan: 'Enter a cut to try.',
  decision: 'Decide, from the readings as they are now.',
  cuts: 'Record the passes made.',
  studs: 'Choose the studs for a stack.',
  signature: 'Sign.',
  closed: 'Close a job received by mistake, or open it again. why says the reason.',
};

/** The calls that change a job, section by section. */
export const sectionCalls = (Object.keys(sectionCallSchemas) as SectionName[]).map(
  (section): JobCall => ({
    methods: ['PUT', 'POST'],
    path: `/jobs/{number}/${section}`,
    name: `change${section[0]!.toUpperCase()}${section.slice(1)}`,
    summary: SUMMARY[section],
    description: `${CONFLICT}${SEEN[section] ?? ''} After signing, every change needs why.`,
    query: {},
    schema: sectionCallSchemas[section],
    answers: { 200: changedAnswer, 409: staleSections[section] },
    answer: (needs, asked) => changeSection(section, needs, asked),
  }),
);

async function changeSection(
  section: SectionName,
  needs: JobNeeds,
  { named, body }: JobAsked,
): Promise<JobAnswered> {
  const schema: z.ZodType = sectionCallSchemas[section];
  const sent = readBody(schema, body) as { fromRevision: number; who: string; why: string };
  const job = await jobNamed(needs.db, named);
  const edit = await editOf(needs, job, section, sent);
  try {
    const { fromRevision } = sent;
    const ctx = ctxOf(needs, sent.who, sent.why);
    const whole = { jobId: job.id, fromRevision, ...edit };
    return ok(whereItStands(await reviseJob(needs.db, ctx, whole, printsFor(needs.publicUrl, needs))));
  } catch (error) {
    if (error instanceof Refusal && !(error instanceof NotInRecords)) throw inSection(section, error);
    if (!(error instanceof StaleEdit)) throw error;
    const { section: of, theirs, currentRevision, since } = error;
    const both = { of, theirs, yours: edit.body, currentRevision, since };
    throw new ApiError(409, 'stale', error.message, [], both);
  }
}

/** What the records refuse of a section, told where it stands in what was sent. */
function inSection(section: SectionName, { code, faults }: Refusal): Refusal {
  const own = new Set(Object.keys(sectionCallSchemas[section].shape));
  const within = (path: string) => (path === '' || own.has(path) ? path : `${section}.${path}`);
  return new Refusal(
    code,
    faults.map((fault) => ({ ...fault, path: within(fault.path) })),
  );
}

async function editOf(needs: JobNeeds, job: Job, section: SectionName, sent: unknown): Promise<Edit> {
  const { db } = needs;
  switch (section) {
    case 'received': {
      const { received, confirmed } = sent as SectionCall<'received'>;
      const day = dayAsked(needs, confirmed, job.sections.received?.body.receivedOn);
      return { what: 'received', body: await receivedFrom(db, received, day, RECEIVED) };
    }
    case 'decision':
      return decisionOf(needs, job, sent as SectionCall<'decision'>);
    case 'studs':
      return studsOf(needs, job, sent as SectionCall<'studs'>);
    case 'signature': {
      const { signature, fromRevision } = sent as SectionCall<'signature'>;
      const { lengthUnit } = (await currentCriteria(db)).body;
      const writing = { lengthUnit, timeZone: needs.timeZone };
      return signatureFrom(db, job, { ...signature, fromRevision }, writing);
    }
    case 'closed':
      return { what: section, body: (sent as SectionCall<'closed'>).closed };
    case 'looked':
      return { what: section, body: (sent as SectionCall<'looked'>).looked };
    case 'setup': {
      const { setup, confirmed } = sent as SectionCall<'setup'>;
      refuseLateDay(needs, confirmed, {
        path: 'setup.ringWelded.on',
        what: 'The day the ring was welded on',
        day: setup.ringWelded?.on,
        standing: job.sections.setup?.body.ringWelded?.on,
      });
      const family = job.sections.received?.body.family ?? null;
      refuseDoubted(setupDoubted(setup, family, 'setup'), confirmed, job.sections.setup?.body, 'setup');
      return { what: section, body: setup };
    }
    case 'plan': {
      const { plan, confirmed } = sent as SectionCall<'plan'>;
      const { lengthUnit } = (await currentCriteria(db)).body;
      const writing = { lengthUnit, timeZone: needs.timeZone };
      const expected = planExpected(await jobCleanUpMm(db, job, writing));
      const doubts = figuresDoubted(PLAN, plan, expected, 'plan');
      refuseDoubted(doubts, confirmed, job.sections.plan?.body, 'plan');
      await refuseOtherLathe(db, plan.lathe ?? null);
      return { what: section, body: plan };
    }
    case 'cuts':
      return cutsOf(job, sent as SectionCall<'cuts'>);
  }
}

/** A lathe is named as the catalog has it, or had it at that revision. */
async function refuseOtherLathe(db: Db, lathe: CutPlan['lathe']): Promise<void> {
  if (!lathe) return;
  const entry = await getEntry(db, 'lathe', lathe.id, lathe.revision);
  if (entry !== null && isDeepStrictEqual(entry.body, lathe.lathe)) return;
  throw new Refusal('other-lathe', [
    {
      path: 'plan.lathe',
      message: `This is not revision ${lathe.revision} of the lathe "${lathe.id.slice(0, 80)}". Send it as GET /api/catalogue/lathe has it.`,
    },
  ]);
}

/** A pass that looks like a slip is refused until `confirmed` names it, as the form asks before it is kept. */
function cutsOf(job: Job, { cuts, confirmed }: SectionCall<'cuts'>): Edit {
  const faults = passesDoubted(job, cuts.cuts).flatMap(({ index, doubt }) => {
    const path = `cuts.cuts.${index}.depthMm`;
    if (confirmed.includes(path)) return [];
    return [{ path, message: `${doubt.question} If it is right, name ${path} in confirmed.` }];
  });
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  return { what: 'cuts', body: cuts };
}

/** Figures that look like a slip are refused until `confirmed` names them, unless they stand already. */
function refuseDoubted(
  doubts: readonly DoubtedFigure[],
  confirmed: readonly string[],
  standing: object | undefined,
  section: string,
): void {
  const faults = doubts
    .filter(
      ({ path, value }) => !confirmed.includes(path) && valueAt({ [section]: standing }, path) !== value,
    )
    .map(({ path, question }) => ({
      path,
      message: `${question} If it is right, name ${path} in confirmed.`,
    }));
  if (faults.length > 0) throw new Refusal('doubted', faults);
}

/** A day later than tomorrow is refused until `confirmed` names it, unless it stands already. */
function refuseLateDay(
  { now, timeZone }: JobNeeds,
  confirmed: readonly string[],
  asked: {
    readonly path: string;
    readonly what: string;
    readonly day: string | undefined;
    readonly standing: string | undefined;
  },
): void {
  const { path, what, day, standing } = asked;
  if (day === undefined || day === standing || confirmed.includes(path)) return;
  const question = dayDoubt(what, day, dayIn(timeZone, now()));
  if (question === null) return;
  throw new Refusal('doubted', [{ path, message: `${question} If it is right, name ${path} in confirmed.` }]);
}

async function decisionOf(
  { db, timeZone }: JobNeeds,
  job: Job,
  { decision, fromRevision }: SectionCall<'decision'>,
): Promise<Edit> {
  const { lengthUnit } = (await currentCriteria(db)).body;
  const asked = { ...decision, fromRevision };
  return decisionFrom(db, job, asked, { lengthUnit, timeZone }, 'decision.criteriaRevision');
}

async function studsOf(needs: JobNeeds, job: Job, { studs, confirmed }: SectionCall<'studs'>): Promise<Edit> {
  const { db } = needs;
  refuseLateDay(needs, confirmed, {
    path: 'studs.retightening.on',
    what: 'The re-torque day',
    day: studs.retightening?.on,
    standing: job.sections.studs?.body.retightening?.on,
  });
  const stack = (await getEntry(db, 'stack', studs.stackId))?.body ?? null;
  refuseDoubted(studsDoubted(studs, stack), confirmed, job.sections.studs?.body, 'studs');
  const { lengthUnit } = (await currentCriteria(db)).body;
  const { stackRevision, studRevision, criteriaRevision } = studs;
  const asked = {
    ...studs,
    revisions: { stack: stackRevision, stud: studRevision, criteria: criteriaRevision },
  };
  return studsFrom(db, job, asked, lengthUnit, {
    stack: 'studs.stackId',
    stud: 'studs.studId',
    note: 'studs.note',
    criteria: 'studs.criteriaRevision',
    joint: (path) => `studs.${path}`,
    replaced: (index) => `studs.replaced.${index}.stud`,
  });
}
