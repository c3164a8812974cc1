import { type RawBuilder, type Selectable, type SelectQueryBuilder, sql } from 'kysely';
import {
  DECISION_KINDS,
  type DecisionKind,
  type JobLine,
  STAGES,
  type Stage,
} from '../../../shared/words/job.ts';
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
  /** Left out: by the day of receipt, newest first. */
  readonly sort?: JobSort;
  /** Continue after this: the `next` of the page before. */
  readonly after?: string;
  readonly limit: number;
}

/** What the list can be sorted by. */
export const JOB_ORDERS = ['received', 'number', 'type', 'customer', 'state', 'decision'] as const;
export interface JobSort {
  readonly by: (typeof JOB_ORDERS)[number];
  /** From the other end: newest first, Z first. */
  readonly down: boolean;
}

export interface JobPage {
  readonly jobs: readonly JobLine[];
  /** Where the next page begins; null at the end. */
  readonly next: string | null;
}

/** Jobs in the order asked for; by the day they were received, newest first, where none is. */
export async function findJobs(db: Db, question: JobQuestion): Promise<JobPage> {
  const { limit, sort = NEWEST_FIRST } = question;
  if (!Number.isInteger(limit) || limit < 1 || limit > MOST_LISTED) {
    throw refuse('bad-limit', 'limit', `A page holds 1 to ${MOST_LISTED} jobs, not ${limit}.`);
  }
  const exact = await named(db, question);
  const first = exact !== null && question.after === undefined ? [exact] : [];
  const room = limit - first.length;
  const { by, down } = sort;
  const rows =
    by === 'received' && down
      ? await newestFirst(db, question, exact, room + 1)
      : await sorted(db, question, sort, exact, room + 1);
  const shown = rows.slice(0, room);
  const last = shown.at(-1);
  const next = last ? `${last.received_on}_${last.id}` : BEFORE_ALL;
  return { jobs: [...first, ...shown].map(toLine), next: rows.length > room ? next : null };
}

export const NEWEST_FIRST: JobSort = { by: 'received', down: true };

/**
 * Part of a list in its order, which an index holds: all jobs of one state, or those with a customer. What has no such
 * value is a part of its own and comes last, whichever end the list begins at.
 */
interface Stretch {
  readonly only: RawBuilder<boolean> | null;
  /** Then by the number of the record. */
  readonly order: RawBuilder<unknown>;
  readonly down: boolean;
  readonly holds: (row: JobRow) => boolean;
}

const whole = (only: RawBuilder<boolean> | null, order: RawBuilder<unknown>, down: boolean): Stretch => ({
  only,
  order,
  down,
  holds: () => true,
});
const RECEIVED = sql.ref('received_on');

/** The stretches of a list, first to last. */
const STRETCHES: Readonly<Record<JobSort['by'], (down: boolean) => readonly Stretch[]>> = {
  received: (down) => [whole(null, RECEIVED, down)],
  number: (down) => [
    {
      ...whole(sql`plain_number is not null`, sql.ref('plain_number'), down),
      holds: ({ plain_number }) => plain_number !== null,
    },
    whole(sql`plain_number is null`, sql.ref('number_key'), down),
  ],
  type: (down) => [whole(null, sql`lower(family_name)`, down)],
  customer: (down) => [
    {
      ...whole(sql`lower(customer_reference) > ''`, sql`lower(customer_reference)`, down),
      holds: ({ customer_reference }) => customer_reference !== '',
    },
    whole(sql`lower(customer_reference) = ''`, sql`lower(customer_reference)`, true),
  ],
  state: (down) =>
    (down ? STAGES.toReversed() : STAGES).map((stage) => ({
      ...whole(sql`stage = ${sql.lit(stage)}`, RECEIVED, true),
      holds: (row) => row.stage === stage,
    })),
  decision: (down) => [
    ...(down ? DECISION_KINDS.toReversed() : DECISION_KINDS).map((kind) => ({
      ...whole(sql`outcome = ${sql.lit(kind)}`, RECEIVED, true),
      holds: ({ outcome }: JobRow) => outcome === kind,
    })),
    whole(sql`outcome is null`, RECEIVED, true),
  ],
};

/** Stretch after stretch until the page is full, each read in the order of its index. */
async function sorted(
  db: Db,
  question: JobQuestion,
  { by, down }: JobSort,
  exact: JobRow | null,
  limit: number,
): Promise<readonly JobRow[]> {
  const { text = '', after, ...rest } = question;
  const among = await jobsWithWords(db, wordsOf(text));
  if (among?.length === 0) return [];
  const from = after === undefined || after === BEFORE_ALL ? null : await rowAt(db, after);
  const stretches = STRETCHES[by](down);
  const rows: JobRow[] = [];
  let begun = from === null;
  for (const stretch of stretches) {
    const here: JobRow | null = !begun && from !== null && stretch.holds(from) ? from : null;
    begun ||= here !== null;
    if (!begun || rows.length === limit) continue;
    let query = narrowed(db.selectFrom('job').selectAll().where(isShown), { ...rest, text }, STRETCHED);
    if (exact !== null) query = query.where('id', '<>', exact.id);
    if (among !== null) query = query.where('id', 'in', among);
    if (stretch.only !== null) query = query.where(stretch.only);
    if (here !== null) query = query.where(await beyond(db, stretch, here));
    const way = stretch.down ? 'desc' : 'asc';
    const found = await query
      .orderBy(stretch.order, way)
      .orderBy('id', way)
      .limit(limit - rows.length)
      .execute();
    rows.push(...found);
  }
  return rows;
}

/** The job that a page ended with. */
async function rowAt(db: Db, after: string): Promise<JobRow> {
  const { id } = placeOf(after);
  const row = await db.selectFrom('job').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) throw noPlace(after);
  return row;
}

/** What comes after this job in its stretch; its value is read as the database compares it. */
async function beyond(db: Db, { order, down }: Stretch, { id }: JobRow): Promise<RawBuilder<boolean>> {
  const { value } = await db
    .selectFrom('job')
    .select(sql<string | number>`${order}`.as('value'))
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  return down
    ? sql`(${order} <= ${value} and (${order} < ${value} or id < ${id}))`
    : sql`(${order} >= ${value} and (${order} > ${value} or id > ${id}))`;
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

/** Where the order of a stretch is to be followed, whatever state most jobs are in. */
const STRETCHED = { inOrder: true } as const;

function narrowed(
  query: JobSelect,
  question: JobQuestion,
  { inOrder = false }: { readonly inOrder?: boolean } = {},
): JobSelect {
  let q = holdingAll(query, wordsOf(question.text ?? ''));
  if (question.familyId !== undefined) q = q.where('family_id', '=', question.familyId);
  if (question.stage === undefined) q = q.where('stage', '<>', 'closed');
  else {
    const stages = typeof question.stage === 'string' ? [question.stage] : question.stage;
    // An expression keeps SQLite from gathering most jobs of the shop by their state, to sort them all.
    const stage =
      inOrder && stages.includes(MOST_ARE) ? sql<Stage>`coalesce(stage, '')` : sql.ref<Stage>('stage');
    q = q.where(stage, 'in', stages);
  }
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
  if (day === undefined || id === undefined) throw noPlace(cursor);
  return { day, id: Number(id) };
}

function noPlace(cursor: string) {
  return refuse(
    'bad-cursor',
    'after',
    `"${printable(cursor)}" is no place in the list; begin at the first page.`,
  );
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
