import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Stopped } from '../../../src/progress.ts';
import { backUp } from '../../../src/records/backup/backup.ts';
import { MANIFEST, writeManifest } from '../../../src/records/backup/manifest.ts';
import { restore } from '../../../src/records/backup/restore.ts';
import { getEntry } from '../../../src/records/catalogue.ts';
import { FILE_NAME, openShop, type Shop } from '../../../src/records/database/database.ts';
import { RestoreFailed, ShopWillNotOpen } from '../../../src/records/database/errors.ts';
import { holdAlone, holdShop, UNDER_WAY } from '../../../src/records/database/restoreGuard.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { fileOf, hashOf } from '../../../src/records/photos/files.ts';
import { photosOf } from '../../../src/records/photos/photos.ts';
import { getSlip, printedSlip, saveSlip } from '../../../src/records/slips/slips.ts';
import { countBack, countOut, countsOf } from '../../../src/records/slips/stock.ts';
import { photograph } from '../photos/photograph.ts';
import { jpeg } from '../photos/pictures.ts';
import { errorOf, stoppedAt } from '../refusals.ts';
import { as, signedJob } from '../samples.ts';
import { NUT_ID, newSlip, print, STUD_ID, stockShelf } from '../slips/slipSamples.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');
let dataDir: string;
let shop: Shop;
let backup: string;
let hash: string;
beforeEach(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  shop = openShop({ dataDir });
  hash = await photograph(shop, (await signedJob(shop.db)).id, await jpeg());
  backup = (await backUp({ dataDir, now })).folder;
  await signedJob(shop.db);
  await shop.close();
});
afterEach(async () => {
  await shop.close();
  rmSync(dataDir, { recursive: true });
});

const jobsIn = async (folder: string) => {
  const opened = openShop({ dataDir: folder });
  const rows = await opened.db.selectFrom('job').select('number').orderBy('id').execute();
  await opened.close();
  return rows.map((row) => row.number);
};
const bytesOf = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && one.name !== 'in-use.lock')
    .map((one) => join(one.parentPath, one.name))
    .sort()
    .map((path) => [path, readFileSync(path).toString('base64')]);

describe('a restore', () => {
  test('a restore puts the backup in place, moves the old records aside, and is undone by the same command', async () => {
    expect(await jobsIn(dataDir)).toEqual(['1001', '1002']);
    const done = await restore({ dataDir, folder: backup, now });
    expect(done).toMatchObject({ aside: join(dataDir, 'replaced-20260302-170405'), undoable: true });
    expect(await jobsIn(dataDir)).toEqual(['1001']);
    expect(await hashOf(join(dataDir, fileOf(hash)))).toBe(hash);
    expect(existsSync(join(dataDir, UNDER_WAY))).toBe(false);
    expect(readdirSync(dataDir).filter((name) => name.startsWith('restoring-'))).toEqual([]);
    const opened = openShop({ dataDir });
    const job = await getJob(opened.db, '1001');
    expect((await photosOf(opened.db, job!.id, 99)).map((photo) => photo.hash)).toEqual([hash]);
    await opened.close();

    const undone = await restore({
      dataDir,
      folder: done.aside!,
      now: () => new Date('2026-03-03T00:00:00Z'),
    });
    expect(undone.undoable).toBe(true);
    expect(await jobsIn(dataDir)).toEqual(['1001', '1002']);
    expect(await hashOf(join(dataDir, fileOf(hash)))).toBe(hash);
  });

  test('a restore that is stopped leaves the shop as it was, wherever it was', async () => {
    const before = bytesOf(dataDir);
    const parts = ['Checking files', 'Copying files', 'Comparing the copy', 'Opening the copy once'];
    for (const part of parts) {
      const stopped = restore({ dataDir, folder: backup, now, step: stoppedAt(part) });
      expect(await errorOf(stopped)).toBeInstanceOf(Stopped);
      expect(bytesOf(dataDir)).toEqual(before);
    }
  });

  test('a restore brings back counter slips, what was counted out, and nuts with their stock', async () => {
    shop = openShop({ dataDir });
    await stockShelf(shop.db, 10, 6);
    await saveSlip(shop.db, as('BB'), newSlip(), print);
    await countOut(shop.db, as('BB'), { number: 1 });
    const stands = async (of: Shop) => [
      await getSlip(of.db, 1),
      await printedSlip(of.db, 1),
      await countsOf(of.db, 1),
      (await getEntry(of.db, 'nut', NUT_ID))!.body,
      (await getEntry(of.db, 'stud', STUD_ID))!.body.stock,
    ];
    const before = await stands(shop);
    const { folder } = await backUp({ dataDir, now: () => new Date('2026-03-02T18:00:00Z') });
    await countBack(shop.db, as('BB'), { number: 1, why: 'not fetched' });
    await shop.close();
    await restore({ dataDir, folder, now });
    shop = openShop({ dataDir });
    expect(await stands(shop)).toEqual(before);
    expect(before.slice(3)).toMatchObject([{ stock: 2 }, 6]);
  });

  test('a restore takes the name of a backup of the shop, and works where there was no shop', async () => {
    expect((await restore({ dataDir, folder: 'coverwright-20260302-170405', now })).undoable).toBe(true);
    const machine = join(dataDir, 'another-machine');
    expect(await restore({ dataDir: machine, folder: backup, now })).toMatchObject({ aside: null });
    expect(await jobsIn(machine)).toEqual(['1001']);
    expect(await hashOf(join(machine, fileOf(hash)))).toBe(hash);
  });

  test('a restore over damaged records keeps those as they are', async () => {
    writeFileSync(join(dataDir, FILE_NAME), 'Dear reader. '.repeat(900));
    const done = await restore({ dataDir, folder: backup, now });
    expect(done.undoable).toBe(false);
    expect(readFileSync(join(done.aside!, FILE_NAME), 'utf8')).toBe('Dear reader. '.repeat(900));
    expect(await jobsIn(dataDir)).toEqual(['1001']);
  });

  test('a restore leaves the backup as it was', async () => {
    const before = bytesOf(backup);
    await restore({ dataDir, folder: backup, now });
    expect(bytesOf(backup)).toEqual(before);
  });
});

