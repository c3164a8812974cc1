import type {
  HistoryLine,
  Job,
  JobSections,
  NewReading,
  Received,
  SectionName,
} from '../../../shared/words/job.ts';
import { listInWords } from '../../../shared/words/print.ts';
import { refuseSeenOtherwise, type Seen } from '../catalogue.ts';
import { changedIn } from '../database/changedIn.ts';
import { type Db, write } from '../database/database.ts';
import { refuse, StaleEdit } from '../database/errors.ts';
import { sayTheSame, toJson } from '../database/json.ts';
import { type Ctx, coverKey, printable, type Signed, samePerson, signed } from '../database/writing.ts';
import { CRITERIA_ID } from '../shopCriteria.ts';
import { keepReading, keepTrend } from '../trends/keepTrend.ts';
import { refuseComeback } from './comebacks.ts';
import { historyOf } from './history.ts';
import { type JobParts, partsGrown } from './partsOnce.ts';
import { toReading, toReadingRow, withAdded } from './readingRows.ts';
import { type JobRow, jobRow, noJob, partsOf, refuseUnknownRevision, toJob } from './readJob.ts';
import { restsOnRing } from './ringDoubts.ts';
import {
  refuseClosed,
  refuseClosing,
  refuseCutBeforeRing,
  refuseCutsThroughWall,
  refuseDecision,
  refuseFamilyUnexplained,
  refuseLiftedCrack,
  refusePlanThroughWall,
  refuseRingLeftOut,
  refuseSignature,
} from './rules.ts';
import { searchOf } from './searchWords.ts';
import { keepPrints, type PrintSigned } from './signedPrints.ts';

const CHANGE_WORDS: Readonly<Record<What, string>> = {
  received: 'the receiving data',
  looked: 'the inspection',
  inspected: 'the inspection list',
  setup: 'the measuring setup',
  plan: 'the planned cut',
  decision: 'the decision',
  cuts: 'the cuts made',
  studs: 'the studs chosen',
  signature: 'the signature',
  closed: 'the closing',
  reading: 'the readings',
  photo: 'the photos',
};

/**
 * Changes one section: a new revision, unless it already says just that. Throws StaleEdit when somebody changed the
 * section since `fromRevision`; a decision, the studs and a signature rest on the whole job. No signature is kept
 * without the papers that `print` makes of it.
 */
export async function reviseJob(
  db: Db,
  ctx: Ctx,
  edit: SectionEdit,
  print: PrintSigned | null = null,
): Promise<Job> {
  const by = signed(ctx, edit.why);
  const { jobId, what } = edit;
  if (edit.what === 'received') refuseDay(edit.body.receivedOn);
  const body = toJson(edit.body);
  return write(db, async (trx) => {
    const row = await jobRow(trx, jobId);
    if (!row) throw noJob(jobId);
    const parts = await partsOf(trx, jobId, row.revision);
    const job = toJob(row, parts);
    const now = job.sections[what];
    if (now && samePerson(by.who, now.who) && sayTheSame(body, JSON.stringify(now.body))) return job;
    refuseUnknownRevision(row, edit.fromRevision);
    if (edit.what === 'decision') refuseUnknownRevision(row, edit.body.workedOutAtRevision);
    await refuseStale(trx, job, edit);
    await refuseSeenOtherwise(trx, seenFor(edit));
    if (edit.what === 'closed') refuseClosing(job, edit.body, by.why);
    else refuseClosed(job);
    if (edit.what === 'looked') refuseLiftedCrack(parts.looks, edit.body, by.who);
    if (edit.what === 'decision') refuseDecision(edit.body, parts.sections.looked);
    if (edit.what === 'signature') refuseSignature(job, edit.body);
    else refuseUnexplained(job, by);
    if (edit.what === 'received') {
      refuseFamilyUnexplained(job, edit.body, by.why);
      await refuseComeback(trx, job, edit.body);
    }
    if (edit.what === 'plan') refusePlanThroughWall(job, edit.body);
    if (edit.what === 'cuts') {
      refuseCutBeforeRing(job, edit.body);
      refuseCutsThroughWall(job, edit.body);
    }
    if (edit.what === 'setup') refuseRingLeftOut(job.sections.setup?.body ?? null, edit.body, by.why);
    const kept = await addToJob(trx, by, row, { what, body }, parts);
    if (what === 'signature') await keepPrints(trx, kept, needed(print));
    return kept;
  });
}

function needed(print: PrintSigned | null): PrintSigned {
  if (print === null) throw new Error('A signature is kept with its papers; say how they are printed.');
  return print;
}

/** A section as somebody wants it, and the revision of the job they were looking at. */
export type SectionEdit = {
  readonly jobId: number;
  readonly fromRevision: number;
  readonly why?: string;
  /** What of the catalog the form showed, where the body does not say. */
  readonly seen?: readonly Seen[];
} & { [S in SectionName]: { readonly what: S; readonly body: JobSections[S] } }[SectionName];

type What = HistoryLine['what'];
const ON_ITSELF = () => false;
/** A photo shows what is there and changes no number. */
const ON_ALL_BUT_PHOTOS = (what: What) => what !== 'photo';
const ON_ALL = () => true;

/** Besides the section itself, which changes since `fromRevision` make an edit of it stale. */
const RESTS_ON: Readonly<Record<SectionName, (what: What) => boolean>> = {
  received: ON_ITSELF,
  looked: ON_ITSELF,
  inspected: ON_ITSELF,
  setup: ON_ITSELF,
  plan: ON_ITSELF,
  cuts: ON_ITSELF,
  decision: (what) => what !== 'studs' && what !== 'photo',
  studs: ON_ALL_BUT_PHOTOS,
  signature: ON_ALL,
  closed: ON_ALL,
};

