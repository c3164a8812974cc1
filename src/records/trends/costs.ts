import type { Costs } from '../../../shared/words/trends/costs.ts';
import { type Db, write } from '../database/database.ts';
import { refuse, StaleEdit } from '../database/errors.ts';
import { toJson } from '../database/json.ts';
import { type Ctx, signed } from '../database/writing.ts';

export interface CostRevision {
  readonly revision: number;
  readonly at: string;
  readonly who: string;
  readonly why: string;
  readonly body: Costs;
}

/** Every revision of what things cost, the first first. */
export async function costHistory(db: Db): Promise<readonly CostRevision[]> {
  const rows = await db.selectFrom('cost_revision').selectAll().orderBy('revision').execute();
  return rows.map(({ body, ...row }) => ({ ...row, body: JSON.parse(body) as Costs }));
}

/** Keeps what things cost as a new revision, begun from `fromRevision`, 0 for the first. */
export async function saveCosts(
  db: Db,
  ctx: Ctx,
  { fromRevision, body }: { readonly fromRevision: number; readonly body: Costs },
): Promise<number> {
  const by = signed(ctx, undefined);
  return write(db, async (trx) => {
    const last = (await costHistory(trx)).at(-1);
    const revision = last?.revision ?? 0;
    if (fromRevision !== revision) {
      throw new StaleEdit(
        `${last?.who ?? 'Somebody'} changed the costs while you had them open. Nothing of yours was saved. Compare the two and save again.`,
        { section: 'criteria', theirs: null, currentRevision: revision, since: [] },
      );
    }
    if (revision > 0 && by.why === '') throw refuse('why-needed', 'why', 'Enter why the costs change.');
    const row = { revision: revision + 1, at: by.at, who: by.who, why: by.why, body: toJson(body) };
    await trx.insertInto('cost_revision').values(row).execute();
    return row.revision;
  });
}
