import { type Selectable, sql } from 'kysely';
import type { PrintedPart } from '../../../shared/words/paper.ts';
import { type KeptSlip, type SlipLine, slipName, slipNumber } from '../../../shared/words/stud/slip.ts';
import type { Fits } from '../../../shared/words/stud/stud.ts';
import { type Db, write } from '../database/database.ts';
import { refuse } from '../database/errors.ts';
import { sayTheSame, toJson } from '../database/json.ts';
import type { Tables } from '../database/tables.ts';
import { type Ctx, hasControls, key, printable, refuseNul, signed } from '../database/writing.ts';
import { keepParts } from '../jobs/signedPrints.ts';

export type NewSlip = Pick<KeptSlip, 'day' | 'customerReference' | 'asked' | 'answered' | 'calcVersion'> & {
  /** Made by whoever sends it: the same slip sent again is the one saved the first time. */
  readonly sentId: string;
};

/** A slip as it is printed, and all that printing it again needs. */
export type PrintSlip = (slip: KeptSlip) => { readonly html: string; readonly parts: readonly PrintedPart[] };

const LONGEST_REFERENCE = 80;

/** Saves a slip with its paper under the next number. Numbers have no gaps: whoever writes waits for a turn. */
export async function saveSlip(db: Db, ctx: Ctx, slip: NewSlip, print: PrintSlip): Promise<KeptSlip> {
  const { who, at } = signed(ctx, undefined);
  const { sentId, day, asked, answered, calcVersion } = slip;
  const customerReference = referenceOf(slip.customerReference);
  const [askedJson, answeredJson] = [toJson(asked), toJson(answered)];
  return write(db, async (trx) => {
    const already = await trx.selectFrom('slip').selectAll().where('sent_id', '=', sentId).executeTakeFirst();
    if (already) return sameAsSent(already, askedJson, customerReference);
    const last = await trx
      .selectFrom('slip')
      .select((eb) => eb.fn.max('number').as('number'))
      .executeTakeFirst();
    const number = Number(last?.number ?? 0) + 1;
    const kept = { number, at, day, who, customerReference, asked, answered, calcVersion };
    const { html, parts } = print(kept);
    refuseNul('', html);
    await keepParts(trx, parts);
    await trx
      .insertInto('slip')
      .values({
        number,
        sent_id: sentId,
        at,
        day,
        who,
        customer_reference: customerReference,
        stack_name: answered.stack.name,
        stud_name: answered.stud.name,
        fits: answered.check.fits,
        search: wordsOf(kept),
        calc_version: calcVersion,
        asked: askedJson,
        answered: answeredJson,
        html,
      })
      .execute();
    return kept;
  });
}

function referenceOf(typed: string): string {
  const reference = typed.normalize('NFC').trim();
  if (reference.length > LONGEST_REFERENCE || hasControls(reference))
    throw refuse(
      'bad-reference',
      'customer',
      `The customer reference "${printable(reference)}" is not up to ${LONGEST_REFERENCE} plain characters; shorten it.`,
    );
  refuseNul('customer', reference);
  return reference;
}

function sameAsSent(row: Selectable<Tables['slip']>, askedJson: string, customerReference: string): KeptSlip {
  if (sayTheSame(row.asked, askedJson) && row.customer_reference === customerReference) return toSlip(row);
  throw refuse(
    'sent-otherwise',
    '',
    `This page was saved before as slip ${slipName(row.number)}, with another question. Open the slip again from Find a stud.`,
  );
}

function wordsOf({ number, who, customerReference, answered }: KeptSlip): string {
  const { stack, stud, kit } = answered;
  return [
    `slip ${slipName(number)}`,
    customerReference,
    stack.name,
    stud.name,
    kit.nut?.entry.name ?? '',
    who,
  ]
    .map(key)
    .join('\n');
}

/** Whether a slip was saved with this id before. */
export async function slipSentAs(db: Db, sentId: string): Promise<boolean> {
  const row = await db.selectFrom('slip').select('number').where('sent_id', '=', sentId).executeTakeFirst();
  return row !== undefined;
}

/** null where no slip has the number. */
export async function getSlip(db: Db, number: number): Promise<KeptSlip | null> {
  const row = await db.selectFrom('slip').selectAll().where('number', '=', number).executeTakeFirst();
  return row ? toSlip(row) : null;
}

/** The paper of a slip, byte for byte; null where there is no such slip. */
export async function printedSlip(db: Db, number: number): Promise<string | null> {
  const row = await db.selectFrom('slip').select('html').where('number', '=', number).executeTakeFirst();
  return row?.html ?? null;
}

export interface SlipQuestion {
  /** Every word of it is found in the slip: number, customer, stack, stud, nut, initials. */
  readonly text?: string | undefined;
  readonly fits?: Fits | undefined;
  readonly who?: string | undefined;
  /** Days, both included. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly counted?: boolean | undefined;
  /** Left out: newest first. */
  readonly sort?: SlipSort | undefined;
  /** The slip the page before ended with: the next page. */
  readonly before?: number | undefined;
  readonly limit: number;
}

