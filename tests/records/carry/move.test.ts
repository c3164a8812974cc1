import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Stopped } from '../../../src/progress.ts';
import { moveShop } from '../../../src/records/carry/move.ts';
import { addEntry } from '../../../src/records/catalogue.ts';
import { FILE_NAME, openShop } from '../../../src/records/database/database.ts';
import { MoveFailed } from '../../../src/records/database/errors.ts';
import { openPostgres } from '../../../src/records/database/postgres.ts';
import { addMasterCheck, withdrawMasterCheck } from '../../../src/records/gauges/masterChecks.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { historyOf } from '../../../src/records/jobs/history.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { saveSlip } from '../../../src/records/slips/slips.ts';
import { countOut } from '../../../src/records/slips/stock.ts';
import { gauge, newCheck } from '../gauges/gaugeSamples.ts';
import { errorOf } from '../refusals.ts';
import { alder, as, received, signedJob, wall } from '../samples.ts';
import { onPostgres, placeOnPostgres } from '../shops.ts';
import { newSlip, print, stockShelf } from '../slips/slipSamples.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');

onPostgres('moving a shop from SQLite to PostgreSQL', () => {
  let dataDir: string;
  let place: Awaited<ReturnType<typeof placeOnPostgres>>;
  beforeEach(async () => {
    dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
    place = await placeOnPostgres();
  });
  afterEach(async () => {
    await place.remove();
    rmSync(dataDir, { recursive: true, force: true });
  });

  const target = () => openPostgres({ url: place.url, dataDir });

  /** Jobs, texts and numbers of the kinds that two databases may disagree about. */
  async function fill(): Promise<void> {
    const shop = openShop({ dataDir });
    await addEntry(shop.db, as('AB'), { kind: 'family', body: alder });
    await signedJob(shop.db);
    const note = `Ärger, "quoted", it's 100 % \\ 中文 🛠 \u{fffd} e\u0301 \t\n${'long '.repeat(900)}`;
    const job = await createJob(shop.db, as('ÄÖ'), { number: 'K_7 ß', received: received({ note }) });
    await addReadings(shop.db, as('CD'), {
      jobId: job.id,
      readings: [0.1 + 0.2, 1 / 3, 5e-324, 9999.999999999998, 4].map((valueMm, i) =>
        wall(`n${i}`, { valueMm, angleDeg: -0, typed: note.slice(0, 40) }),
      ),
    });
    await addReadings(shop.db, as('CD'), {
      jobId: job.id,
      readings: [wall('m0', { replaces: 'n0', valueMm: 4.1 }), wall('m1', { replaces: 'm0', valueMm: null })],
    });
    await stockShelf(shop.db, 10);
    const { number } = await saveSlip(
      shop.db,
      as('CD'),
      newSlip({ customerReference: 'Ärger 中文 🛠' }),
      print,
    );
    await countOut(shop.db, as('CD'), { number });
    await createJob(shop.db, as('CD'), { received: received(), slip: number });
    await addEntry(shop.db, as('CD'), { kind: 'gauge', id: 'm1', body: gauge });
    await addMasterCheck(shop.db, as('CD'), newCheck({ readingMm: 0.1 + 0.2 }));
    await withdrawMasterCheck(shop.db, as('CD'), { gaugeId: 'm1', id: newCheck().id, why: 'wrong' });
    await shop.close();
  }

  test('a move that is stopped leaves the database empty', async () => {
    await fill();
    let steps = 0;
    const step = () => {
      if (++steps === 5) throw new Stopped('');
    };
    expect(await errorOf(moveShop({ dataDir, url: place.url, now, step }))).toBeInstanceOf(Stopped);
    expect(steps).toBe(5);
    expect(await jobsThere()).toBe(0);
  });

  const failure = async (folder = dataDir) => {
    const error = await errorOf(moveShop({ dataDir: folder, url: place.url, now }));
    if (!(error instanceof MoveFailed)) throw error;
    return error;
  };
  const jobsThere = async () => {
    const shop = await target();
    const { jobs } = await findJobs(shop.db, { limit: 200 });
    await shop.close();
    return jobs.length;
  };

  test('a move brings everything, and leaves its source as it was', async () => {
    await fill();
    const before = readFileSync(join(dataDir, FILE_NAME));
    const moved = await moveShop({ dataDir, url: place.url, now });
    expect(readFileSync(join(dataDir, FILE_NAME)).equals(before)).toBe(true);
    const rows = Object.fromEntries(moved.map((one) => [one.table, one.rows]));
    expect(rows).toMatchObject({
      job: 3,
      job_revision: 12,
      reading: 10,
      entry: 4,
      entry_revision: 6,
      slip: 1,
      slip_count: 1,
      slip_job: 1,
      master_check: 1,
      master_check_withdrawn: 1,
    });

    const from = openShop({ dataDir });
    const to = await target();
    for (const id of [1, 2]) {
      expect(await getJob(to.db, id)).toEqual(await getJob(from.db, id));
      expect(await historyOf(to.db, id)).toEqual(await historyOf(from.db, id));
    }
    expect(await findJobs(to.db, { limit: 9, text: 'k_7 SS' })).toEqual(
      await findJobs(from.db, { limit: 9, text: 'k_7 SS' }),
    );
    // What comes next is counted on from there, alike on both.
    const next = async (shop: typeof to) => createJob(shop.db, { who: 'AB', now }, { received: received() });
    expect(await next(to)).toEqual(await next(from));
    await from.close();
    await to.close();
  });

  test('a move into a shop that holds something is refused, and changes nothing', async () => {
    await fill();
    const shop = await target();
    await createJob(shop.db, as('XY'), { received: received() });
    await shop.close();
    expect((await failure()).code).toBe('not-empty');
    expect(await jobsThere()).toBe(1);
  });

  test('a second move is refused', async () => {
    await fill();
    await moveShop({ dataDir, url: place.url, now });
    expect((await failure()).code).toBe('not-empty');
    expect(await jobsThere()).toBe(3);
  });

  test('a move is given up when a row arrives changed, and nothing is kept', async () => {
    await fill();
    const shop = await target();
    await sql
      .raw(
        `create function blunt() returns trigger language plpgsql as
          $$ begin NEW.typed := left(NEW.typed, 20); return NEW; end $$;
        create trigger blunt before insert on reading for each row execute function blunt();`,
      )
      .execute(shop.db);
    await shop.close();
    const failed = await failure();
    expect([
      failed.code,
      failed.message.startsWith('Table reading did not arrive as it left (10 rows, '),
    ]).toEqual(['differs', true]);
    expect(await jobsThere()).toBe(0);
  });

  test('a move is given up when one side has a table the other has not', async () => {
    await fill();
    const raw = new Database(join(dataDir, FILE_NAME));
    raw.exec('CREATE TABLE shelf (name TEXT)');
    raw.close();
    expect((await failure()).message).toBe('Only one of the two databases has shelf. Nothing was moved.');
    expect(await jobsThere()).toBe(0);
  });

  test('a move is given up when somebody goes on writing', async () => {
    await fill();
    const shop = openShop({ dataDir });
    let going = true;
    const writing = (async () => {
      while (going) {
        await createJob(shop.db, as('AB'), { received: received() });
        await new Promise((done) => setTimeout(done, 1));
      }
    })();
    expect((await failure()).code).toBe('busy');
    going = false;
    await writing;
    await shop.close();
    expect(await jobsThere()).toBe(0);
  });

  test('a move of nothing, of an earlier version or of another program is refused', async () => {
    const file = join(dataDir, FILE_NAME);
    expect((await failure()).code).toBe('no-shop');
    expect(existsSync(file)).toBe(false);
    await fill();
    copyFileSync(file, `${file}.kept`);
    const raw = new Database(file);
    raw.exec('DELETE FROM schema_migration WHERE number = (SELECT max(number) FROM schema_migration)');
    raw.close();
    expect((await failure()).code).toBe('older');
    const other = new Database(file);
    other.pragma('application_id = 7');
    other.close();
    expect((await failure()).code).toBe('not-ours');
    writeFileSync(file, readFileSync(`${file}.kept`));
    expect((await moveShop({ dataDir, url: place.url, now })).length).toBeGreaterThan(4);
  });
});
