import type { Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { UnitAndZone } from '../../shared/words/day.ts';
import type {
  DecisionKind,
  Job,
  JointFrom,
  Received,
  ReplacedStudAsked,
  RetorqueAsked,
} from '../../shared/words/job.ts';
import { type LengthUnit, printLength } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import type { Joint, StudCheck } from '../../shared/words/stud.ts';
import { COVER_CALC_VERSION } from '../calc/cover/checkCover.ts';
import { STUD_CALC_VERSION } from '../calc/stud/checkStud.ts';
import { SAME_CIRCLE_MM } from '../calc/stud/holes/holeCircle.ts';
import { jointFrom } from '../calc/stud/joint/jointFigures.ts';
import { getEntry, listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import type { SectionEdit } from '../records/jobs/reviseJob.ts';
import { criteriaOf, currentCriteria } from '../records/shopCriteria.ts';
import { dayDoubt } from './doubts/dayDoubt.ts';
import { gaugesAtHand } from './gauges.ts';
import { jobAnswer } from './jobAnswer.ts';
import { jobUnder } from './jobUnder.ts';
import { studCheckFor } from './studChoices.ts';
import { seatedOn } from './studs/forJob.ts';
import { settlingCounted, studWorkOf, withStudWork } from './studWork.ts';

/** What to write into one section. */
export type Edit = {
  [S in SectionEdit['what']]: Pick<Extract<SectionEdit, { what: S }>, 'what' | 'body'>;
}[SectionEdit['what']];

function refuse(code: string, path: string, message: string): Refusal {
  return new Refusal(code, [{ path, message }]);
}

/**
 * A cover as it came in, with the family as the catalogue now has it. A day that cannot well be meant is asked about
 * at `fields.confirm`, unless it is confirmed or stands already.
 */
export async function receivedFrom(
  db: Db,
  asked: Omit<Received, 'family' | 'familyRevision'>,
  day: { readonly today: string; readonly confirmed: boolean; readonly standing?: string | undefined },
  fields: { readonly family: string; readonly confirm: string },
): Promise<Received> {
  const question =
    day.confirmed || asked.receivedOn === day.standing ? null : dayDoubt(asked.receivedOn, day.today);
  if (question !== null) throw refuse('doubted', fields.confirm, question);
  const family = await getEntry(db, 'family', asked.familyId);
  if (family === null) {
    throw refuse(
      'no-family',
      fields.family,
      'No cover family was chosen. Choose one, or add it to the catalogue first.',
    );
  }
  return { ...asked, familyRevision: family.revision, family: family.body };
}

/** A decision with all it rests on, worked out under the criteria that were seen; those have to hold still to be kept. */
export async function decisionFrom(
  db: Db,
  job: Job,
  asked: {
    readonly decision: DecisionKind;
    readonly reason: string;
    readonly fromRevision: number;
    /** Of the shop's criteria, as they were seen. */
    readonly criteriaRevision: number;
  },
  writing: UnitAndZone,
  field: string,
): Promise<Edit> {
  const { criteriaRevision } = asked;
  const criteria = await criteriaSeen(db, criteriaRevision, field);
  const atHand = gaugesAtHand(await listEntries(db, 'gauge'));
  const answer = await jobAnswer(job, { criteria, atHand, writing }, { anew: true });
  if (answer.input === null || answer.check === null) {
    throw refuse(
      'nothing-to-decide',
      '',
      answer.faults[0]?.message ??
        'Nothing has been measured yet, so there is nothing to decide on. Measure the wall first.',
    );
  }
  return {
    what: 'decision',
    body: {
      decision: asked.decision,
      reason: asked.reason,
      input: answer.input,
      criteria,
      criteriaRevision,
      check: answer.check,
      calcVersion: COVER_CALC_VERSION,
      bending: answer.bending?.bending ?? null,
      workedOutAtRevision: asked.fromRevision,
    },
  };
}

async function criteriaSeen(db: Db, revision: number, field: string): Promise<ShopCriteria> {
  const seen = await criteriaOf(db, revision);
  if (seen !== null) return seen.body;
  throw refuse(
    'unseen-criteria',
    field,
    "It is not said which revision of the shop's criteria the answer was seen under. Look at the job again and send it from there.",
  );
}

/** A stud of the catalogue in a stack of the catalogue, held against it as both were seen. */
export async function studsFrom(
  db: Db,
  job: Job,
  asked: {
    readonly stackId: string;
    readonly studId: string;
    readonly pullForwardMm: number | null;
    readonly note: string;
    readonly joint: Joint | null;
    /** Whose torque the joint's is. */
    readonly torqueFrom: JointFrom['torque'];
    /** As they were seen. */
    readonly revisions: { readonly stack: number; readonly stud: number; readonly criteria: number };
    /** null: as they were recorded before. */
    readonly replaced: readonly ReplacedStudAsked[] | null;
    readonly retightening: RetorqueAsked | null;
  },
  unit: LengthUnit,
  fields: {
    readonly stack: string;
    readonly stud: string;
    readonly note: string;
    readonly criteria: string;
    /** Where what the calculation refuses of the joint stands. */
    readonly joint: (path: string) => string;
    readonly replaced: (index: number) => string;
  },
): Promise<Edit> {
  const { revisions } = asked;
  const stack = await getEntry(db, 'stack', asked.stackId, revisions.stack);
  const stud = await getEntry(db, 'stud', asked.studId, revisions.stud);
  const missing = [
    ...(stack === null
      ? [{ path: fields.stack, message: 'No stack was chosen. Choose the flexplate stack first.' }]
      : []),
    ...(stud === null ? [{ path: fields.stud, message: 'No stud was chosen. Choose one.' }] : []),
  ];
  if (stack === null || stud === null) throw new Refusal('no-stud', missing);
  const family = job.sections.received?.body.family ?? null;
  const pullForwardMm = asked.pullForwardMm ?? stack.body.pullForwardMm;
  const criteria = await criteriaSeen(db, revisions.criteria, fields.criteria);
  const seated = seatedOn(job, stud.body);
  const before = studWorkOf(job.sections.studs?.body ?? null);
  const retightening = asked.retightening ?? before.retightening;
  const { input, check } = refusingAt(fields.joint, () => {
    refuseOtherRing(asked.joint, family, unit);
    const joint = settlingCounted(asked.joint, retightening);
    return studCheckFor(seated, stack.body, pullForwardMm, criteria, family, unit, joint);
  });
  const against =
    check.fits === 'no'
      ? `${stud.body.name} does not fit: ${check.because}`
      : check.holds === 'no'
        ? `The joint does not hold: ${failedOf(check)}`
        : null;
  if (against !== null && asked.note === '') {
    throw refuse(
      'note-needed',
      fields.note,
      `${against} Choose otherwise, or say in the note why it is kept all the same.`,
    );
  }
  const body = withStudWork(
    {
      stackId: stack.id,
      stack: stack.body,
      studId: stud.id,
      stud: stud.body,
      revisions,
      pullForwardMm,
      input,
      check,
      calcVersion: STUD_CALC_VERSION,
      note: asked.note,
      jointFrom: asked.joint && jointFrom(asked.joint, asked.torqueFrom),
    },
    {
      replaced: asked.replaced ?? before.replaced,
      retightening,
    },
    { job, criteria, unit },
    fields.replaced,
  );
  return { what: 'studs', body };
}

/** What the job's studs amount to once a stud was replaced, or the nuts were re-torqued. */
export async function studWorkFrom(
  db: Db,
  job: Job,
  change: (work: ReturnType<typeof studWorkOf>) => ReturnType<typeof studWorkOf>,
  unit: LengthUnit,
): Promise<Edit> {
  const chosen = job.sections.studs?.body ?? null;
  if (chosen?.input === undefined) {
    throw refuse(
      'no-studs',
      '',
      'There is nothing to hold it against: no studs are chosen for a stack. Choose them first.',
    );
  }
  const criteria = (await currentCriteria(db)).body;
  return {
    what: 'studs',
    body: withStudWork(chosen, change(studWorkOf(chosen)), { job, criteria, unit }),
  };
}

/** What holds is the cover's own ring of studs, not another. */
function refuseOtherRing(joint: Joint | null, family: Family | null, unit: LengthUnit): void {
  if (joint === null || family === null) return;
  const { studCount, studCircleDiameterMm: circleMm } = family;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const faults = [
    ...(joint.studCount === studCount
      ? []
      : [
          {
            path: 'joint.studCount',
            message: `The number of studs in the joint, ${joint.studCount}, is not the cover’s, ${studCount}. Give ${studCount}, or another cover family.`,
          },
        ]),
    ...(Math.abs(joint.studCircleDiameterMm - circleMm) <= SAME_CIRCLE_MM
      ? []
      : [
          {
            path: 'joint.studCircleDiameterMm',
            message: `The stud circle in the joint, ${mm(joint.studCircleDiameterMm)}, is not the cover’s, ${mm(circleMm)}. Give the cover’s, or another cover family.`,
          },
        ]),
  ];
  if (faults.length > 0) throw new Refusal('other-ring', faults);
}

/** Why it does not hold. */
function failedOf(check: StudCheck): string {
  return check.findings
    .filter(({ id, status }) => status === 'fail' && (id === 'joint-slip' || id === 'joint-proof'))
    .map(({ sentence }) => sentence)
    .join(' ');
}

/** What the calculation refuses of the joint, told beside the field it was sent in. */
function refusingAt<T>(place: (path: string) => string, attempt: () => T): T {
  try {
    return attempt();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(
      error.code,
      error.faults.map((fault) => ({
        ...fault,
        path: place(fault.path),
      })),
    );
  }
}

/** A signature, with what was found after the cut as it is found now. */
export async function signatureFrom(
  db: Db,
  job: Job,
  asked: { readonly statement: string; readonly fromRevision: number },
  writing: UnitAndZone,
): Promise<Edit> {
  const { verified } = await jobAnswer(job, await jobUnder(db, job, writing));
  return {
    what: 'signature',
    body: {
      statement: asked.statement,
      signedRevision: asked.fromRevision,
      verified,
    },
  };
}