/** What the list can be sorted by, each in the order of an index. */
const SLIP_ORDERS = {
  slip: sql.ref('number'),
  stud: sql`lower(stud_name)`,
  stack: sql`lower(stack_name)`,
  customer: sql`lower(customer_reference)`,
  by: sql`lower(who)`,
  answer: sql.ref('fits'),
} as const;
export interface SlipSort {
  readonly by: keyof typeof SLIP_ORDERS;
  readonly down: boolean;
}
export const SLIP_SORTS = (Object.keys(SLIP_ORDERS) as SlipSort['by'][]).flatMap(
  (by) => [by, `-${by}`] as const,
);
export const NEWEST_SLIPS: SlipSort = { by: 'slip', down: true };

/** Whether its parts are counted out of stock as it stands. */
export const countedOut = sql<number>`coalesce((
  select case when n.what = 'out' then 1 else 0 end from slip_count n
  where n.slip_number = slip.number order by n.place desc limit 1), 0)`;

/** How many slips a page of the list may hold. */
export const MOST_SLIPS = 200;
const MOST_WORDS = 40;

/** In the order asked for; `more`: there are others. */
export async function findSlips(
  db: Db,
  question: SlipQuestion,
): Promise<{ readonly slips: readonly SlipLine[]; readonly more: boolean }> {
  const { text = '', fits, who, from, to, counted, sort = NEWEST_SLIPS, before, limit } = question;
  const order = SLIP_ORDERS[sort.by];
  let query = db
    .selectFrom('slip')
    .select(['number', 'at', 'day', 'who', 'customer_reference', 'stack_name', 'stud_name', 'fits'])
    .select(countedOut.as('counted'));
  const exact = slipNumber(text);
  if (exact !== null) query = query.where('number', '=', exact);
  else
    for (const word of words(text))
      query = query.where(sql<boolean>`search like ${`%${word.replace(/[\\%_]/g, '\\$&')}%`} escape '\\'`);
  if (fits !== undefined) query = query.where('fits', '=', fits);
  if (who !== undefined) query = query.where(sql<boolean>`lower(who) = ${key(who)}`);
  if (from !== undefined) query = query.where('day', '>=', from);
  if (to !== undefined) query = query.where('day', '<=', to);
  if (counted !== undefined) query = query.where(countedOut, '=', counted ? 1 : 0);
  if (before !== undefined) {
    const last = await db
      .selectFrom('slip')
      .select(sql<string | number>`${order}`.as('value'))
      .where('number', '=', before)
      .executeTakeFirst();
    // By its number a place is known whether or not a slip has it.
    if (last === undefined && sort.by !== 'slip') return { slips: [], more: false };
    const value = last?.value ?? before;
    query = query.where(
      sort.down
        ? sql<boolean>`(${order} <= ${value} and (${order} < ${value} or number < ${before}))`
        : sql<boolean>`(${order} >= ${value} and (${order} > ${value} or number > ${before}))`,
    );
  }
  const way = sort.down ? 'desc' : 'asc';
  const rows = await query
    .orderBy(order, way)
    .orderBy('number', way)
    .limit(limit + 1)
    .execute();
  const slips = rows
    .slice(0, limit)
    .map(({ customer_reference, stack_name, stud_name, counted, ...row }) => ({
      ...row,
      customerReference: customer_reference,
      stackName: stack_name,
      studName: stud_name,
      counted: Number(counted) === 1,
    }));
  return { slips, more: rows.length > limit };
}

function words(text: string): readonly string[] {
  const found = key(text)
    .split(' ')
    .filter((word) => word !== '');
  if (found.length > MOST_WORDS || text.length > 400)
    throw refuse('text-long', 'text', 'The search is too long. Use fewer words.');
  return found;
}

/** The slip a job was begun from; null where it was begun without one. */
export async function slipOfJob(db: Db, jobId: number): Promise<KeptSlip | null> {
  const row = await db
    .selectFrom('slip_job')
    .innerJoin('slip', 'slip.number', 'slip_job.slip_number')
    .selectAll('slip')
    .where('slip_job.job_id', '=', jobId)
    .executeTakeFirst();
  return row ? toSlip(row) : null;
}

/** Numbers of the jobs begun from a slip, oldest first. */
export async function jobsOfSlip(db: Db, number: number): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('slip_job')
    .innerJoin('job', 'job.id', 'slip_job.job_id')
    .select('job.number')
    .where('slip_job.slip_number', '=', number)
    .orderBy('job.id')
    .execute();
  return rows.map((row) => row.number);
}

export function toSlip(row: Selectable<Tables['slip']>): KeptSlip {
  return {
    number: row.number,
    at: row.at,
    day: row.day,
    who: row.who,
    customerReference: row.customer_reference,
    asked: JSON.parse(row.asked),
    answered: JSON.parse(row.answered),
    calcVersion: row.calc_version,
  };
}
