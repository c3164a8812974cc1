import { type Finding, stops } from '../../../shared/words/finding.ts';
import type {
  Closing,
  CutPlan,
  CutsMade,
  Decision,
  Job,
  Kept,
  Looked,
  MeasuringSetup,
  NewReading,
  Received,
  Signature,
} from '../../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../../shared/words/passes.ts';
import { listInWords, printAgainst } from '../../../shared/words/print.ts';
import type { Refusal } from '../../../shared/words/refusal.ts';
import { DECISION_WORD, FOLLOWS, VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { stationsRead } from '../../calc/job/jobPlaces.ts';
import { missingOf, ringToWeld, sameFamily } from '../../calc/job/jobStage.ts';
import { restsOnUnjoinedRing } from '../../calc/job/ringCredit.ts';
import { refuse } from '../database/errors.ts';
import { mayBeSamePerson } from '../database/writing.ts';

const ALLOWED = 1e-9;

/** Nothing is measured, decided or signed on a job that is closed. */
export function refuseClosed(job: Job): void {
  const refusal = closedRefusal(job);
  if (refusal !== null) throw refusal;
}

/** Why nothing can be changed on a job while it is closed; null where it is not. */
export function closedRefusal({ number, stage, sections }: Job): Refusal | null {
  if (stage !== 'closed') return null;
  return refuse(
    'closed',
    '',
    `Job ${number} was closed by ${sections.closed?.who}. Nothing was saved. Open it again first, with the reason.`,
  );
}

/** Closing and opening again say why. What is signed is amended, never closed. */
export function refuseClosing({ number, stage, sections }: Job, { closed }: Closing, why: string): void {
  if (closed && stage === 'signed') {
    throw refuse(
      'signed-already',
      '',
      `Job ${number} is signed by ${sections.signature?.who}, so it can’t be closed as received by mistake.`,
    );
  }
  if (closed === (stage === 'closed')) {
    throw refuse('closed-already', '', `Job ${number} is ${closed ? 'closed already' : 'not closed'}.`);
  }
  if (why !== '') return;
  throw refuse(
    'why-needed',
    'why',
    closed ? 'Enter why the job is closed.' : 'Enter why the job is opened again.',
  );
}

/** A found crack is lifted only by a second person who looked again, says how, and found none. */
export function refuseLiftedCrack(history: readonly Kept<Looked>[], next: Looked, who: string): void {
  const lastOther = history.findLastIndex((kept) => kept.body.crackTest !== 'found');
  const found = history.slice(lastOther + 1);
  if (found.length === 0 || next.crackTest === 'found') return;
  const finders = [...new Set(found.map((kept) => kept.who))];
  if (finders.some((finder) => mayBeSamePerson(finder, who))) {
    throw refuse(
      'crack-second-person',
      'crackTest',
      `A crack was recorded by ${listInWords(finders)}. Only a second person’s inspection can clear it, not ${who}.`,
    );
  }
  if (next.crackTest !== 'none-found') {
    throw refuse(
      'crack-stands',
      'crackTest',
      `A crack was recorded by ${listInWords(finders)}. Only a new inspection that finds none clears it. Leaving the test blank does not clear it.`,
    );
  }
  if (next.crackMethod === null || next.crackNote.trim() === '') {
    throw refuse(
      'crack-method-needed',
      next.crackMethod === null ? 'crackMethod' : 'crackNote',
      `A crack was recorded by ${listInWords(finders)}. To clear it, enter the test method and a note of what was seen.`,
    );
  }
}

/** Refuses a decision that no reason may overrule, and one that needs a reason and has none. */
export function refuseDecision(decision: Decision, looked: Kept<Looked> | null): void {
  const { check, decision: kind } = decision;
  if (kind !== 'replace') {
    if (looked?.body.crackTest === 'found') {
      throw refuse(
        'crack-found',
        'decision',
        `${looked.who} recorded a crack. The cover can only be replaced.`,
      );
    }
    if (check.verdict === 'replace') {
      throw refuse(
        'verdict-replace',
        'decision',
        `The verdict is to replace the cover: ${check.because.trim()} No reason overrules that.`,
      );
    }
    const minimum = check.minimumWall;
    const leftMm = check.leastWall?.afterMm ?? null;
    if (minimum !== null && leftMm !== null && leftMm < minimum.mm - ALLOWED) {
      throw refuse(
        'below-minimum',
        'decision',
        `The cut would leave ${printAgainst(leftMm, minimum.mm, 'mm')} of wall; the minimum is ${length(minimum.mm)} (${minimum.source}). Plan a smaller cut.`,
      );
    }
  }
  refuseStopped(decision);
  if (FOLLOWS[check.verdict] !== kind && decision.reason.trim() === '') {
    throw refuse(
      'reason-needed',
      'reason',
      `The verdict is "${VERDICT_WORD[check.verdict]}" and the decision "${DECISION_WORD[kind]}". Enter the reason.`,
    );
  }
  const against = askingFirst(check, kind);
  if (against.length > 0 && decision.reason.trim() === '') {
    throw refuse('reason-needed', 'reason', `${andMore(against)} Enter the reason it is used anyway.`);
  }
}

/** Findings that ask why a cover is used anyway. */
export function askingFirst(
  { findings }: Pick<Decision['check'], 'findings'>,
  decision: Decision['decision'] | null,
): readonly Finding[] {
  return decision === 'replace' ? [] : findings.filter(asksFirst);
}

/** What the shop lets stop a cover has no way past it; a limit on bending is mended by the ring that is decided on. */
function refuseStopped({ decision, check }: Decision): void {
  if (decision === 'replace') return;
  const ringed = decision === 'face-and-ring' && check.verdict === 'face-and-ring';
  const found = check.findings.filter((one) => stops(one) && !(ringed && one.id === 'stiffness'));
  if (found.length === 0) return;
  throw refuse('stopped', 'decision', `${found[0]!.sentence} The shop limits let no reason overrule it.`);
}

const TO_MEND = new Set(['inspection', 'gauge-due', 'gauge-master']);

/** A caution past a limit, or one that asks for a mending or a calibration; others only tell. */
function asksFirst({ id, status, limit, weight }: Finding): boolean {
  return status === 'caution' && (limit !== null || weight === 'caution' || TO_MEND.has(id));
}

/** The first finding's sentence, and how many more there are. */
function andMore([first, ...others]: readonly Finding[]): string {
  if (others.length === 0) return first!.sentence;
  const more = others.length === 1 ? 'is one more' : `are ${others.length} more`;
  return `${first!.sentence} There ${more} like it.`;
}

/** Another family brings another minimum wall, so changing it once the cover was inspected or measured needs a reason. */
export function refuseFamilyUnexplained(job: Job, next: Received, why: string): void {
  const now = job.sections.received?.body;
  const begun = job.sections.looked !== null || job.readings.length > 0;
  if (now === undefined || !begun || why !== '' || sameFamily(now, next)) return;
  const [was, is] = [now, next].map((one) => `${one.family.name} (revision ${one.familyRevision})`);
  throw refuse(
    'why-needed',
    'why',
    `Job ${job.number} was inspected or measured as ${was}. As ${is} it gets other figures and another minimum wall. Enter the reason.`,
  );
}

/** A recorded weld is not removed by leaving it out: taking it back needs a reason. */
export function refuseRingLeftOut(now: MeasuringSetup | null, next: MeasuringSetup, why: string): void {
  if (!now?.ringWelded || next.ringWelded || why !== '') return;
  throw refuse(
    'ring-left-out',
    'ringWelded',
    'A welded ring is recorded, and this leaves it out. Send it along, or enter the reason.',
  );
}

/** Ring, pads and studs are welded first: welding pulls the face, and a cut before it would be a cut for nothing. */
export function refuseCutBeforeRing(job: Job, next: CutsMade): void {
  if (next.cuts.length === 0 || !ringToWeld(job)) return;
  throw refuse(
    'ring-first',
    'cuts',
    `Job ${job.number} needs its stiffening ring first, and the ring is not welded yet. Weld ring, pads and studs, record it, re-measure, then face it.`,
  );
}

/** A cover is at most so many times as thick as its family when new (this program's own bound). */
const THICKEST_SHARE = 1.5;

/** The thickest the cover can be: as measured before the cut, else as its family allows. */
function thickestWallMm({ readings, sections }: Job): number {
  const walls = readings.flatMap(({ pass, kind, valueMm }) =>
    pass === 'before' && kind === 'wall' && valueMm !== null ? [valueMm] : [],
  );
  if (walls.length > 0) return Math.max(...walls);
  return THICKEST_SHARE * (sections.received?.body.family.nominalWallMm ?? Number.POSITIVE_INFINITY);
}

/** Nothing is turned off deeper than the wall is thick: that is a slip of the decimal, or another unit. */
export function refuseCutsThroughWall(job: Job, made: CutsMade): void {
  const through = firstThroughWall(job, made);
  if (through === null) return;
  throw refuse(
    'cut-through',
    `cuts.${through.index}.depthMm`,
    `The passes come to ${length(through.deepMm)}; the wall is at most ${length(thickestWallMm(job))} thick. Enter each pass alone. Check the depth and its unit.`,
  );
}

/** Whether passes would be refused for that. */
export function isThroughWall(job: Job, made: CutsMade): boolean {
  return firstThroughWall(job, made) !== null;
}

function firstThroughWall(job: Job, { cuts }: CutsMade) {
  const wallMm = thickestWallMm(job);
  let totalMm = 0;
  for (const [index, { depthMm }] of cuts.entries()) {
    totalMm = index < passesBeforeRing(job) ? 0 : totalMm + depthMm;
    const deepMm = Math.max(totalMm, depthMm);
    if (deepMm >= wallMm) return { index, deepMm };
  }
  return null;
}

/** The same rule for a cut to try. */
export function refusePlanThroughWall(job: Job, { plannedCutMm }: CutPlan): void {
  const wallMm = thickestWallMm(job);
  if (plannedCutMm === null || plannedCutMm < wallMm) return;
  throw refuse(
    'cut-through',
    'plannedCutMm',
    `The planned cut is ${length(plannedCutMm)}; the wall is at most ${length(wallMm)} thick. Check the depth and its unit.`,
  );
}

/** As kept and sent; whoever shows it has it in the reader’s unit. */
const length = (mm: number) => `${Number(mm.toFixed(5))} mm`;

/** A reading after the cut needs a cut: without one there is nothing it could be after. */
export function refuseAfterWithoutCut(job: Job, { pass, valueMm }: NewReading, index: number): void {
  if (pass === 'before' || valueMm === null || countingPasses(job).length > 0) return;
  throw refuse(
    'no-cut',
    `readings.${index}.pass`,
    `Job ${job.number} has no cut recorded. Save the pass first, or enter the reading as before the cut.`,
  );
}

/** A job is signed when nothing is missing, for the revision that was read. */
export function refuseSignature(job: Job, { signedRevision, statement, verified = [] }: Signature): void {
  if (job.stage === 'signed') {
    const by = job.sections.signature;
    throw refuse(
      'signed-already',
      '',
      `Job ${job.number} is already signed by ${by?.who}. It can be signed again after a change.`,
    );
  }
  if (job.stage !== 'to-sign') {
    throw refuse('not-ready', '', `Job ${job.number} cannot be signed yet: ${listInWords(missingOf(job))}.`);
  }
  refuseRingNotJoined(job);
  refuseThinWall(job);
  refuseFaceRunout(job, verified);
  refuseListOpen(job, verified);
  refuseStoppedAfter(job, verified);
  refuseUnansweredFinding(job, verified, statement);
  if (signedRevision !== job.revision) {
    throw refuse(
      'signed-revision',
      'signedRevision',
      `The signature is for revision ${signedRevision} of job ${job.number}, which is now at revision ${job.revision}. Read it again, then sign.`,
    );
  }
}

/** A decision of an earlier day counted on any ring; only one that is joined to the pads can be counted on. */
function refuseRingNotJoined({ number, sections }: Job): void {
  if (sections.decision === null || !restsOnUnjoinedRing(sections.decision.body)) return;
  throw refuse(
    'ring-not-joined',
    '',
    `Job ${number} counts on a stiffening ring not recorded as welded to the pads. Record how it is welded, then decide again.`,
  );
}

/** Replaced studs and re-torqued nuts that failed; those that do not fit were kept with a note. */
function studsAgainst({ sections }: Job): Finding[] {
  const studs = sections.studs?.body;
  if (!studs) return [];
  const work = [
    ...(studs.replaced ?? []).flatMap(({ findings }) => findings),
    ...(studs.retightening?.findings ?? []),
  ];
  const kept = studs.note === '' ? studs.check.findings : [];
  return [...work, ...kept].filter(({ status }) => status === 'fail');
}

/**
 * Findings after the cut or on the studs that need a reason in the statement, the weightiest first. A cover that is
 * replaced is not used again, so it needs none.
 */
export function findingsToAnswer(job: Job, verified: readonly Finding[]): readonly Finding[] {
  if (job.outcome === 'replace') return [];
  return [
    ...verified.filter(({ status }) => status === 'fail'),
    ...studsAgainst(job),
    ...verified.filter(({ status }) => status === 'caution'),
    ...verified.filter(isRunoutUnread),
  ];
}

function refuseUnansweredFinding(job: Job, verified: readonly Finding[], statement: string): void {
  const against = findingsToAnswer(job, verified);
  if (against.length === 0 || statement.trim() !== '') return;
  throw refuse(
    'reason-needed',
    'statement',
    `${andMore(against)} Enter in the statement why job ${job.number} is signed anyway.`,
  );
}

/** The shop limits the runout of the new face, and nobody knows it. */
function isRunoutUnread({ id, status, limit }: Finding): boolean {
  return id === 'after-runout' && status === 'not-checked' && limit !== null;
}

/** A face that runs out more than the shop allows is faced again: no statement covers it. */
function refuseFaceRunout(job: Job, verified: readonly Finding[]): void {
  const over = verified.find(({ id, status }) => id === 'after-runout' && status === 'fail');
  if (over === undefined || job.outcome === 'replace') return;
  throw refuse('face-runout', '', `${over.sentence} Job ${job.number} can’t be signed until then.`);
}

/** Where the shop says so, nothing is signed while an item of the inspection list is open. */
function refuseListOpen(job: Job, verified: readonly Finding[]): void {
  const open = verified.find(({ id, status }) => id === 'list-open' && status === 'fail');
  if (open === undefined || job.outcome === 'replace') return;
  throw refuse(
    'list-open',
    '',
    `${open.sentence} The shop limits ask for the whole inspection list before job ${job.number} is signed.`,
  );
}

/** What the shop lets stop a signature is put right: no statement covers it. */
function refuseStoppedAfter(job: Job, verified: readonly Finding[]): void {
  const stopped = verified.find(stops);
  if (stopped === undefined || job.outcome === 'replace') return;
  throw refuse('stopped', '', `${stopped.sentence} Job ${job.number} can’t be signed until then.`);
}

/** A wall measured below the decision's minimum after the cut: no signature covers it. */
function refuseThinWall(job: Job): void {
  const decision = job.sections.decision?.body;
  const minimum = decision?.check.minimumWall ?? null;
  if (decision === undefined || decision.decision === 'replace' || minimum === null) return;
  const means = stationsRead(job, 'after').flatMap(({ readings }) => {
    const walls = readings.flatMap((one) =>
      one.kind === 'wall' && one.valueMm !== null ? [one.valueMm] : [],
    );
    return walls.length === 0 ? [] : [walls.reduce((sum, mm) => sum + mm, 0) / walls.length];
  });
  const least = Math.min(...means);
  if (least >= minimum.mm - ALLOWED) return;
  throw refuse(
    'below-minimum',
    '',
    `After the cut ${printAgainst(least, minimum.mm, 'mm')} of wall is left at the thinnest station; the minimum is ${length(minimum.mm)} (${minimum.source}). Job ${job.number} cannot be signed. Measure again, or decide to replace it.`,
  );
}
