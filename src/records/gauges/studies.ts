import type { Selectable } from 'kysely';
import {
  type KeptStudy,
  type StudyPlan,
  type StudyReading,
  type StudyTurn,
  standingReadings,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { getEntry } from '../catalogue.ts';
import { type Db, write } from '../database/database.ts';
import { NotInRecords, refuse } from '../database/errors.ts';
import { sayTheSame, toJson } from '../database/json.ts';
import type { Tables } from '../database/tables.ts';
import { type Ctx, printable, refuseNul, signed } from '../database/writing.ts';

export type NewStudy = Pick<KeptStudy, 'gaugeId' | 'day' | 'plan' | 'order'> & {
  /** Made by whoever sends it: sent again it is the study set up the first time. */
  readonly sentId: string;
};

/** Sets up a study with the order of its readings; answers its number. */
export async function startStudy(db: Db, ctx: Ctx, study: NewStudy): Promise<number> {
  const { who, at } = signed(ctx, undefined);
  const { sentId, gaugeId, day, plan, order } = study;
  return write(db, async (trx) => {
    const gauge = await getEntry(trx, 'gauge', gaugeId);
    if (gauge === null) throw new NotInRecords('id', `The catalog has no gauge "${printable(gaugeId)}".`);
    const already = await trx
      .selectFrom('study')
      .selectAll()
      .where('sent_id', '=', sentId)
      .executeTakeFirst();
    if (already) return sentBefore(already, gaugeId, plan);
    const last = await trx
      .selectFrom('study')
      .select((eb) => eb.fn.max('number').as('number'))
      .executeTakeFirst();
    const number = Number(last?.number ?? 0) + 1;
    const body = toJson({ plan, order });
    await trx
      .insertInto('study')
      .values({ number, sent_id: sentId, gauge_id: gaugeId, at, day, who, body })
      .execute();
    return number;
  });
}

function sentBefore(row: Selectable<Tables['study']>, gaugeId: string, plan: StudyPlan): number {
  const { plan: kept } = JSON.parse(row.body) as { plan: StudyPlan };
  if (row.gauge_id === gaugeId && sayTheSame(toJson(kept), toJson(plan))) return row.number;
  throw refuse(
    'sent-otherwise',
    '',
    `This page was saved before, as study ${row.number}, otherwise. Open the gauge again for another study.`,
  );
}

export type NewStudyReading = Pick<StudyReading, 'id' | 'place' | 'valueMm' | 'typed' | 'confirmed'>;

/** Keeps one reading at its place. Sent again it is the one kept the first time; a place is read once. */
export async function addStudyReading(
  db: Db,
  ctx: Ctx,
  number: number,
  { id, place, valueMm, typed, confirmed }: NewStudyReading,
): Promise<void> {
  const { who, at } = signed(ctx, undefined);
  refuseNul('value', typed);
  await write(db, async (trx) => {
    const study = await mustHave(trx, number);
    const already = await trx.selectFrom('study_reading').selectAll().where('id', '=', id).executeTakeFirst();
    if (already) {
      if (already.study_number === number && already.place === place && already.value_mm === valueMm) return;
      throw refuse(
        'sent-otherwise',
        '',
        'This page was saved before with another reading. Nothing was saved.',
      );
    }
    if (study.stopped !== null)
      throw refuse('stopped', '', `${study.stopped.who} stopped this study. The reading was not saved.`);
    if (study.order[place] === undefined)
      throw refuse('no-such-place', '', 'This study asks for no such reading. Nothing was saved.');
    if (standingReadings(study)[place] !== null)
      throw refuse(
        'already-read',
        '',
        'This station was read already, perhaps on another tablet. This reading was not saved; go on with the next.',
      );
    const nth = study.readings.length + 1;
    await trx
      .insertInto('study_reading')
      .values({
        id,
        study_number: number,
        nth,
        place,
        at,
        who,
        value_mm: valueMm,
        typed,
        confirmed: confirmed ? 1 : 0,
      })
      .execute();
  });
}

/** Takes a mistyped reading back, with the reason; it stays readable, and its place is read again. */
export async function withdrawStudyReading(
  db: Db,
  ctx: Ctx,
  number: number,
  asked: { readonly id: string; readonly why: string },
): Promise<void> {
  const { who, at, why } = signed(ctx, asked.why);
  await write(db, async (trx) => {
    const study = await mustHave(trx, number);
    const reading = study.readings.find(({ id }) => id === asked.id);
    if (reading === undefined) throw new NotInRecords('id', 'This study has no such reading.');
    if (reading.withdrawn !== null)
      throw refuse(
        'withdrawn',
        '',
        `${reading.withdrawn.who} withdrew this reading already. Nothing was changed.`,
      );
    if (why === '') throw refuse('why-needed', 'why', 'Enter why the reading is withdrawn.');
    await trx.insertInto('study_reading_withdrawn').values({ reading_id: asked.id, at, who, why }).execute();
  });
}

/** Ends a study before every reading was taken, with the reason. */
export async function stopStudy(db: Db, ctx: Ctx, number: number, asked: string): Promise<void> {
  const { who, at, why } = signed(ctx, asked);
  await write(db, async (trx) => {
    const study = await mustHave(trx, number);
    if (study.stopped !== null)
      throw refuse('stopped', '', `${study.stopped.who} stopped this study already. Nothing was changed.`);
    if (standingReadings(study).every((one) => one !== null))
      throw refuse('complete', '', 'Every reading of this study has been taken. There is nothing to stop.');
    if (why === '') throw refuse('why-needed', 'why', 'Enter why the study is stopped.');
    await trx.insertInto('study_stopped').values({ study_number: number, at, who, why }).execute();
  });
}

export async function getStudy(db: Db, number: number): Promise<KeptStudy | null> {
  const rows = await studyRows(db, (query) => query.where('number', '=', number));
  return rows[0] ?? null;
}

/** The studies of a gauge, newest first. */
export async function studiesOf(db: Db, gaugeId: string): Promise<readonly KeptStudy[]> {
  return studyRows(db, (query) => query.where('gauge_id', '=', gaugeId));
}

async function mustHave(db: Db, number: number): Promise<KeptStudy> {
  const study = await getStudy(db, number);
  if (study === null) throw new NotInRecords('number', `There is no study ${number}.`);
  return study;
}

function allStudies(db: Db) {
  return db.selectFrom('study').selectAll();
}
type Query = ReturnType<typeof allStudies>;

async function studyRows(db: Db, which: (query: Query) => Query): Promise<readonly KeptStudy[]> {
  const rows = await which(allStudies(db)).orderBy('number', 'desc').execute();
  if (rows.length === 0) return [];
  const numbers = rows.map(({ number }) => number);
  const readings = await db
    .selectFrom('study_reading')
    .leftJoin('study_reading_withdrawn', 'study_reading_withdrawn.reading_id', 'study_reading.id')
    .selectAll('study_reading')
    .select([
      'study_reading_withdrawn.at as withdrawn_at',
      'study_reading_withdrawn.who as withdrawn_who',
      'study_reading_withdrawn.why as withdrawn_why',
    ])
    .where('study_number', 'in', numbers)
    .orderBy('nth')
    .execute();
  const stopped = await db
    .selectFrom('study_stopped')
    .selectAll()
    .where('study_number', 'in', numbers)
    .execute();
  return rows.map((row) => {
    const { plan, order } = JSON.parse(row.body) as { plan: StudyPlan; order: readonly StudyTurn[] };
    const stop = stopped.find(({ study_number }) => study_number === row.number);
    return {
      number: row.number,
      gaugeId: row.gauge_id,
      at: row.at,
      day: row.day,
      who: row.who,
      plan,
      order,
      readings: readings
        .filter(({ study_number }) => study_number === row.number)
        .map((one) => ({
          id: one.id,
          place: one.place,
          at: one.at,
          who: one.who,
          valueMm: one.value_mm,
          typed: one.typed,
          confirmed: one.confirmed === 1,
          withdrawn:
            one.withdrawn_at === null
              ? null
              : { at: one.withdrawn_at, who: one.withdrawn_who ?? '', why: one.withdrawn_why ?? '' },
        })),
      stopped: stop ? { who: stop.who, at: stop.at, why: stop.why } : null,
    };
  });
}
