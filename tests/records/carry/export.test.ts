import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { seedDemo } from '../../../data/demo/seed.ts';
import { Stopped } from '../../../src/progress.ts';
import { exportShop } from '../../../src/records/carry/export.ts';
import { EXPORTED_TABLES, STAYS } from '../../../src/records/carry/exportTables.ts';
import { importShop } from '../../../src/records/carry/import.ts';
import { addEntry } from '../../../src/records/catalogue.ts';
import type { Shop } from '../../../src/records/database/database.ts';
import { ExportFailed, ImportFailed } from '../../../src/records/database/errors.ts';
import { addMasterCheck, withdrawMasterCheck } from '../../../src/records/gauges/masterChecks.ts';
import {
  addStudyReading,
  startStudy,
  stopStudy,
  withdrawStudyReading,
} from '../../../src/records/gauges/studies.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { reviseJob } from '../../../src/records/jobs/reviseJob.ts';
import { addPerson } from '../../../src/records/people/people.ts';
import { fileOf, hashOf } from '../../../src/records/photos/files.ts';
import { saveSlip } from '../../../src/records/slips/slips.ts';
import { countOut } from '../../../src/records/slips/stock.ts';
import { printsFor } from '../../../src/web/job/papers.ts';
import { gauge, newCheck, newStudy, newStudyReading } from '../gauges/gaugeSamples.ts';
import { photograph } from '../photos/photograph.ts';
import { jpeg, png } from '../photos/pictures.ts';
import { errorOf, stoppedAt } from '../refusals.ts';
import { alder, as, received, setup, signedJob, wall } from '../samples.ts';
import { onEachDatabase } from '../shops.ts';
import { newSlip, print, stockShelf } from '../slips/slipSamples.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');
onEachDatabase((engine) => {
  let dataDir: string;
  let out: string;
  let shop: Shop;
  let copy: Shop;
  const shops: Shop[] = [];
  const open = async (folder: string) => {
    const opened = await engine.openEmpty({ dataDir: folder });
    shops.push(opened);
    return opened;
  };
  beforeEach(async () => {
    dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
    out = join(dataDir, 'out');
    shop = await open(join(dataDir, 'one'));
    copy = await open(join(dataDir, 'two'));
  });
  afterEach(async () => {
    for (const one of shops.splice(0)) await one.close();
    rmSync(dataDir, { recursive: true });
  });

  const PASSWORD = { hash: '$argon2id$a-secret', start: true };
  const NASTY = '=HYPERLINK("http://shop.example";"x") \u2028 "quoted", comma\r\nsecond line ✓ 😀';

  /** A shop with a bit of everything, and what breaks tables. */
  async function fill(): Promise<string[]> {
    const job = await signedJob(shop.db);
    await createJob(shop.db, as('AB'), {
      sentId: 'sent-by-a-script-1',
      received: received({ customerReference: NASTY, note: `\t${NASTY}` }),
    });
    await addEntry(shop.db, as('AB'), {
      kind: 'family',
      body: { ...alder, name: '@SUM(1+1)', note: NASTY },
      typed: { nominalWallMm: { text: '3/16', bareUnit: 'in' } },
    });
    await reviseJob(shop.db, as('AB', '+44 called back'), {
      jobId: job.id,
      fromRevision: job.revision,
      what: 'setup',
      body: { ...setup, residualRunoutMm: 0.1 + 0.2 },
    });
    await addReadings(shop.db, as('AB', 'again'), {
      jobId: job.id,
      readings: [wall('low', { kind: 'face', valueMm: -0.05, typed: '-0.05' })],
    });
    await stockShelf(shop.db, 10);
    const { number } = await saveSlip(
      shop.db,
      as('AB'),
      newSlip({ customerReference: NASTY.slice(0, 30) }),
      (slip) => ({
        ...print(slip),
        parts: [],
      }),
    );
    await countOut(shop.db, as('AB'), { number });
    await createJob(shop.db, as('AB'), { received: received(), slip: number });
    await addEntry(shop.db, as('AB'), { kind: 'gauge', id: 'm1', body: gauge });
    await addMasterCheck(shop.db, as('AB'), newCheck({ readingMm: 0.1 + 0.2 }));
    await withdrawMasterCheck(shop.db, as('AB'), { gaugeId: 'm1', id: newCheck().id, why: 'wrong' });
    const study = await startStudy(shop.db, as('AB'), newStudy());
    await addStudyReading(shop.db, as('AA'), study, newStudyReading({ valueMm: 0.1 + 0.2 }));
    await withdrawStudyReading(shop.db, as('AA'), study, { id: newStudyReading().id, why: 'slipped' });
    await stopStudy(shop.db, as('AB'), study, 'enough');
    await addPerson(shop.db, as('AB'), { name: 'A. Keeper', initials: 'AK', role: 'keeper' }, PASSWORD);
    return [
      await photograph(shop, job.id, await jpeg()),
      await photograph(shop, job.id, await png(), { spot: 'station', angleDeg: 1 / 3, radiusMm: 110.1 }),
    ];
  }

  async function everyRow(of: Shop) {
    const rows: Record<string, unknown> = {};
    for (const table of EXPORTED_TABLES) {
      const found = await sql`select * from ${sql.table(table)}`.execute(of.db);
      rows[table] = found.rows.map((row) => JSON.stringify(row)).sort();
    }
    return rows;
  }

  /** A small reader of our own: quotes doubled, lines ended as RFC 4180 has it. */
  function cellsIn(text: string): string[][] {
    const rows: string[][] = [[]];
    for (const [, quoted, plain, end] of text
      .replace('\ufeff', '')
      .matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
      rows.at(-1)!.push(quoted?.replaceAll('""', '"') ?? plain ?? '');
      if (end === '') break;
      if (end === '\r\n') rows.push([]);
    }
    return rows.filter((row) => row.length > 1);
  }

  describe('what is exported', () => {
    test('an export imported into an empty shop makes the same shop: every row, every photo', async () => {
      await seedDemo(shop.db, printsFor(null, { timeZone: 'UTC' }));
      const photos = await fill();
      const manifest = await exportShop(shop, out, now);
      expect(manifest.photos).toEqual([...photos].sort());
      await importShop(copy, out);
      const [there, here] = [await everyRow(copy), await everyRow(shop)];
      for (const table of EXPORTED_TABLES) expect(there[table], table).toEqual(here[table]);
      expect((here.job as string[]).length).toBe(22);
      for (const table of [
        'slip',
        'slip_count',
        'slip_job',
        'master_check',
        'master_check_withdrawn',
        'study',
        'study_reading',
        'study_reading_withdrawn',
        'study_stopped',
      ])
        expect((there[table] as string[]).length, table).toBe(1);
      expect((there.entry_revision as string[]).some((row) => row.includes('3/16'))).toBe(true);
      // The style and two weights of type, and a sheet and a tag of each signed job.
      expect([(there.printed_part as string[]).length, (there.printed as string[]).length % 2]).toEqual([
        4, 0,
      ]);
      expect((there.printed as string[]).length).toBeGreaterThan(2);
      expect((here.person as string[]).length).toBe(1);
      expect((here.job_sent as string[]).length).toBe(1);
      for (const hash of photos) expect(await hashOf(join(copy.dataDir, fileOf(hash)))).toBe(hash);
      expect(await getJob(copy.db, '1001')).toEqual(await getJob(shop.db, '1001'));

      // The copy goes on where the shop stopped, and what it exports is the same but for the time.
      const again = await exportShop(copy, join(dataDir, 'again'), () => new Date(0));
      expect({ ...again, at: manifest.at }).toEqual(manifest);
      const next = await createJob(copy.db, as('AB'), { received: received() });
      expect(next.number).toBe('1023');
      expect(next.id).toBe((here.job as string[]).length + 1);
      // PostgreSQL has checked every reference as it came.
      if (engine.name === 'SQLite') {
        const integrity = await sql`PRAGMA foreign_key_check`.execute(copy.db);
        expect(integrity.rows).toEqual([]);
      }
    });

    test('an export that is stopped leaves its folder empty, an import that is stopped the shop', async () => {
      await fill();
      for (const part of ['Writing rows', 'Checking photos', 'Copying photos']) {
        expect(await errorOf(exportShop(shop, out, now, stoppedAt(part)))).toBeInstanceOf(Stopped);
        expect(readdirSync(out)).toEqual([]);
      }
      await exportShop(shop, out, now);
      const empty = await everyRow(copy);
      for (const part of ['Checking photos', 'Copying photos', 'Writing and comparing rows']) {
        expect(await errorOf(importShop(copy, out, stoppedAt(part)))).toBeInstanceOf(Stopped);
        expect(await everyRow(copy)).toEqual(empty);
      }
      await importShop(copy, out);
      expect(await everyRow(copy)).toEqual(await everyRow(shop));
    });

    test('an export names photos by job and number, and one that names them by hash is still imported', async () => {
      const photos = await fill();
      const manifest = await exportShop(shop, out, now);
      const first = manifest.names?.[photos[0]!];
      expect(first).toMatch(/^photos\/job-\d+-1\.jpg$/);
      expect(manifest.names?.[photos[1]!]).toBe(first!.replace('-1.jpg', '-2.png'));
      const table = readFileSync(join(out, 'photos.csv'), 'utf8');
      for (const hash of photos) expect(table).toContain(`,${manifest.names?.[hash]},${hash},`);

      const { names, ...older } = manifest;
      for (const hash of photos) {
        mkdirSync(join(out, fileOf(hash), '..'), { recursive: true });
        renameSync(join(out, names![hash]!), join(out, fileOf(hash)));
      }
      writeFileSync(join(out, 'shop.json'), JSON.stringify(older));
      await importShop(copy, out);
      for (const hash of photos) expect(await hashOf(join(copy.dataDir, fileOf(hash)))).toBe(hash);
    });

    test('an export names every table of the records, or says why one stays', async () => {
      const { rows } = await sql
        .raw<{ name: string }>(
          engine.name === 'SQLite'
            ? "select name from pragma_table_list where schema = 'main' and type = 'table' and name not like 'sqlite_%'"
            : 'select tablename as name from pg_tables where schemaname = current_schema()',
        )
        .execute(shop.db);
      expect([...EXPORTED_TABLES, ...Object.keys(STAYS)].sort()).toEqual(rows.map((row) => row.name).sort());
    });

    test('an export explains itself to people without the program', async () => {
      await fill();
      await exportShop(shop, out, now);
      const readme = readFileSync(join(out, 'README.txt'), 'utf8');
      for (const name of readdirSync(out).filter((one) => one !== 'README.txt')) {
        expect(readme, name).toContain(name);
      }
    });

    test('an export’s tables open in a spreadsheet without a formula, and numbers stay numbers', async () => {
      await fill();
      await exportShop(shop, out, now);
      let cells = 0;
      for (const name of readdirSync(out).filter((one) => one.endsWith('.csv'))) {
        const rows = cellsIn(readFileSync(join(out, name), 'utf8'));
        expect(rows.length, name).toBeGreaterThan(name === 'people.csv' ? 0 : 1);
        expect(new Set(rows.map((row) => row.length)).size, name).toBe(1);
        for (const cell of rows.flat()) {
          cells++;
          if (!/^-?[\d.]+(e-?\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
        }
      }
      expect(cells).toBeGreaterThan(150);
      const jobs = cellsIn(readFileSync(join(out, 'jobs.csv'), 'utf8'));
      expect(jobs.some((row) => row.includes(`'${NASTY}`))).toBe(true);
      const revisions = cellsIn(readFileSync(join(out, 'revisions.csv'), 'utf8'));
      expect(revisions.some((row) => row.includes("'+44 called back"))).toBe(true);
      const lines = readFileSync(join(out, 'data', 'job.jsonl'), 'utf8')
        .trimEnd()
        .split('\n');
      expect(lines.map((line) => JSON.parse(line).customer_reference)).toContain(NASTY);
      const readings = cellsIn(readFileSync(join(out, 'readings.csv'), 'utf8'));
      const value = readings[0]!.indexOf('value_mm');
      expect(readings.some((row) => /^-0\.\d+$/.test(row[value]!))).toBe(true);
    });

    test('an export holds no password, no session and no token', async () => {
      await fill();
      await exportShop(shop, out, now);
      const texts = readdirSync(out, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
      for (const one of texts)
        expect(readFileSync(join(one.parentPath, one.name), 'latin1')).not.toContain('argon2');
      expect(readdirSync(join(out, 'data')).sort()).toEqual(
        EXPORTED_TABLES.map((table) => `${table}.jsonl`).sort(),
      );
      expect(Object.keys(STAYS)).toEqual(expect.arrayContaining(['person_password', 'session', 'api_token']));
    });

    test('an export into a folder that holds anything is refused', async () => {
      mkdirSync(out);
      writeFileSync(join(out, 'mine.txt'), 'mine');
      expect(await errorOf(exportShop(shop, out, now))).toBeInstanceOf(ExportFailed);
      expect(readdirSync(out)).toEqual(['mine.txt']);
    });

    test('an export says which photo is missing, and is imported without it', async () => {
      const [first, second] = await fill();
      rmSync(join(shop.dataDir, fileOf(first!)));
      const manifest = await exportShop(shop, out, now);
      expect([manifest.missing, manifest.photos]).toEqual([[first], [second]]);
      await importShop(copy, out);
      expect(await everyRow(copy)).toEqual(await everyRow(shop));
    });
  });

  describe('nothing is imported', () => {
    const refused = async (into = copy) => {
      const before = await everyRow(into);
      const error = await errorOf(importShop(into, out));
      expect(await everyRow(into)).toEqual(before);
      if (!(error instanceof ImportFailed)) throw error;
      return [error.code, error.message];
    };
    let photos: string[];
    const photoAt = (hash: string) =>
      join(out, JSON.parse(readFileSync(join(out, 'shop.json'), 'utf8')).names[hash]);
    beforeEach(async () => {
      photos = await fill();
      await exportShop(shop, out, now);
    });

    test('an import from a folder that is no export is refused', async () => {
      rmSync(join(out, 'shop.json'));
      expect((await refused())[0]).toBe('no-export');
    });

    test('an import from an export of another version is refused', async () => {
      const path = join(out, 'shop.json');
      writeFileSync(path, JSON.stringify({ ...JSON.parse(readFileSync(path, 'utf8')), version: 99 }));
      expect(await refused()).toEqual(['version', expect.stringContaining('The export is from version 99')]);
    });

    test.each([
      ['a line more', () => appendFileSync(join(out, 'data', 'reading.jsonl'), '{}\n')],
      ['a table less', () => rmSync(join(out, 'data', 'photo.jsonl'))],
      ['another photo', () => writeFileSync(photoAt(photos[0]!), 'another')],
      ['a photo less', () => rmSync(photoAt(photos[1]!))],
    ])('an import from an export with %s is refused', async (_, damage) => {
      damage();
      expect((await refused())[0]).toBe('broken');
    });

    test('an import into a shop that holds anything is refused', async () => {
      await addEntry(copy.db, as('AB'), { kind: 'family', body: alder });
      expect(await refused()).toEqual([
        'not-empty',
        expect.stringContaining('already has a shop, and import never mixes two'),
      ]);
    });

    /** Rewrites one line of a table as if it had been exported so. */
    const rewritten = async (table: string, change: (text: string) => string) => {
      const path = join(out, 'data', `${table}.jsonl`);
      const text = readFileSync(path, 'utf8');
      writeFileSync(path, change(text));
      expect(readFileSync(path, 'utf8')).not.toBe(text);
      const manifest = JSON.parse(readFileSync(join(out, 'shop.json'), 'utf8'));
      manifest.tables[table].sha256 = await hashOf(path);
      writeFileSync(join(out, 'shop.json'), JSON.stringify(manifest));
    };

    test('an import whose rows the database keeps otherwise than they came is given up', async () => {
      // Both databases make a number of it, so it reads back without its last 0.
      await rewritten('reading', (text) => text.replace(/"value_mm":(-?[\d.]+)/, '"value_mm":"$10"'));
      expect(await refused()).toEqual([
        'differs',
        'Table reading did not read back as exported, so nothing was imported. Use the version of the program that made the export.',
      ]);
    });

    test('an import of a column that is not there is given up', async () => {
      await rewritten('photo', (text) => text.replace('"note":"=1+1"', '"note":"=1+1","unknown_column":1'));
      const before = await everyRow(copy);
      expect(String(await errorOf(importShop(copy, out)))).toMatch(/unknown_column/);
      expect(await everyRow(copy)).toEqual(before);
    });
  });
});
