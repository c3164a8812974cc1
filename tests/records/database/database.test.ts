import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FILE_NAME, openShop, openShopInMemory, write } from '../../../src/records/database/database.ts';
import { RecordsUnavailable, ShopWillNotOpen } from '../../../src/records/database/errors.ts';
import { MIGRATIONS, migrate } from '../../../src/records/database/migrate.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { errorOf } from '../refusals.ts';
import { as, received } from '../samples.ts';

let folder: string;
let dataDir: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  dataDir = join(folder, 'inner', 'shop');
  file = join(dataDir, FILE_NAME);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function shopWithJobs(count = 1): Promise<void> {
  const shop = openShop({ dataDir });
  for (let i = 0; i < count; i++) {
    await createJob(shop.db, as('AB'), { received: received({ note: 'x'.repeat(2000) }) });
  }
  await shop.close();
}

async function refusedToOpen(): Promise<ShopWillNotOpen> {
  const error = await errorOf(() => openShop({ dataDir }));
  if (!(error instanceof ShopWillNotOpen)) throw error;
  return error;
}

describe('opening', () => {
  test('opening makes the folder for its owner alone, and the file in it', async () => {
    await openShop({ dataDir }).close();
    expect(statSync(dataDir).mode & 0o777).toBe(0o700);
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  test('what was written is there when the shop is opened again', async () => {
    await shopWithJobs();
    const shop = openShop({ dataDir });
    expect((await getJob(shop.db, '1001'))?.sections.received?.body.customerReference).toBe('van, blue');
    await shop.close();
  });

  test('an open shop writes through to the disk, checks references, and fires triggers on replacement too', async () => {
    const shop = openShop({ dataDir });
    const pragma = async (name: string) =>
      Object.values(
        (await sql.raw<Record<string, unknown>>(`PRAGMA ${name}`).execute(shop.db)).rows[0] ?? {},
      )[0];
    const found = [];
    for (const name of [
      'journal_mode',
      'synchronous',
      'foreign_keys',
      'busy_timeout',
      'recursive_triggers',
    ]) {
      found.push(await pragma(name));
    }
    // No waiting for a lock on the thread that serves.
    expect(found).toEqual(['wal', 2, 1, 0, 1]);
    await shop.close();
  });

  test('all tables are strict', () => {
    const raw = new Database(':memory:');
    migrate(raw, () => new Date(0));
    // An index of words, and the tables it keeps itself in, cannot be.
    const lax = raw
      .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0")
      .all();
    expect(lax).toEqual([{ name: 'sqlite_schema' }]);
    raw.close();
  });
});

describe('a database that is not opened', () => {
  test('a database of a newer program is left as it is', async () => {
    await shopWithJobs();
    const raw = new Database(file);
    raw.prepare('INSERT INTO schema_migration VALUES (?, ?, ?)').run(99, 'later', '2027-01-01T00:00:00.000Z');
    raw.close();
    const before = readFileSync(file);
    const refused = await refusedToOpen();
    expect([refused.code, refused.message]).toEqual([
      'newer',
      `This shop was last opened by a newer Coverwright (version 99; this is ${MIGRATIONS.length}). Start the newer one. Nothing was changed.`,
    ]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('a database of a newer program that was not closed is left as it is, its log too', async () => {
    const shop = openShop({ dataDir });
    await createJob(shop.db, as('AB'), { received: received() });
    await sql`insert into schema_migration values (99, 'later', '2027-01-01T00:00:00.000Z')`.execute(shop.db);
    const killed = join(folder, 'killed');
    mkdirSync(killed);
    const ends = ['', '-wal'];
    for (const end of ends) copyFileSync(file + end, join(killed, FILE_NAME + end));
    await shop.close();
    const bytes = () => ends.map((end) => readFileSync(join(killed, FILE_NAME + end)).toString('base64'));
    const before = bytes();
    expect(await errorOf(() => openShop({ dataDir: killed }))).toMatchObject({ code: 'newer' });
    expect(bytes()).toEqual(before);
  });

  test('a database with an unknown migration is left as it is', async () => {
    await shopWithJobs();
    const raw = new Database(file);
    raw.prepare("UPDATE schema_migration SET name = 'elsewhere' WHERE number = 1").run();
    raw.close();
    const before = readFileSync(file);
    expect((await refusedToOpen()).code).toBe('not-ours');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('a database of another program is left as it is', async () => {
    mkdirSync(dataDir, { recursive: true });
    const raw = new Database(file);
    raw.exec('CREATE TABLE recipe (name TEXT)');
    raw.close();
    const before = readFileSync(file);
    const refused = await refusedToOpen();
    expect([refused.code, refused.message]).toEqual([
      'not-ours',
      `${file} belongs to another program. Set DATA_DIR to another folder. Nothing was changed.`,
    ]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('a file that is no database is left as it is', async () => {
    mkdirSync(dataDir, { recursive: true });
    writeFileSync(file, 'Dear reader, this was a letter. '.repeat(200));
    const before = readFileSync(file);
    const refused = await refusedToOpen();
    expect([refused.code, refused.message]).toEqual([
      'damaged',
      `${file} is damaged or not a database. Leave it and the files beside it as they are, and restore the newest backup into another folder. Nothing was changed.`,
    ]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test.each([
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length - 8192)],
    ['with a page of rubbish in its middle', (bytes: Buffer) => bytes.fill(0xa5, 16 * 4096, 17 * 4096)],
    ['with a few bytes changed in its header', (bytes: Buffer) => bytes.fill(0x00, 0, 16)],
  ])('a database %s is left as it is', async (_, damage) => {
    await shopWithJobs(30);
    writeFileSync(file, damage(readFileSync(file)));
    const before = readFileSync(file);
    expect((await refusedToOpen()).code).toBe('damaged');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test.each([
    ['missing', () => rmSync(file)],
    ['empty', () => writeFileSync(file, '')],
  ])('a log is kept when the file it belongs to is %s', async (_, lose) => {
    mkdirSync(dataDir, { recursive: true });
    writeFileSync(file, '');
    writeFileSync(`${file}-wal`, 'a morning of work');
    lose();
    expect((await refusedToOpen()).code).toBe('parted');
    expect(readFileSync(`${file}-wal`, 'utf8')).toBe('a morning of work');
  });

  test('a folder that cannot be made is refused with what to do', async () => {
    writeFileSync(join(folder, 'inner'), 'a file where a folder should be');
    const refused = await refusedToOpen();
    expect(refused.code).toBe('not-writable');
    expect(refused.message).toMatch(
      /^Nothing can be saved in .*coverwright\.sqlite \(.+\)\. Allow this account to write there and free some disk space, or set DATA_DIR to another folder\.$/,
    );
  });

  test('a folder where the file should be is refused', async () => {
    mkdirSync(join(file, 'within'), { recursive: true });
    expect((await refusedToOpen()).code).toBe('not-writable');
    chmodSync(file, 0o700);
  });

  test('an empty file without a log is a new shop', async () => {
    mkdirSync(dataDir, { recursive: true });
    writeFileSync(file, '');
    await openShop({ dataDir }).close();
    expect(existsSync(file)).toBe(true);
  });
});

describe('migrations', () => {
  const next = MIGRATIONS.length + 1;
  const released = MIGRATIONS.map((migration) => migration.number);
  const half = {
    number: next,
    name: 'half',
    postgres: '',
    sqlite: 'CREATE TABLE shelf (name TEXT) STRICT; INSERT INTO shelf VALUES (1, 2);',
  };
  const whole = {
    number: next,
    name: 'whole',
    postgres: '',
    sqlite: "CREATE TABLE shelf (name TEXT) STRICT; INSERT INTO shelf VALUES ('a');",
  };
  const tables = (raw: Database.Database) =>
    raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name = 'shelf'").all();
  const numbers = (raw: Database.Database) =>
    raw.prepare('SELECT number FROM schema_migration ORDER BY number').pluck().all();

  test('a migration that fails half way leaves nothing of itself, and earlier ones stay', async () => {
    const raw = new Database(':memory:');
    const error = await errorOf(() => migrate(raw, () => new Date(0), [...MIGRATIONS, half]));
    expect(error).toMatchObject({ message: 'table shelf has 1 columns but 2 values were supplied' });
    expect([tables(raw), numbers(raw), raw.inTransaction]).toEqual([[], released, false]);
    migrate(raw, () => new Date(0), [...MIGRATIONS, whole]);
    expect([tables(raw), numbers(raw)]).toEqual([[{ name: 'shelf' }], [...released, next]]);
    raw.close();
  });

  test('each migration is applied once', () => {
    const raw = new Database(':memory:');
    for (let i = 0; i < 3; i++) migrate(raw, () => new Date(0), [...MIGRATIONS, whole]);
    expect(raw.prepare('SELECT count(*) FROM shelf').pluck().get()).toBe(1);
    raw.close();
  });

  test('a migration that leaves a reference to nothing is not kept', async () => {
    const raw = new Database(':memory:');
    const loose = {
      number: next,
      name: 'loose',
      postgres: '',
      sqlite:
        "INSERT INTO job_revision VALUES (7, 1, '2026-01-01T00:00:00.000Z', 'AB', '', 'received', '{}')",
    };
    const error = await errorOf(() => migrate(raw, () => new Date(0), [...MIGRATIONS, loose]));
    expect(error).toMatchObject({ message: `Migration ${next} leaves rows that refer to nothing.` });
    expect(raw.prepare('SELECT count(*) FROM job_revision').pluck().get()).toBe(0);
    raw.close();
  });
});

describe('writing', () => {
  test('a write is all or nothing', async () => {
    const shop = openShopInMemory();
    const boom = new Error('the lamp went out');
    const failed = write(shop.db, async (trx) => {
      await createJob(trx, as('AB'), { number: 'J-1', received: received() });
      throw boom;
    });
    expect(await errorOf(failed)).toBe(boom);
    expect(await getJob(shop.db, 'J-1')).toBeNull();
    await shop.close();
  });

  test('a transaction that the database rolled back says why', async () => {
    const shop = openShopInMemory();
    await sql`create temp trigger gone before insert on job begin select raise(rollback, 'taken back'); end`.execute(
      shop.db,
    );
    const failed = createJob(shop.db, as('AB'), { received: received() });
    expect(await errorOf(failed)).toMatchObject({ message: 'taken back' });
    await sql`drop trigger gone`.execute(shop.db);
    expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    await shop.close();
  });

  test('two shops open on one file take turns, and neither loses anything', async () => {
    const shops = [openShop({ dataDir }), openShop({ dataDir })];
    const made = await Promise.all(
      Array.from({ length: 20 }, (_, i) => createJob(shops[i % 2]!.db, as('AB'), { received: received() })),
    );
    expect(new Set(made.map((job) => job.number)).size).toBe(20);
    for (const shop of shops) await shop.close();
  });

  test('a writer that waits too long is told so in a sentence, and nothing is kept', async () => {
    const shop = openShop({ dataDir, patienceMs: 30 });
    const other = new Database(file);
    other.exec('BEGIN IMMEDIATE');
    const error = await errorOf(createJob(shop.db, as('AB'), { received: received() }));
    expect(error).toBeInstanceOf(RecordsUnavailable);
    expect(error).toMatchObject({
      code: 'busy',
      message: 'The shop is busy saving something else. This was not saved; try again.',
    });
    other.exec('ROLLBACK');
    other.close();
    expect((await createJob(shop.db, as('AB'), { received: received() })).number).toBe('1001');
    await shop.close();
  });

  test('a full disk is told so in a sentence, and the records stay usable', async () => {
    const shop = openShop({ dataDir });
    const pages = Number(
      (await sql<{ page_count: number }>`PRAGMA page_count`.execute(shop.db)).rows[0]?.page_count,
    );
    await sql.raw(`PRAGMA max_page_count = ${pages}`).execute(shop.db);
    const error = await errorOf(
      createJob(shop.db, as('AB'), { number: 'J-1', received: received({ note: 'x'.repeat(50_000) }) }),
    );
    expect(error).toBeInstanceOf(RecordsUnavailable);
    expect(error).toMatchObject({ code: 'full' });
    expect(await getJob(shop.db, 'J-1')).toBeNull();
    await sql.raw('PRAGMA max_page_count = 100000').execute(shop.db);
    expect((await createJob(shop.db, as('AB'), { number: 'J-1', received: received() })).number).toBe('J-1');
    await shop.close();
  });
});
