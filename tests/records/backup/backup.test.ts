import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Stopped } from '../../../src/progress.ts';
import { backUp, backUpBeforeUpgrade, inWords } from '../../../src/records/backup/backup.ts';
import { readManifest } from '../../../src/records/backup/manifest.ts';
import { FILE_NAME, openShop, type Shop } from '../../../src/records/database/database.ts';
import { BackupFailed } from '../../../src/records/database/errors.ts';
import { MIGRATIONS, migrate } from '../../../src/records/database/migrate.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { fileOf, hashOf } from '../../../src/records/photos/files.ts';
import { photograph } from '../photos/photograph.ts';
import { jpeg } from '../photos/pictures.ts';
import { errorOf, stoppedAt } from '../refusals.ts';
import { as, received, signedJob, wall } from '../samples.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');
let dataDir: string;
let shop: Shop;
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  shop = openShop({ dataDir });
});
afterEach(async () => {
  await shop.close();
  rmSync(dataDir, { recursive: true });
});

const failure = async (options: Parameters<typeof backUp>[0]) => {
  const error = await errorOf(backUp(options));
  if (!(error instanceof BackupFailed)) throw error;
  return error;
};

describe('a backup', () => {
  test('a backup that is stopped leaves nothing behind, wherever it was', async () => {
    await photograph(shop, (await signedJob(shop.db)).id, await jpeg());
    const parts: string[] = [];
    await backUp({ dataDir, now, step: (what) => parts.push(what), folder: join(dataDir, 'whole') });
    expect(parts).toContain('Copying photos');
    for (const part of parts) {
      expect(await errorOf(backUp({ dataDir, now, step: stoppedAt(part) }))).toBeInstanceOf(Stopped);
      expect(readdirSync(join(dataDir, 'backups'))).toEqual([]);
    }
  });

  test('a backup is a folder named by its time, for its owner alone, that lists its content and opens as the same shop', async () => {
    const job = await signedJob(shop.db);
    const made = await backUp({ dataDir, now });
    const folder = join(dataDir, 'backups', 'coverwright-20260302-170405');
    expect(made.folder).toBe(folder);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(readdirSync(join(dataDir, 'backups'))).toEqual(['coverwright-20260302-170405']);
    expect(readdirSync(folder).sort()).toEqual([FILE_NAME, 'manifest.json']);
    const copy = join(folder, FILE_NAME);
    expect(made.manifest).toMatchObject({
      at: '2026-03-02T17:04:05.678Z',
      reason: 'asked',
      counts: { job: 1, job_revision: 8, reading: 3, photo: 0, files: 0 },
      missing: [],
      files: [{ path: FILE_NAME, bytes: statSync(copy).size, sha256: await hashOf(copy) }],
    });
    expect(await readManifest(folder)).toEqual(made.manifest);

    // Its header says that no log belongs to it, so that it can be read from a disk nobody may write to.
    expect([...readFileSync(copy).subarray(18, 20)]).toEqual([1, 1]);

    const elsewhere = join(dataDir, 'restored');
    mkdirSync(elsewhere);
    writeFileSync(join(elsewhere, FILE_NAME), readFileSync(copy));
    const restored = openShop({ dataDir: elsewhere });
    expect(await getJob(restored.db, job.number)).toEqual(job);
    await restored.close();
  });

  test('a backup never replaces another', async () => {
    await backUp({ dataDir, now });
    const first = readFileSync(join(dataDir, 'backups', 'coverwright-20260302-170405', FILE_NAME));
    await signedJob(shop.db);
    const both = await Promise.all([backUp({ dataDir, now }), backUp({ dataDir, now })]);
    expect(both.map((b) => b.folder.slice(-2)).sort()).toEqual(['-2', '-3']);
    expect(
      readFileSync(join(dataDir, 'backups', 'coverwright-20260302-170405', FILE_NAME)).equals(first),
    ).toBe(true);
  });

  test('a backup made while somebody writes holds everything written before it began', async () => {
    const { id: jobId } = await createJob(shop.db, as('AB'), { received: received() });
    let sent = 0;
    let going = true;
    const writing = (async () => {
      while (going) {
        await addReadings(shop.db, as('AB'), { jobId, readings: [wall(`r${sent++}`)] });
        await new Promise((done) => setImmediate(done));
      }
    })();
    while (sent < 5) await new Promise((done) => setImmediate(done));
    const atLeast = sent - 1;
    const { folder } = await backUp({ dataDir, now });
    const atMost = sent;
    going = false;
    await writing;
    const copy = new Database(join(folder, FILE_NAME), { readonly: true });
    const readings = Number(copy.prepare('SELECT count(*) FROM reading').pluck().get());
    const revision = copy.prepare('SELECT revision FROM job').pluck().get();
    copy.close();
    expect(readings).toBeGreaterThanOrEqual(atLeast);
    expect(readings).toBeLessThanOrEqual(atMost);
    expect(revision).toBe(1 + readings);
  });

  test('a backup goes to the folder given, which is made', async () => {
    const folder = join(dataDir, 'stick', 'shop');
    expect((await backUp({ dataDir, folder, now })).folder).toBe(join(folder, 'coverwright-20260302-170405'));
  });
});

