import type { CatalogueStack, CatalogueStud, Family } from '../../../shared/words/catalogue.ts';
import type { Job, JointFrom, ReplacedStudAsked, RetorqueAsked } from '../../../shared/words/job.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Joint, StudCheck } from '../../../shared/words/stud/stud.ts';
import { holdsInWords, needsReason } from '../../../shared/words/verdicts.ts';
import { STUD_CALC_VERSION } from '../../calc/stud/checkStud.ts';
import { SAME_CIRCLE_MM } from '../../calc/stud/holes/holeCircle.ts';
import { jointFrom } from '../../calc/stud/joint/jointFigures.ts';
import { getEntry } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { criteriaSeen } from '../criteriaSeen.ts';
import type { Edit } from '../jobEdits.ts';
import { studCheckFor } from '../studChoices.ts';
import { settlingCounted, studWorkOf, withStudWork } from '../studWork.ts';
import { seatedOn } from './forJob.ts';

interface StudsSent {
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
}

/** Where each is sent, for a refusal. */
interface StudsSentIn {
  readonly stack: string;
  readonly stud: string;
  readonly note: string;
  readonly criteria: string;
  /** Where what the calculation refuses of the joint stands. */
  readonly joint: (path: string) => string;
  readonly replaced: (index: number) => string;
}

/** A stud of the catalog in a stack of the catalog, held against it as both were seen. */
export async function studsFrom(
  db: Db,
  job: Job,
  asked: StudsSent,
  unit: LengthUnit,
  fields: StudsSentIn,
): Promise<Edit> {
  const { revisions } = asked;
  const { stack, stud } = await pairSeen(db, asked, fields);
  const family = job.sections.received?.body.family ?? null;
  const pullForwardMm = asked.pullForwardMm ?? stack.pullForwardMm;
  const criteria = await criteriaSeen(db, revisions.criteria, fields.criteria);
  const seated = seatedOn(job, stud);
  const before = studWorkOf(job.sections.studs?.body ?? null);
  const retightening = asked.retightening ?? before.retightening;
  const { input, check } = refusingAt(fields.joint, () => {
    refuseOtherRing(asked.joint, family, unit);
    const joint = settlingCounted(asked.joint, retightening);
    return studCheckFor(seated, stack, pullForwardMm, criteria, family, unit, joint);
  });
  if (needsReason(check) && asked.note === '') {
    const message = `${reasonAgainst(stud, check)} Choose another, or write in the note why it is used all the same.`;
    throw new Refusal('note-needed', [{ path: fields.note, message }]);
  }
  const body = withStudWork(
    {
      stackId: asked.stackId,
      stack,
      studId: asked.studId,
      stud,
      revisions,
      pullForwardMm,
      input,
      check,
      calcVersion: STUD_CALC_VERSION,
      note: asked.note,
      jointFrom: asked.joint && jointFrom(asked.joint, asked.torqueFrom),
    },
    { replaced: asked.replaced ?? before.replaced, retightening },
    { job, criteria, unit },
    fields.replaced,
  );
  return { what: 'studs', body };
}

/** Stack and stud as they were seen. */
async function pairSeen(
  db: Db,
  { stackId, studId, revisions }: StudsSent,
  fields: StudsSentIn,
): Promise<{ readonly stack: CatalogueStack; readonly stud: CatalogueStud }> {
  const stack = await getEntry(db, 'stack', stackId, revisions.stack);
  const stud = await getEntry(db, 'stud', studId, revisions.stud);
  if (stack !== null && stud !== null) return { stack: stack.body, stud: stud.body };
  throw new Refusal('no-stud', [
    ...(stack === null
      ? [{ path: fields.stack, message: 'No flexplate stack is chosen. Choose it first.' }]
      : []),
    ...(stud === null ? [{ path: fields.stud, message: 'No stud is chosen. Choose one.' }] : []),
  ]);
}

/** What speaks against these studs; null where nothing does. */
function reasonAgainst(stud: CatalogueStud, check: StudCheck): string {
  if (check.fits === 'no') return `${stud.name} does not fit: ${check.because}`;
  return `${holdsInWords(check)}: ${failedOf(check)}`;
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
            message: `The number of studs in the joint, ${joint.studCount}, is not the cover’s, ${studCount}. Give ${studCount}, or choose another cover type.`,
          },
        ]),
    ...(Math.abs(joint.studCircleDiameterMm - circleMm) <= SAME_CIRCLE_MM
      ? []
      : [
          {
            path: 'joint.studCircleDiameterMm',
            message: `The bolt circle in the joint, ${mm(joint.studCircleDiameterMm)}, is not the cover’s, ${mm(circleMm)}. Give the cover’s, or choose another cover type.`,
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
