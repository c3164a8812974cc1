import type { UnitAndZone } from '../../shared/words/day.ts';
import type { DecisionKind, Job, Received } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { COVER_CALC_VERSION } from '../calc/cover/checkCover.ts';
import { getEntry, listEntries } from '../records/catalogue.ts';
import type { Db } from '../records/database/database.ts';
import { noEarlierJob } from '../records/jobs/comebacks.ts';
import { jobRow } from '../records/jobs/readJob.ts';
import type { SectionEdit } from '../records/jobs/reviseJob.ts';
import { currentCriteria } from '../records/shopCriteria.ts';
import { criteriaSeen } from './criteriaSeen.ts';
import { dayDoubt } from './doubts/dayDoubt.ts';
import { gaugesAtHand } from './gauges.ts';
import { jobAnswer } from './jobAnswer.ts';
import { checksOfGaugesUsed, jobUnder } from './jobUnder.ts';
import { studWorkOf, withStudWork } from './studWork.ts';

/** What to write into one section. */
export type Edit = {
  [S in SectionEdit['what']]: Pick<Extract<SectionEdit, { what: S }>, 'what' | 'body' | 'seen'>;
}[SectionEdit['what']];

function refuse(code: string, path: string, message: string): Refusal {
  return new Refusal(code, [{ path, message }]);
}

/**
 * A cover as it came in, with the family as the catalog now has it. A day that cannot well be meant is asked about
 * at `fields.confirm`, unless it is confirmed or stands already.
 */
export async function receivedFrom(
  db: Db,
  asked: Omit<Received, 'family' | 'familyRevision'>,
  day: { readonly today: string; readonly confirmed: boolean; readonly standing?: string | undefined },
  fields: { readonly family: string; readonly confirm: string; readonly comeback: string },
): Promise<Received> {
  const question =
    day.confirmed || asked.receivedOn === day.standing
      ? null
      : dayDoubt('The day received', asked.receivedOn, day.today);
  if (question !== null) throw refuse('doubted', fields.confirm, question);
  const family = await getEntry(db, 'family', asked.familyId);
  if (family === null) {
    throw refuse(
      'no-family',
      fields.family,
      'No cover type is chosen. Choose one, or add it to the catalog first.',
    );
  }
  const comebackOf = await earlierJob(db, asked.comebackOf ?? null, fields.comeback);
  return { ...asked, comebackOf, familyRevision: family.revision, family: family.body };
}

/** The number of the job a cover came back from, as that job bears it; null where none was named. */
async function earlierJob(db: Db, typed: string | null, field: string): Promise<string | null> {
  if (typed === null || typed.trim() === '') return null;
  const earlier = await jobRow(db, typed);
  if (earlier !== undefined) return earlier.number;
  throw refuse('no-earlier-job', field, noEarlierJob(typed));
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
  const masterChecks = await checksOfGaugesUsed(db, job);
  const answer = await jobAnswer(job, { criteria, atHand, masterChecks, writing }, { anew: true });
  if (answer.input === null || answer.check === null) {
    throw refuse(
      'nothing-to-decide',
      '',
      answer.faults[0]?.message ?? 'Nothing is measured yet. Measure the wall first.',
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

/** What the job's studs amount to once a stud was replaced, or the nuts were re-torqued. */
export async function studWorkFrom(
  db: Db,
  job: Job,
  change: (work: ReturnType<typeof studWorkOf>) => ReturnType<typeof studWorkOf>,
  unit: LengthUnit,
): Promise<Edit> {
  const chosen = job.sections.studs?.body ?? null;
  if (chosen?.input === undefined) {
    throw refuse('no-studs', '', 'No studs are chosen yet. Choose the flexplate stack and studs first.');
  }
  const criteria = (await currentCriteria(db)).body;
  return {
    what: 'studs',
    body: withStudWork(chosen, change(studWorkOf(chosen)), { job, criteria, unit }),
  };
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