/** The entries of the catalog an edit was worked out from. */
function seenFor(edit: SectionEdit): readonly Seen[] {
  const criteria = (revision: number): Seen => ({ kind: 'criteria', id: CRITERIA_ID, revision });
  if (edit.what === 'decision' && edit.body.criteriaRevision !== undefined) {
    return [criteria(edit.body.criteriaRevision)];
  }
  if (edit.what === 'studs' && edit.body.revisions !== undefined) {
    const { stackId, studId, revisions } = edit.body;
    return [
      { kind: 'stack', id: stackId, revision: revisions.stack },
      { kind: 'stud', id: studId, revision: revisions.stud },
      criteria(revisions.criteria),
    ];
  }
  return edit.seen ?? [];
}

async function refuseStale(db: Db, job: Job, edit: SectionEdit): Promise<void> {
  const theirs = job.sections[edit.what];
  const rests = RESTS_ON[edit.what];
  // A decision is as old as the revision it was worked out from, which may be older than the page it was sent from.
  const from =
    edit.what === 'decision' ? Math.min(edit.fromRevision, edit.body.workedOutAtRevision) : edit.fromRevision;
  const since = (await historyOf(db, job.id)).filter((line) => line.revision > from);
  if (!since.some((line) => line.what === edit.what || rests(line.what))) return;
  const changed = [...new Set(since.map((line) => CHANGE_WORDS[line.what]))];
  const who = [...new Set(since.map((line) => line.who))];
  const sentence =
    theirs && theirs.revision > from
      ? `${theirs.who} changed ${CHANGE_WORDS[edit.what]} of job ${job.number} while you had it open (yours began at revision ${from}, theirs is ${theirs.revision}). Nothing of yours was saved; compare the two and save again.`
      : `${listInWords(who)} changed ${listInWords(changed)} of job ${job.number} after revision ${from}, which you worked from. Nothing was saved. Check the job as it is now, then send it again.`;
  throw new StaleEdit(sentence, { section: edit.what, theirs, currentRevision: job.revision, since });
}

/** A database takes only so many values in one statement. */
const ROWS_AT_A_TIME = 200;

/** Adds one revision to a job as it was before, and brings its line in the lists up to date. Inside a write only. */
export async function addToJob(
  trx: Db,
  by: Signed,
  row: JobRow,
  change: {
    readonly what: What;
    readonly body: string;
    readonly readings?: readonly NewReading[];
  },
  before: JobParts,
): Promise<Job> {
  const revision = row.revision + 1;
  await addRevision(trx, by, { jobId: row.id, revision, what: change.what, body: change.body });
  const added = (change.readings ?? []).map((reading, place) =>
    toReadingRow(row.id, place, { ...reading, revision, who: by.who, at: by.at }),
  );
  for (let from = 0; from < added.length; from += ROWS_AT_A_TIME) {
    await trx
      .insertInto('reading')
      .values(added.slice(from, from + ROWS_AT_A_TIME))
      .execute();
  }
  const readings = withAdded(trx, row.id, before.readings, added.map(toReading));
  const parts =
    change.what === 'reading'
      ? partsGrown(trx, row.id, before, { revision, changedAt: by.at, readings })
      : await partsOf(trx, row.id, revision, readings);
  const job = toJob(row, parts);
  const { received } = job.sections;
  const inLists = {
    stage: job.stage,
    outcome: job.outcome,
    ring_credit: restsOnRing(job) ? 1 : 0,
    ...(received ? projectionOf(received.body) : {}),
    search: await searchOf(trx, job),
  };
  await trx
    .updateTable('job')
    .set({ revision, changed_at: by.at, ...changedIn(row, inLists) })
    .where('id', '=', row.id)
    .execute();
  if (change.what === 'reading') await keepReading(trx, job);
  else if (change.what !== 'photo') await keepTrend(trx, job);
  return job;
}

/** A change after signing is an amendment. Throws Refusal when it gives no reason. */
export function refuseUnexplained(job: Job, by: Signed): void {
  const { signature } = job.sections;
  if (signature === null || by.why !== '') return;
  throw refuse(
    'why-needed',
    'why',
    `Job ${job.number} was signed by ${signature.who}. Enter the reason for the change; it then needs signing again.`,
  );
}

export function projectionOf(received: Received) {
  return {
    family_id: received.familyId,
    family_name: received.family.name,
    customer_reference: received.customerReference,
    received_on: received.receivedOn,
    cover_key: coverKey(received.coverNumber ?? ''),
  };
}

export async function addRevision(
  db: Db,
  by: Signed,
  revision: {
    readonly jobId: number;
    readonly revision: number;
    readonly what: What;
    readonly body: string;
  },
): Promise<void> {
  await db
    .insertInto('job_revision')
    .values({
      job_id: revision.jobId,
      revision: revision.revision,
      at: by.at,
      who: by.who,
      why: by.why,
      what: revision.what,
      body: revision.body,
    })
    .execute();
}

export function refuseDay(day: string): void {
  const date = /^\d{4}-\d\d-\d\d$/.test(day) ? new Date(`${day}T00:00:00Z`) : new Date(Number.NaN);
  // 31 February is read as 3 March.
  if (!Number.isNaN(date.getTime()) && date.toISOString().startsWith(day)) return;
  throw refuse('bad-day', 'receivedOn', `"${printable(day)}" is not a date. Write it like 2026-11-24.`);
}
