import type { Decision, Job } from '../../../shared/words/job.ts';
import { restsOnUnjoinedRing } from '../../calc/job/ringCredit.ts';
import { isShown } from '../begun.ts';
import { type Db, readAtOnce, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { type Ctx, refuseNul, signed as signedBy } from '../database/writing.ts';
import { getJob, noJob } from './readJob.ts';

const LONGEST_WORD = 2000;

export interface RingClosed {
  readonly job: string;
  readonly word: string;
  readonly who: string;
  readonly at: string;
}

export interface RingDoubts {
  /** Signed, and nobody has closed them. */
  readonly open: readonly Job[];
  /** Newest first. */
  readonly closed: readonly RingClosed[];
}

/** Signed jobs whose decision counts on a ring that is not recorded as joined to the pads, and the words that closed some. */
export async function ringDoubts(db: Db): Promise<RingDoubts> {
  return readAtOnce(db, async (reading) => {
    const words = await reading
      .selectFrom('ring_closed as c')
      .innerJoin('job', 'job.id', 'c.job_id')
      .select(['job.number', 'c.job_id', 'c.revision', 'c.word', 'c.who', 'c.at'])
      .orderBy('c.at', 'desc')
      .orderBy('c.job_id', 'desc')
      .execute();
    const open: Job[] = [];
    for (const id of await inDoubtNow(db, reading)) {
      const job = await getJob(reading, id);
      const decided = job?.sections.decision?.revision;
      if (job === null || words.some((one) => one.job_id === id && one.revision === decided)) continue;
      open.push(job);
    }
    return { open, closed: words.map(({ number, word, who, at }) => ({ job: number, word, who, at })) };
  });
}

/** Jobs found to be in doubt when those signed on a ring were last as `as` says. */
const found = new WeakMap<Db, { readonly as: string; readonly ids: readonly number[] }>();

/** The same as long as no such job came, went or changed: one of these figures of them would be another. */
async function inDoubtNow(db: Db, reading: Db): Promise<readonly number[]> {
  const signed = await reading
    .selectFrom('job')
    .select((eb) => [
      eb.fn.countAll().as('n'),
      eb.fn.sum('id').as('ids'),
      eb.fn.sum('revision').as('revisions'),
      eb.fn.max('changed_at').as('last'),
    ])
    .where(isShown)
    .where('stage', '=', 'signed')
    .where('ring_credit', '=', 1)
    .executeTakeFirstOrThrow();
  const as = Object.values(signed).join(' ');
  const before = found.get(db);
  if (before?.as === as) return before.ids;
  const rows = await reading
    .selectFrom('job')
    .innerJoin('job_revision as decided', 'decided.job_id', 'job.id')
    .select(['job.id', 'decided.body'])
    .where(isShown)
    .where('stage', '=', 'signed')
    .where('ring_credit', '=', 1)
    .where('decided.what', '=', 'decision')
    .where((eb) =>
      eb(
        'decided.revision',
        '=',
        eb
          .selectFrom('job_revision as last')
          .select((one) => one.fn.max('last.revision').as('revision'))
          .whereRef('last.job_id', '=', 'job.id')
          .where('last.what', '=', 'decision'),
      ),
    )
    .orderBy('job.id')
    .execute();
  const ids = rows
    .filter(({ body }) => restsOnUnjoinedRing(JSON.parse(body) as Decision))
    .map(({ id }) => id);
  found.set(db, { as, ids });
  return ids;
}

/** Closes one with a word. Sent again with the same word it is harmless. */
export async function closeRingDoubt(
  db: Db,
  ctx: Ctx,
  { job: number, word: typed }: { readonly job: string; readonly word: string },
): Promise<void> {
  const by = signedBy(ctx, '');
  const word = typed.normalize('NFC').trim();
  if (word === '' || word.length > LONGEST_WORD) {
    throw refuse(
      'word-needed',
      'word',
      word === ''
        ? 'Say what was found or done about the ring before you close this.'
        : `The note has ${word.length} characters; at most ${LONGEST_WORD} are allowed.`,
    );
  }
  refuseNul('word', word);
  await write(db, async (trx) => {
    const job = await getJob(trx, number);
    if (job === null) throw noJob(number);
    const decided = job.sections.decision;
    if (!inDoubt(job) || decided === null) {
      throw refuse(
        'no-ring-doubt',
        'word',
        `Job ${job.number} is not signed on such a ring: there is nothing to close.`,
      );
    }
    const known = await trx
      .selectFrom('ring_closed')
      .select(['word', 'who'])
      .where('job_id', '=', job.id)
      .where('revision', '=', decided.revision)
      .executeTakeFirst();
    if (known?.word === word) return;
    if (known) throw refuse('closed-already', 'word', `${known.who} closed this already: ${known.word}`);
    await trx
      .insertInto('ring_closed')
      .values({ job_id: job.id, revision: decided.revision, word, who: by.who, at: by.at })
      .execute();
  });
}

function inDoubt(job: Job): boolean {
  return job.stage === 'signed' && restsOnRing(job);
}

/** Whether a job, signed or not, is decided on a ring that nobody recorded as joined to the pads. */
export function restsOnRing({ sections: { decision } }: Job): boolean {
  return decision !== null && restsOnUnjoinedRing(decision.body);
}
