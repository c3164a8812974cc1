import { type RawBuilder, sql } from 'kysely';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import { addEntry, getEntry } from './catalogue.ts';
import type { Db } from './database/database.ts';
import type { Ctx } from './database/writing.ts';

/**
 * That the shop has begun for real is kept beside its limits, as they were at that moment. Records are never deleted:
 * from then on the demo's jobs are found no more, and its entries are retired.
 */
const BEGUN_ID = 'begun';

export async function hasBegun(db: Db): Promise<boolean> {
  return (await getEntry(db, 'criteria', BEGUN_ID)) !== null;
}

export async function markBegun(db: Db, ctx: Ctx, limits: ShopCriteria): Promise<void> {
  await addEntry(db, ctx, {
    kind: 'criteria',
    id: BEGUN_ID,
    body: { ...limits, shopName: 'Begun for real' },
  });
}

/** A condition on jobs: what is the demo's is found only until the shop has begun for real. */
export const isShown = shownIn(sql`job`);

/** The same of a table that says whose a job is. */
export function shownIn(table: RawBuilder<unknown>): RawBuilder<boolean> {
  return sql<boolean>`(${table}.demo = 0 or not exists (
    select 1 from entry where entry.kind = 'criteria' and entry.id = ${BEGUN_ID}))`;
}
