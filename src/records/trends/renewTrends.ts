import { type Db, write } from '../database/database.ts';
import { getJob } from '../jobs/readJob.ts';
import { keepTrend, TREND_VERSION } from './keepTrend.ts';

const AT_A_TIME = 25;

/**
 * Makes what the trends count anew for jobs that have no row, or one of another rule: after an import, and for jobs kept
 * by an earlier version. `rest` is awaited between some, and ends it by answering true.
 */
export async function renewTrends(db: Db, rest: () => Promise<boolean> = async () => false): Promise<void> {
  for (let after = 0; ; ) {
    const rows = await db
      .selectFrom('job')
      .leftJoin('job_trend as t', 't.job_id', 'job.id')
      .select('job.id')
      .where('job.id', '>', after)
      .where((eb) => eb.or([eb('t.version', 'is', null), eb('t.version', '<>', TREND_VERSION)]))
      .orderBy('job.id')
      .limit(AT_A_TIME)
      .execute();
    const last = rows.at(-1);
    if (last === undefined) return;
    await write(db, async (trx) => {
      for (const { id } of rows) {
        const job = await getJob(trx, id);
        if (job !== null) await keepTrend(trx, job);
      }
    });
    after = last.id;
    if (await rest()) return;
  }
}
