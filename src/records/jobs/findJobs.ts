import { type Selectable, type SelectQueryBuilder, sql } from 'kysely';
import { type DecisionKind, type JobLine, STAGES, type Stage } from '../../../shared/words/job.ts';
import { hasBegun, isShown } from '../begun.ts';
import type { Db } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import type { Tables } from '../database/tables.ts';
import { key, printable } from '../database/writing.ts';
import { holdsWord, jobsWithWords } from './jobsWithWords.ts';

/** How many jobs a page of the list may hold. */
export const MOST_LISTED = 200;

/** More words than a number, a family's name and a customer reference hold together. */
const MOST_WORDS = 40;
const LONGEST_TEXT = 400;

export interface JobQuestion {
  /** Every word of it is found in the job: its number, what it is, whose, who worked on it, what they wrote. */
  readonly text?: string;
  readonly familyId?: string;
  /** Left out: every one but closed. */
  readonly stage?: Stage | readonly Stage[];
  readonly outcome?: DecisionKind;
  /** Initials of somebody who changed something of it. */
  readonly who?: string;
  /** Days of receipt, both included. */
  readonly from?: string;
  readonly to?: string;
  readonly demo?: boolean;
  /** Continue after this: the `next` of the page before. */
  readonly after?: string;
  readonly limit: number;
}

export interface JobPage {
  readonly jobs: readonly JobLine[];
  /** Where the next page begins; null at the end. */
  readonly next: string | null;
}

/** Jobs by the day they were received, newest first. */
export async function findJobs(db: Db, question: JobQuestion): Promise<JobPage> {
  const { limit } = question;
  if (!Number.isInteger(limit) || limit < 1 || limit > MOST_LISTED) {
    throw refuse('bad-limit', 'limit', `A page holds 1 to ${MOST_LISTED} jobs, not ${limit}.`);
  }
  const exact = await named(db, question);
  const first = exact !== null && question.after === undefined ? [exact] : [];
  const room = limit - first.length;
  const rows = await newestFirst(db, question, exact, room + 1);
  const shown = rows.slice(0, room);
  const last = shown.at(-1);
  const next = last ? `${last.received_on}_${last.id}` : BEFORE_ALL;
  return { jobs: [...first, ...shown].map(toLine), next: rows.length > room ? next : null };
}

/** How many of the newest are looked through first for words: one that stands in many jobs fills a page with these. */
const NEWEST = 300;

/** The jobs asked for but `exact`, in the order of the list. */
async function newestFirst(
  db: Db,
  question: JobQuestion,
  exact: JobRow | null,
  limit: number,
): Promise<readonly JobRow[]> {
  const { text = '', ...rest } = question;
  const words = wordsOf(text);
  if (words.length > 0) {
    const newest = inOrder(db, rest, exact, null).limit(NEWEST).as('job');
    const rows = await ordered(holdingAll(db.selectFrom(newest).selectAll(), words))
      .limit(limit)
      .execute();
    if (rows.length === limit) return rows;
  }
  const holding = await jobsWithWords(db, words);
  return holding?.length === 0 ? [] : inOrder(db, question, exact, holding).limit(limit).execute();
}

/** Newest first. Several stages are each read in the order of their index, unless few jobs are left to be asked for. */
function inOrder(db: Db, question: JobQuestion, exact: JobRow | null, among: readonly number[] | null) {
  const asked = (one: JobQuestion) => {
    let query = narrowed(db.selectFrom('job').selectAll().where(isShown), one);
    if (exact !== null) query = query.where('id', '<>', exact.id);
    return among === null ? query : query.where('id', 'in', among);
  };
  const { stage } = question;
  if (typeof stage !== 'object' || among !== null) return ordered(asked(question));
  const [first, ...others] = [...new Set(stage)].map((one) => asked({ ...question, stage: one }));
  return ordered(others.reduce((all, other) => all.unionAll(other), first ?? asked(question)));
}

function ordered(query: JobSelect): JobSelect {
  return query.orderBy('received_on', 'desc').orderBy('id', 'desc');
}

/** The place in the list before any job. */
const BEFORE_ALL = '9999-12-31_999999999999999';

