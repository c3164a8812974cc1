import type { MasterCheck } from '../../../shared/words/gauges/masterChecks.ts';
import { getEntry } from '../catalogue.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { type Ctx, printable, refuseNul, signed } from '../database/writing.ts';

export type NewMasterCheck = Pick<
  MasterCheck,
  'id' | 'gaugeId' | 'day' | 'masterMm' | 'masterTyped' | 'readingMm' | 'readingTyped' | 'confirmed'
>;

/** Keeps a check of a gauge on a master. Sent again it is the one kept the first time. */
export async function addMasterCheck(db: Db, ctx: Ctx, check: NewMasterCheck): Promise<void> {
  const { who, at } = signed(ctx, undefined);
  const { id, gaugeId, day, masterMm, masterTyped, readingMm, readingTyped, confirmed } = check;
  refuseNul('master', masterTyped);
  refuseNul('reading', readingTyped);
  await write(db, async (trx) => {
    const gauge = await getEntry(trx, 'gauge', gaugeId);
    if (gauge === null) throw noGauge(gaugeId);
    const already = await trx.selectFrom('master_check').selectAll().where('id', '=', id).executeTakeFirst();
    if (already) {
      if (already.gauge_id === gaugeId && already.master_mm === masterMm && already.reading_mm === readingMm)
        return;
      throw refuse(
        'sent-otherwise',
        '',
        'This page was saved before with other figures. Open the gauge again for the next check.',
      );
    }
    const row = {
      id,
      gauge_id: gaugeId,
      day,
      at,
      who,
      due_on: gauge.body.dueOn,
    };
    await trx
      .insertInto('master_check')
      .values({
        ...row,
        master_mm: masterMm,
        master_typed: masterTyped,
        reading_mm: readingMm,
        reading_typed: readingTyped,
        confirmed: confirmed ? 1 : 0,
      })
      .execute();
  });
}

/** Takes a mistyped check back, with the reason; it stays readable. */
export async function withdrawMasterCheck(
  db: Db,
  ctx: Ctx,
  asked: { readonly gaugeId: string; readonly id: string; readonly why: string },
): Promise<void> {
  const { who, at, why } = signed(ctx, asked.why);
  await write(db, async (trx) => {
    const check = (await masterChecksOf(trx, [asked.gaugeId])).find(({ id }) => id === asked.id);
    if (check === undefined) throw new NotInRecords('id', 'This gauge has no such check on a master.');
    if (check.withdrawn !== null)
      throw refuse(
        'withdrawn',
        '',
        `${check.withdrawn.who} withdrew this check already. Nothing was changed.`,
      );
    if (why === '') throw refuse('why-needed', 'why', 'Enter why the check is withdrawn.');
    await trx.insertInto('master_check_withdrawn').values({ check_id: asked.id, at, who, why }).execute();
  });
}

/** The checks of some gauges, oldest first, withdrawn ones too. */
export async function masterChecksOf(db: Db, gaugeIds: readonly string[]): Promise<readonly MasterCheck[]> {
  if (gaugeIds.length === 0) return [];
  const rows = await db
    .selectFrom('master_check')
    .leftJoin('master_check_withdrawn', 'master_check_withdrawn.check_id', 'master_check.id')
    .selectAll('master_check')
    .select([
      'master_check_withdrawn.at as withdrawn_at',
      'master_check_withdrawn.who as withdrawn_who',
      'master_check_withdrawn.why as withdrawn_why',
    ])
    .where('master_check.gauge_id', 'in', [...gaugeIds])
    .orderBy('master_check.at')
    .orderBy('master_check.id')
    .execute();
  return rows.map((row) => ({
    id: row.id,
    gaugeId: row.gauge_id,
    day: row.day,
    at: row.at,
    who: row.who,
    masterMm: row.master_mm,
    masterTyped: row.master_typed,
    readingMm: row.reading_mm,
    readingTyped: row.reading_typed,
    confirmed: row.confirmed === 1,
    dueOn: row.due_on,
    withdrawn:
      row.withdrawn_at === null
        ? null
        : { at: row.withdrawn_at, who: row.withdrawn_who ?? '', why: row.withdrawn_why ?? '' },
  }));
}

function noGauge(id: string): NotInRecords {
  return new NotInRecords('id', `The catalog has no gauge "${printable(id)}".`);
}
