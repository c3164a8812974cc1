import type { Job, Received } from '../../../shared/words/job.ts';
import { isNoAddress, noAddress } from '../../../shared/words/jobNumber.ts';
import { listInWords } from '../../../shared/words/print.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import {
  type Ctx,
  hasControls,
  key,
  printable,
  refuseNul,
  type Signed,
  samePerson,
  signed,
} from '../database/writing.ts';
import { keepTrend } from '../trends/keepTrend.ts';
import { refuseComeback } from './comebacks.ts';
import { getJob, jobAtRevision, jobRow } from './readJob.ts';
import { addRevision, projectionOf, refuseDay } from './reviseJob.ts';
import { receivedWords } from './searchWords.ts';

const FIRST_NUMBER = 1001;
/** A longer run of digits is a scanned code, not a number the shop counts by. */
const PLAIN_NUMBER = /^\d{1,7}$/;

export interface NewJob {
  readonly number?: string;
  readonly received: Received;
  readonly demo?: boolean;
  /** Id made by the sender: the same request sent again finds the job it made the first time. */
  readonly sentId?: string;
  /** The counter slip it is begun from. */
  readonly slip?: number;
}

/** Starts a job. Without a number it gets the one after the shop's highest. */
export async function createJob(db: Db, ctx: Ctx, job: NewJob): Promise<Job> {
  const by = signed(ctx, undefined);
  const { received } = job;
  const body = toJson(received);
  refuseDay(received.receivedOn);
  return write(db, async (trx) => {
    const made = job.sentId === undefined ? null : await jobSentAs(trx, job.sentId);
    if (made !== null) return sameAsSent(trx, made, job, by);
    const number = await numberFor(trx, job.number);
    await refuseComeback(trx, null, received);
    const { id } = await trx
      .insertInto('job')
      .values({
        number,
        number_key: key(number),
        plain_number: PLAIN_NUMBER.test(number) ? Number(number) : null,
        demo: job.demo === true ? 1 : 0,
        created_at: by.at,
        revision: 1,
        changed_at: by.at,
        stage: 'to-look',
        outcome: null,
        ...projectionOf(received),
        search: receivedWords(number, received, by.who),
      })
      .returning('id')
      .executeTakeFirstOrThrow();
    await addRevision(trx, by, { jobId: id, revision: 1, what: 'received', body });
    if (job.sentId !== undefined) {
      await trx.insertInto('job_sent').values({ id: job.sentId, job_id: id }).execute();
    }
    if (job.slip !== undefined) {
      await trx.insertInto('slip_job').values({ job_id: id, slip_number: job.slip }).execute();
    }
    const begun = await jobAtRevision(trx, id, 1);
    await keepTrend(trx, begun);
    return begun;
  });
}

/** The job made under an id before. Throws Refusal when something else is sent under the same id. */
async function sameAsSent(db: Db, made: Job, sent: NewJob, by: Signed): Promise<Job> {
  const first = (await jobAtRevision(db, made.id, 1)).sections.received!;
  const differs = [
    ...SENT_WORDS.filter(([name]) => (first.body[name] || null) !== (sent.received[name] || null)).map(
      ([, word]) => word,
    ),
    ...(sent.number !== undefined && key(sent.number) !== key(made.number) ? ['the job number'] : []),
    ...(samePerson(by.who, first.who) ? [] : ['the initials']),
  ];
  if (differs.length === 0) return made;
  throw refuse(
    'sent-otherwise',
    'id',
    `This was sent before and made job ${made.number}, but now ${listInWords(differs)} ${differs.length === 1 ? 'is' : 'are'} different. Change job ${made.number}, or send a new job under an id of its own.`,
  );
}

const SENT_WORDS = [
  ['familyId', 'the cover type'],
  ['customerReference', 'the customer reference'],
  ['coverNumber', 'the cover’s own number'],
  ['receivedOn', 'the day'],
  ['note', 'the note'],
  ['comebackOf', 'the job it came back from'],
] as const;

/** The job that a sender's own id made; null when it made none yet. */
export async function jobSentAs(db: Db, sentId: string): Promise<Job | null> {
  const row = await db.selectFrom('job_sent').select('job_id').where('id', '=', sentId).executeTakeFirst();
  return row ? getJob(db, row.job_id) : null;
}

async function numberFor(db: Db, typed: string | undefined): Promise<string> {
  if (typed === undefined || typed.trim() === '') return nextNumber(db);
  const number = typed.normalize('NFC').trim();
  if (number.length > 40 || hasControls(number)) {
    throw refuse(
      'bad-number',
      'number',
      `"${printable(number)}" cannot be a job number; give 1 to 40 plain characters.`,
    );
  }
  refuseNul('number', number);
  if (isNoAddress(number)) throw refuse('bad-number', 'number', noAddress(number));
  const taken = await jobRow(db, number);
  if (taken) {
    throw refuse(
      'number-taken',
      'number',
      `Job number ${taken.number} is taken by the ${taken.family_name} received on ${taken.received_on}; give another number.`,
    );
  }
  return number;
}

async function nextNumber(db: Db): Promise<string> {
  const row = await db
    .selectFrom('job')
    .select((eb) => eb.fn.max('plain_number').as('highest'))
    .executeTakeFirst();
  let next = Math.max(FIRST_NUMBER, Number(row?.highest ?? 0) + 1);
  while (await jobRow(db, String(next))) next++;
  return String(next);
}