/** What people write round a number: "Job no. 1001", "JOB-1001", "tag 1001," or the address that a tag's code holds. */
function bareNumber(typed: string): string {
  return typed
    .replace(/^https?:\/\/[^/]+\/jobs\/([^/?#]+).*$/u, '$1')
    .replace(/^(?:(?:job|tag|sheet|number|no|nr)(?![a-z])[\s:.#№-]*|[#№]\s*)+/u, '')
    .replace(/[\s.,;:]+$/u, '');
}

/** The job whose number was typed, however it is written; null where the text is no number, or other filters leave it out. */
async function named(db: Db, { text = '', after: _, ...rest }: JobQuestion): Promise<JobRow | null> {
  const typed = key(text);
  const numbers = [typed, bareNumber(typed)].filter((one) => one !== '');
  if (numbers.length === 0) return null;
  const rows = await narrowed(db.selectFrom('job').selectAll().where(isShown), {
    ...rest,
    stage: rest.stage ?? STAGES,
  })
    .where('number_key', 'in', numbers)
    .orderBy('id')
    .execute();
  return rows.find((row) => row.number_key === typed) ?? rows[0] ?? null;
}

/** Most jobs of a shop that has been at work for years: they are what is left of all when the others are counted. */
const MOST_ARE = 'signed' satisfies Stage;

/** How many jobs are at each stage, zero included. */
export async function countByStage(db: Db): Promise<Readonly<Record<Stage, number>>> {
  const counts = Object.fromEntries(STAGES.map((stage) => [stage, 0])) as Record<Stage, number>;
  const jobs = db.selectFrom('job');
  const counted = sql<number>`count(*)`.as('n');
  const others = STAGES.filter((stage) => stage !== MOST_ARE);
  const rows = await jobs
    .select([sql<Stage>`${sql.lit(MOST_ARE)}`.as('stage'), counted])
    .unionAll(jobs.select(['stage', counted]).where('stage', 'in', others).groupBy('stage'))
    .execute();
  for (const { stage, n } of rows) {
    counts[stage] += n;
    if (stage !== MOST_ARE) counts[MOST_ARE] -= n;
  }
  if (await hasBegun(db)) {
    const hidden = jobs.select(['stage', counted]).where('demo', '=', 1).groupBy('stage');
    for (const { stage, n } of await hidden.execute()) counts[stage] -= n;
  }
  return counts;
}

/** How many jobs are at some stages: those at others are not gone through. */
export async function countAt(db: Db, stages: readonly Stage[]): Promise<number> {
  const counted = db.selectFrom('job').select(sql<number>`count(*)`.as('n'));
  const { n } = await counted.where('stage', 'in', stages).where(isShown).executeTakeFirstOrThrow();
  return n;
}

/** Whether any job is an invented one, to try the program with. */
export async function holdsDemo(db: Db): Promise<boolean> {
  const demo = db.selectFrom('job').select('id').where('demo', '=', 1).where(isShown);
  const row = await demo.limit(1).executeTakeFirst();
  return row !== undefined;
}

type JobRow = Selectable<Tables['job']>;
type JobSelect = SelectQueryBuilder<Tables, 'job', JobRow>;

/** Each word is a condition of its own, and both databases limit how many there may be. */
function wordsOf(text: string): readonly string[] {
  const words = key(text)
    .replace(/^#\s*/, '')
    .split(' ')
    .filter((word) => word !== '');
  if (words.length > MOST_WORDS) {
    throw refuse(
      'text-long',
      'text',
      `The search has ${words.length} words; at most ${MOST_WORDS} are allowed. Use fewer.`,
    );
  }
  if (text.length > LONGEST_TEXT) {
    throw refuse(
      'text-long',
      'text',
      `The search has ${text.length} characters; at most ${LONGEST_TEXT} are allowed. Use fewer words.`,
    );
  }
  return words;
}

function holdingAll(query: JobSelect, words: readonly string[]): JobSelect {
  return words.reduce((narrower, word) => narrower.where(holdsWord(word)), query);
}

function narrowed(query: JobSelect, question: JobQuestion): JobSelect {
  let q = holdingAll(query, wordsOf(question.text ?? ''));
  if (question.familyId !== undefined) q = q.where('family_id', '=', question.familyId);
  if (question.stage === undefined) q = q.where('stage', '<>', 'closed');
  else q = q.where('stage', 'in', typeof question.stage === 'string' ? [question.stage] : question.stage);
  if (question.outcome !== undefined) q = q.where('outcome', '=', question.outcome);
  if (question.who !== undefined) {
    const who = key(question.who);
    q = q.where(
      sql<boolean>`exists (select 1 from job_revision r where r.job_id = job.id and (lower(r.who) = ${who} or r.who = ${question.who}))`,
    );
  }
  if (question.from !== undefined) q = q.where('received_on', '>=', question.from);
  if (question.to !== undefined) q = q.where('received_on', '<=', question.to);
  if (question.demo !== undefined) q = q.where('demo', '=', question.demo ? 1 : 0);
  if (question.after !== undefined) {
    const { day, id } = placeOf(question.after);
    q = q.where((eb) =>
      eb.or([eb('received_on', '<', day), eb.and([eb('received_on', '=', day), eb('id', '<', id)])]),
    );
  }
  return q;
}

const PLACE_IN_LIST = /^(\d{4}-\d\d-\d\d)_(\d{1,15})$/;

/** Whether this could be the `next` of a page. */
export function isPlaceInList(cursor: string): boolean {
  return PLACE_IN_LIST.test(cursor);
}

function placeOf(cursor: string): { day: string; id: number } {
  const [, day, id] = PLACE_IN_LIST.exec(cursor) ?? [];
  if (day === undefined || id === undefined) {
    throw refuse(
      'bad-cursor',
      'after',
      `"${printable(cursor)}" is no place in the list; begin at the first page.`,
    );
  }
  return { day, id: Number(id) };
}

function toLine(row: JobRow): JobLine {
  return {
    id: row.id,
    number: row.number,
    revision: row.revision,
    createdAt: row.created_at,
    changedAt: row.changed_at,
    stage: row.stage,
    outcome: row.outcome,
    familyId: row.family_id,
    familyName: row.family_name,
    customerReference: row.customer_reference,
    receivedOn: row.received_on,
    demo: row.demo === 1,
  };
}
