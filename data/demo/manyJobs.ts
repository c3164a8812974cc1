import type { Insertable, Selectable } from 'kysely';
import type { Job } from '../../shared/words/job.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { hasBegun } from '../../src/records/begun.ts';
import { type Db, write } from '../../src/records/database/database.ts';
import type { Tables } from '../../src/records/database/tables.ts';
import { key } from '../../src/records/database/writing.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { wordsOfJob } from '../../src/records/jobs/searchWords.ts';
import { restsRows, trendRow } from '../../src/records/trends/keepTrend.ts';

/** A job of the demo shop, row by row: every invented job is one of these on another day, for another customer. */
interface Mould {
  readonly job: Job;
  readonly row: Selectable<Tables['job']>;
  readonly revisions: readonly Selectable<Tables['job_revision']>[];
  readonly readings: readonly Selectable<Tables['reading']>[];
}

interface Rows {
  readonly job: Insertable<Tables['job']>[];
  readonly job_revision: Insertable<Tables['job_revision']>[];
  readonly reading: Insertable<Tables['reading']>[];
  readonly job_trend: Insertable<Tables['job_trend']>[];
  readonly job_rests: Insertable<Tables['job_rests']>[];
}

const DAY_MS = 86_400_000;
const JOBS_AT_A_TIME = 200;
/** PostgreSQL takes 65 535 values at a time, SQLite 32 766. */
const MOST_VALUES = 20_000;
/** As many are on the benches at once; all that came before them are signed. */
const OPEN_AT_ONCE = 40;
const JOBS_A_DAY = 12;
/** Share of the covers that come in which came back; invented. */
const OFTEN_BACK = 0.03;
/** A cover comes back within about as many others. */
const MOST_RELEASED = 2000;

/** A job whose cover comes back. */
interface Earlier {
  readonly id: number;
  readonly number: string;
}

const FIRST_WORDS = [
  'Alder',
  'Birch',
  'Cedar',
  'Dogwood',
  'Elm',
  'Fir',
  'Ginkgo',
  'Hazel',
  'Juniper',
  'Larch',
];
const LAST_WORDS = ['Garage', 'Motors', 'Racing', 'Transmission', 'Rebuilders', 'Hauling', 'Farm', 'Taxi'];

/**
 * Adds invented jobs to a demo shop, the newest received the day before `today`. The same shop gets the same jobs. Each
 * is a job of the demo, with number, customer and days of its own. Throws Refusal in a shop with jobs of its own.
 */
export async function addManyJobs(
  db: Db,
  {
    count,
    today,
    told = () => undefined,
  }: { readonly count: number; readonly today: Date; readonly told?: (done: number) => void },
): Promise<void> {
  await refuseRealShop(db);
  const moulds = await mouldsOf(db);
  const signed = moulds.filter(({ row }) => row.stage === 'signed');
  if (signed.length === 0) {
    throw refused('There is no signed job of the demo here to make others like it. Use an empty folder.');
  }
  const last = await db
    .selectFrom('job')
    .select((eb) => [eb.fn.max('id').as('id'), eb.fn.max('plain_number').as('number')])
    .executeTakeFirstOrThrow();
  const [lastId, lastNumber] = [Number(last.id), Number(last.number)];
  const random = seeded(lastNumber);
  const released: Earlier[] = [];
  for (let from = 0; from < count; from += JOBS_AT_A_TIME) {
    const rows: Rows = { job: [], job_revision: [], reading: [], job_trend: [], job_rests: [] };
    const until = Math.min(count, from + JOBS_AT_A_TIME);
    for (let i = from; i < until; i++) {
      const among = count - i > OPEN_AT_ONCE ? signed : moulds;
      const mould = among[Math.floor(random() * among.length)]!;
      const daysAgo = 1 + Math.floor((count - 1 - i) / JOBS_A_DAY);
      const earlier = random() < OFTEN_BACK ? released[Math.floor(random() * released.length)] : undefined;
      const id = lastId + 1 + i;
      cast(rows, mould, {
        id,
        earlier: earlier ?? null,
        number: lastNumber + 1 + i,
        customer: customerOf(random),
        receivedAt: Math.floor(today.getTime() / DAY_MS - daysAgo) * DAY_MS,
      });
      if (mould.row.stage === 'signed' && mould.row.outcome === 'face') {
        released.push({ id, number: String(lastNumber + 1 + i) });
      }
    }
    released.splice(0, released.length - MOST_RELEASED);
    await insert(db, rows);
    told(until);
  }
}

function refused(message: string): Refusal {
  return new Refusal('real-shop', [{ path: '', message }]);
}