describe('nothing is restored, and nothing moves', () => {
  const refused = async (folder = backup) => {
    const before = bytesOf(dataDir);
    const error = await errorOf(restore({ dataDir, folder, now }));
    expect(bytesOf(dataDir)).toEqual(before);
    if (!(error instanceof RestoreFailed)) throw error;
    return [error.code, error.message];
  };
  /** Changes the copied database and makes its manifest fit again, as another program would have. */
  async function changed(change: (raw: Database.Database) => void): Promise<void> {
    const raw = new Database(join(backup, FILE_NAME));
    change(raw);
    raw.close();
    rmSync(join(backup, MANIFEST));
    const counts = { job: 1 };
    await writeManifest(backup, { at: now().toISOString(), reason: 'asked', counts, missing: [] });
  }

  test('a restore from a folder that is no backup is refused', async () => {
    expect(await refused(join(dataDir, 'nowhere'))).toEqual([
      'no-backup',
      expect.stringContaining('There is no file or folder'),
    ]);
    expect(await refused(join(dataDir, 'files'))).toEqual([
      'no-backup',
      expect.stringContaining('manifest.json is missing. Name a backup'),
    ]);
  });

  test('a restore from a backup with a foreign manifest is refused', async () => {
    writeFileSync(join(backup, MANIFEST), '{"what":"recipes"}');
    expect((await refused())[0]).toBe('not-ours');
  });

  test('a restore from a backup whose manifest names files outside it is refused', async () => {
    const text = readFileSync(join(backup, MANIFEST), 'utf8');
    writeFileSync(join(backup, MANIFEST), text.replace('"coverwright.sqlite"', '"../../../etc/passwd"'));
    expect((await refused())[0]).toBe('not-ours');
  });

  test.each([
    ['a changed byte in the records', () => flip(join(backup, FILE_NAME), 5000)],
    ['a changed byte in a photo', () => flip(join(backup, fileOf(hash)), 100)],
    ['a photo too few', () => rmSync(join(backup, fileOf(hash)))],
    ['no records', () => rmSync(join(backup, FILE_NAME))],
  ])('a restore from a backup with %s is refused', async (_, damage) => {
    damage();
    expect(await refused()).toEqual([
      'broken',
      expect.stringMatching(/^The backup in .+ is damaged \(.+\)\. Use another/),
    ]);
  });

  test('a restore from a backup whose rows refer to nothing is refused', async () => {
    await changed((raw) => {
      raw.pragma('foreign_keys = OFF');
      raw.exec(
        "INSERT INTO photo SELECT 'x', 77, 1, spot, angle_deg, radius_mm, item, hash, kind, bytes, width, height, note, who, at FROM photo",
      );
    });
    expect(await refused()).toEqual(['broken', expect.stringContaining('broken references')]);
  });

  test('a restore from a backup of a newer program is refused', async () => {
    await changed((raw) =>
      raw.exec("INSERT INTO schema_migration VALUES (99, 'later', '2027-01-01T00:00:00Z')"),
    );
    expect(await refused()).toEqual(['newer', expect.stringContaining('newer Coverwright')]);
  });

  test('a restore from a backup of another program is refused', async () => {
    await changed((raw) => raw.pragma('application_id = 7'));
    expect((await refused())[0]).toBe('not-ours');
  });

  test('a restore while the program runs is refused', async () => {
    const held = holdShop(dataDir);
    const another = holdShop(dataDir);
    held.release();
    expect(await refused()).toEqual([
      'in-use',
      `The program is running on ${dataDir}. Stop it, then restore. Nothing was changed.`,
    ]);
    another.release();
    expect((await restore({ dataDir, folder: backup, now })).undoable).toBe(true);
  });

  test('a restore while anybody has the records open is refused', async () => {
    const opened = openShop({ dataDir });
    const error = await errorOf(restore({ dataDir, folder: backup, now }));
    expect(error).toMatchObject({ code: 'in-use' });
    expect(await opened.db.selectFrom('job').select('number').execute()).toHaveLength(2);
    await opened.close();
    expect(await jobsIn(dataDir)).toEqual(['1001', '1002']);
  });
});

function flip(path: string, at: number): void {
  const bytes = readFileSync(path);
  bytes[at] = bytes[at]! ^ 0xff;
  rmSync(path);
  writeFileSync(path, bytes);
}

describe('the program does not start', () => {
  test('the program does not start while a restore is under way', () => {
    const alone = holdAlone(dataDir);
    expect(() => holdShop(dataDir)).toThrow(ShopWillNotOpen);
    alone.release();
    holdShop(dataDir).release();
  });

  test('the program does not start after an unfinished restore, until it is run again', async () => {
    const aside = join(dataDir, 'replaced-before');
    writeFileSync(join(dataDir, UNDER_WAY), JSON.stringify({ aside, from: backup }));
    expect(() => holdShop(dataDir)).toThrow(
      `npm run restore -- ${backup}. The shop as it was before is in ${aside}.`,
    );
    await restore({ dataDir, folder: backup, now });
    holdShop(dataDir).release();
  });
});

test('a backup copied to a stick and back can still be restored', async () => {
  const stick = join(dataDir, 'stick');
  cpSync(backup, stick, { recursive: true });
  expect((await restore({ dataDir, folder: stick, now })).undoable).toBe(true);
});