describe('the photos in a backup', () => {
  const at = (day: number) => () => new Date(Date.UTC(2026, 2, day));
  async function photographed(width: number): Promise<string> {
    const job = await signedJob(shop.db);
    return photograph(shop, job.id, await jpeg(width, 20));
  }

  test('the photos are in a backup by their content, and shared with an earlier backup that has them', async () => {
    const first = await photographed(31);
    const one = await backUp({ dataDir, now: at(1) });
    const second = await photographed(32);
    const two = await backUp({ dataDir, now: at(2) });
    expect(two.manifest.counts).toMatchObject({ photo: 2, files: 2 });
    expect(two.manifest.files.map((file) => file.path)).toEqual([
      FILE_NAME,
      ...[fileOf(first), fileOf(second)].sort(),
    ]);
    for (const hash of [first, second]) expect(await hashOf(join(two.folder, fileOf(hash)))).toBe(hash);
    const inode = (folder: string) => statSync(join(folder, fileOf(first))).ino;
    expect(inode(two.folder)).toBe(inode(one.folder));
    expect(inode(two.folder)).not.toBe(inode(dataDir));
  });

  test('a photo damaged in the shop comes from an earlier backup, and is listed as missing where there is none', async () => {
    const first = await photographed(31);
    await backUp({ dataDir, now: at(1) });
    const second = await photographed(32);
    for (const hash of [first, second]) writeFileSync(join(dataDir, fileOf(hash)), 'damaged');
    const two = await backUp({ dataDir, now: at(2) });
    expect(two.manifest.missing).toEqual([second]);
    expect(await hashOf(join(two.folder, fileOf(first)))).toBe(first);
    expect(existsSync(join(two.folder, fileOf(second)))).toBe(false);
    expect(inWords(two)).toContain('1 photo, 1 photo missing or damaged on the disk');
  });
});

describe('before an upgrade', () => {
  test('a backup before an upgrade is made of records of an earlier version, and of no others', async () => {
    await shop.close();
    const older = join(dataDir, 'older');
    mkdirSync(older);
    expect(await backUpBeforeUpgrade({ dataDir: older, databaseUrl: null, now })).toBeNull();
    const raw = new Database(join(older, FILE_NAME));
    migrate(raw, now, MIGRATIONS.slice(0, 1));
    raw.close();
    const made = await backUpBeforeUpgrade({ dataDir: older, databaseUrl: null, now });
    expect(made?.manifest.reason).toBe('before-upgrade');
    const copy = new Database(join(made!.folder, FILE_NAME), { readonly: true });
    expect(copy.prepare('SELECT max(number) FROM schema_migration').pluck().get()).toBe(1);
    copy.close();
    await openShop({ dataDir: older }).close();
    expect(await backUpBeforeUpgrade({ dataDir: older, databaseUrl: null, now })).toBeNull();
    shop = openShop({ dataDir });
  });
});

describe('no backup is made', () => {
  test('a backup is refused where there are no records', async () => {
    const nowhere = join(dataDir, 'nowhere');
    const failed = await failure({ dataDir: nowhere, now });
    expect([failed.code, failed.message]).toEqual([
      'no-shop',
      `There is no shop to back up: ${join(nowhere, FILE_NAME)} does not exist. Check DATA_DIR.`,
    ]);
    expect(existsSync(nowhere)).toBe(false);
  });

  test.each([
    [
      'of a file that is no database',
      'not-sound',
      (file: string) => writeFileSync(file, 'Dear reader. '.repeat(900)),
    ],
    [
      'of another program',
      'not-ours',
      (file: string) => new Database(file).exec('CREATE TABLE recipe (name TEXT)').close(),
    ],
  ])('a backup %s is refused', async (_, code, make) => {
    const other = join(dataDir, 'other');
    mkdirSync(other);
    make(join(other, FILE_NAME));
    expect((await failure({ dataDir: other, now })).code).toBe(code);
    expect(existsSync(join(other, 'backups'))).toBe(false);
  });

  test('a backup of damaged records is thrown away, and the error says so', async () => {
    for (let i = 0; i < 12; i++)
      await createJob(shop.db, as('AB'), { received: received({ note: 'x'.repeat(3000) }) });
    await shop.close();
    const file = join(dataDir, FILE_NAME);
    const bytes = readFileSync(file);
    writeFileSync(file, bytes.fill(0xa5, 20 * 4096, 21 * 4096));
    const failed = await failure({ dataDir, now });
    expect(failed.code).toBe('not-sound');
    expect(failed.message).toMatch(
      /^The copy failed its check \(.+\) and was deleted\. The shop's own data may be damaged\. Keep your earlier backups\.$/,
    );
    expect(readdirSync(join(dataDir, 'backups'))).toEqual([]);
  });

  test('a backup into a folder that cannot be made is refused', async () => {
    writeFileSync(join(dataDir, 'stick'), 'a file');
    const failed = await failure({ dataDir, folder: join(dataDir, 'stick', 'shop'), now });
    expect(failed.code).toBe('not-written');
    expect(failed.message).toContain(join(dataDir, 'stick', 'shop'));
  });
});