async function refuseRealShop(db: Db): Promise<void> {
  const real = await db.selectFrom('job').select('number').where('demo', '=', 0).limit(1).executeTakeFirst();
  if (real === undefined && !(await hasBegun(db))) return;
  const why = real ? `it has job ${real.number}, which is no demo job` : 'it has begun for real';
  throw refused(`Invented jobs are only added to a demo shop, and ${why}. Set DATA_DIR to an empty folder.`);
}

async function mouldsOf(db: Db): Promise<readonly Mould[]> {
  const rows = await db.selectFrom('job').selectAll().orderBy('id').limit(100).execute();
  const moulds: Mould[] = [];
  for (const row of rows) {
    const job = await getJob(db, row.id);
    const revisions = await db
      .selectFrom('job_revision')
      .selectAll()
      .where('job_id', '=', row.id)
      .orderBy('revision')
      .execute();
    const readings = await db
      .selectFrom('reading')
      .selectAll()
      .where('job_id', '=', row.id)
      .orderBy('revision')
      .orderBy('place')
      .execute();
    const withPhotos = revisions.some(({ what }) => what === 'photo');
    if (job !== null && !withPhotos) moulds.push({ job, row, revisions, readings });
  }
  return moulds;
}

/** The rows of a job like the mould, put with those that wait to be written. */
function cast(
  rows: Rows,
  { job, row, revisions, readings }: Mould,
  own: {
    readonly id: number;
    readonly number: number;
    readonly customer: string;
    readonly receivedAt: number;
    readonly earlier: Earlier | null;
  },
): void {
  const number = String(own.number);
  const receivedOn = new Date(own.receivedAt).toISOString().slice(0, 10);
  const later = own.receivedAt - Date.parse(`${row.received_on}T00:00:00Z`);
  const moved = (at: string) => new Date(Date.parse(at) + later).toISOString();
  const named = new Map(readings.map(({ id }, i) => [id, `invented-${number}-${i}`]));
  const received = job.sections.received!;
  const comebackOf = own.earlier?.number ?? null;
  const body = { ...received.body, customerReference: own.customer, receivedOn, comebackOf };
  rows.job.push({
    ...row,
    id: own.id,
    number,
    number_key: key(number),
    plain_number: own.number,
    created_at: moved(row.created_at),
    changed_at: moved(row.changed_at),
    customer_reference: own.customer,
    received_on: receivedOn,
    search: wordsOfJob(
      { ...job, number, sections: { ...job.sections, received: { ...received, body } } },
      [],
    ),
  });
  const asCast = {
    ...job,
    id: own.id,
    createdAt: moved(row.created_at),
    sections: { ...job.sections, received: { ...received, body } },
  };
  const signed = revisions.find(({ what }) => what === 'signature');
  rows.job_trend.push(trendRow(asCast, signed ? moved(signed.at) : null, own.earlier?.id ?? null));
  for (const one of restsRows(asCast)) rows.job_rests.push({ ...one, since: moved(one.since) });
  for (const one of revisions) {
    const ids = readings.filter(({ revision }) => revision === one.revision).map(({ id }) => named.get(id));
    rows.job_revision.push({
      ...one,
      job_id: own.id,
      at: moved(one.at),
      body:
        one.what === 'received'
          ? JSON.stringify(body)
          : one.what === 'reading'
            ? JSON.stringify({ readings: ids })
            : one.body,
    });
  }
  for (const one of readings) {
    const replaces = one.replaces === null ? null : (named.get(one.replaces) ?? null);
    rows.reading.push({ ...one, id: named.get(one.id)!, job_id: own.id, at: moved(one.at), replaces });
  }
}

async function insert(db: Db, rows: Rows): Promise<void> {
  await write(db, async (trx) => {
    for (const table of ['job', 'job_revision', 'reading', 'job_trend', 'job_rests'] as const) {
      const all: readonly object[] = rows[table];
      const some = Math.floor(MOST_VALUES / Object.keys(all[0] ?? { one: 1 }).length);
      for (let from = 0; from < all.length; from += some) {
        await trx
          .insertInto(table)
          .values(all.slice(from, from + some) as Insertable<Tables[typeof table]>[])
          .execute();
      }
    }
  });
}

function customerOf(random: () => number): string {
  const pick = (words: readonly string[]) => words[Math.floor(random() * words.length)]!;
  return `${pick(FIRST_WORDS)} ${pick(LAST_WORDS)}, invented customer ${1 + Math.floor(random() * 9000)}`;
}

/** The same numbers between 0 and 1 for the same seed (mulberry32, public domain; from memory). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
