import { type Selectable, type SelectQueryBuilder, sql } from 'kysely';
import { type DecisionKind, type JobLine, STAGES, type Stage } from '../../../shared/words/job.ts';
import { isShown } from '../begun.ts';
import type { Db } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import type { Tables } from '../database/tables.ts';
import { key, printable } from '../database/writing.ts';

/** How many jobs a page of the list may hold. */
export const MOST_LISTED = 200;

/** More words than a number, a family's name and a customer reference hold together. */
const MOST_WORDS = 40;
const LONGEST_TEXT = 400;

export interface JobQuestion {
  /** Every word of it is found in the number, the family's name or the customer reference. */
  readonly text?: string;
  readonly familyId?: string;
  readonly stage?: Stage | readonly Stage[];
  readonly outcome?: DecisionKind;
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
  const rows = await narrowed(db.selectFrom('job').selectAll().where(isShown), question)
    .orderBy('received_on', 'desc')
    .orderBy('id', 'desc')
    .limit(limit + 1)
    .execute();
  const jobs = rows.slice(0, limit).map(toLine);
  const last = jobs.at(-1);
  return { jobs, next: rows.length > limit && last ? `${last.receivedOn}_${last.id}` : null };
}

/** How many jobs are at each stage, zero included. */
export async function countByStage(db: Db): Promise<Readonly<Record<Stage, number>>> {
  const rows = await db
    .selectFrom('job')
    .select((eb) => ['stage', eb.fn.countAll().as('n')])
    .where(isShown)
    .groupBy('stage')
    .execute();
  const counts = new Map(rows.map((row) => [row.stage, Number(row.n)]));
  const entries = STAGES.map((stage) => [stage, counts.get(stage) ?? 0] as const);
  return Object.fromEntries(entries) as Record<Stage, number>;
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

function narrowed(query: JobSelect, question: JobQuestion): JobSelect {
  let q = query;
  for (const word of wordsOf(question.text ?? '')) {
    q = q.where(sql<boolean>`search like ${`%${word.replace(/[\\%_]/g, '\\$&')}%`} escape '\\'`);
  }
  if (question.familyId !== undefined) q = q.where('family_id', '=', question.familyId);
  if (question.stage !== undefined) {
    q = q.where('stage', 'in', typeof question.stage === 'string' ? [question.stage] : question.stage);
  }
  if (question.outcome !== undefined) q = q.where('outcome', '=', question.outcome);
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
