import { sql } from 'kysely';
import type { CatalogueKind } from '../../shared/words/terms.ts';
import { isShown } from './begun.ts';
import { listEntries } from './catalogue.ts';
import type { Db } from './database/database.ts';

export interface JobNaming {
  readonly number: string;
  readonly receivedOn: string;
}

export interface SlipNaming {
  readonly number: number;
  readonly day: string;
}

/** Which jobs rest on an entry and which slips name it, at whatever revision: how many, and the newest of them. */
export interface WhereUsed {
  readonly jobs: { readonly count: number; readonly newest: readonly JobNaming[] };
  readonly slips: { readonly count: number; readonly newest: readonly SlipNaming[] };
  /** Cover types made of it, by name. */
  readonly covers: { readonly count: number; readonly newest: readonly CoverNaming[] };
}

export interface CoverNaming {
  readonly id: string;
  readonly name: string;
}

/** So many are named one by one. */
export const MOST_NAMED = 12;

/** Jobs that are put away are left out, as they are everywhere. */
export async function whereUsed(db: Db, kind: CatalogueKind, id: string): Promise<WhereUsed> {
  const resting = db.selectFrom('job_rests').select('job_id').where('id', '=', id);
  const jobs = db
    .selectFrom('job')
    .where('id', 'in', resting.where(sql<boolean>`what = ${kind}`))
    .where(isShown);
  const naming = sql<number>`(select number from slip_names where kind = ${kind} and id = ${id})`;
  const slips = db.selectFrom('slip').where('number', 'in', naming);
  const newestJobs = await jobs
    .select(['number', 'received_on'])
    .orderBy('received_on', 'desc')
    .orderBy('id', 'desc')
    .limit(MOST_NAMED)
    .execute();
  const newestSlips = await slips
    .select(['number', 'day'])
    .orderBy('number', 'desc')
    .limit(MOST_NAMED)
    .execute();
  const counted = (eb: { n: number | string | bigint } | undefined) => Number(eb?.n ?? 0);
  return {
    jobs: {
      count: counted(await jobs.select((eb) => eb.fn.countAll().as('n')).executeTakeFirst()),
      newest: newestJobs.map(({ number, received_on }) => ({ number, receivedOn: received_on })),
    },
    slips: {
      count: counted(await slips.select((eb) => eb.fn.countAll().as('n')).executeTakeFirst()),
      newest: newestSlips,
    },
    covers: await coversOf(db, kind, id),
  };
}

async function coversOf(db: Db, kind: CatalogueKind, id: string): Promise<WhereUsed['covers']> {
  if (kind !== 'steel' && kind !== 'lining') return { count: 0, newest: [] };
  const families = await listEntries(db, 'family');
  const made = families.filter(({ body }) => body[kind]?.id === id);
  return { count: made.length, newest: made.map((one) => ({ id: one.id, name: one.name })) };
}
