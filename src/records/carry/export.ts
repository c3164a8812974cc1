import { createHash } from 'node:crypto';
import { createWriteStream, existsSync, readdirSync, rmSync } from 'node:fs';
import { copyFile, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { type Step, Stopped, unseen, withBar } from '../../progress.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { type Db, makeFolder, readAtOnce, type Shop } from '../database/database.ts';
import { ExportFailed, RecordsUnavailable, ShopWillNotOpen } from '../database/errors.ts';
import { MIGRATIONS } from '../database/migrate.ts';
import { openRecords } from '../database/open.ts';
import { fileOf, flush, hashOf } from '../photos/files.ts';
import { shopOfCommand } from './commandFolder.ts';
import { type ExportManifest, photoIn, SHOP_FILE } from './exportManifest.ts';
import { README } from './exportReadme.ts';
import { cellsOf, csvOf, SHEETS, type Told } from './exportSheets.ts';
import { EXPORTED_TABLES, type ExportedTable, rowsIn, rowsOf } from './exportTables.ts';

/** Writes everything but the photos into a folder, as it is at one moment; the manifest last. */
export async function exportTexts(
  shop: Shop,
  folder: string,
  now: () => Date,
  step: Step = unseen,
): Promise<ExportManifest> {
  makeFolder(join(folder, 'data'));
  const { tables, names } = await readAtOnce(shop.db, async (trx) => {
    const written: ExportManifest['tables'] = {};
    const of = await rowsIn(trx);
    let done = 0;
    const told = () => step('Writing rows', done++, of);
    for (const table of EXPORTED_TABLES) {
      written[table] = await writeLines(trx, table, join(folder, 'data', `${table}.jsonl`), told);
    }
    const numbers = new Map<number, string>();
    for await (const { id, number } of rowsOf(trx, 'job')) numbers.set(Number(id), String(number));
    const names = await photoNames(trx, numbers);
    for (const [i, name] of Object.keys(SHEETS).entries()) {
      step('Writing tables for a spreadsheet', i, Object.keys(SHEETS).length);
      await writeSheet(trx, name, folder, { numbers, names });
    }
    return { tables: written, names };
  });
  const whole: string[] = [];
  const missing: string[] = [];
  const photos = Object.keys(names).sort();
  for (const [i, hash] of photos.entries()) {
    step('Checking photos', i, photos.length);
    const found = await hashOf(join(shop.dataDir, fileOf(hash))).catch(() => '');
    (found === hash ? whole : missing).push(hash);
  }
  const manifest: ExportManifest = {
    what: 'coverwright export',
    form: 1,
    version: MIGRATIONS.at(-1)?.number ?? 0,
    at: now().toISOString(),
    tables,
    photos: whole,
    names,
    missing,
  };
  await writeFile(join(folder, 'README.txt'), README);
  await writeFile(join(folder, SHOP_FILE), `${JSON.stringify(manifest, null, 1)}\n`);
  return manifest;
}

/** Everything the shop has kept, photos too, into a new folder. Throws ExportFailed. */
export async function exportShop(
  shop: Shop,
  folder: string,
  now: () => Date,
  step: Step = unseen,
): Promise<ExportManifest> {
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    throw new ExportFailed(`${folder} is not empty. Name an empty folder, or a new one.`);
  }
  try {
    makeFolder(folder);
    const manifest = await exportTexts(shop, folder, now, step);
    for (const [i, hash] of manifest.photos.entries()) {
      step('Copying photos', i, manifest.photos.length);
      const place = join(folder, photoIn(manifest, hash));
      makeFolder(dirname(place));
      await copyFile(join(shop.dataDir, fileOf(hash)), place);
    }
    await flush(folder);
    return manifest;
  } catch (error) {
    // Half an export would be taken for a whole one. The folder was empty before.
    for (const one of existsSync(folder) ? readdirSync(folder) : []) {
      rmSync(join(folder, one), { recursive: true, force: true });
    }
    if (error instanceof RecordsUnavailable || error instanceof Stopped) throw error;
    const why = error instanceof Error ? error.message : String(error);
    throw new ExportFailed(
      `The export could not be written to ${folder} (${why}). Choose a folder with free space that can be written to.`,
      error,
    );
  }
}

async function writeLines(db: Db, table: ExportedTable, path: string, told: () => void) {
  const sum = createHash('sha256');
  let rows = 0;
  async function* lines() {
    for await (const line of linesOf(db, table)) {
      rows++;
      told();
      sum.update(line);
      yield line;
    }
  }
  await pipeline(Readable.from(lines()), createWriteStream(path));
  return { rows, sha256: sum.digest('hex') };
}

/** A table's rows as they are written out. */
export async function* linesOf(db: Db, table: ExportedTable): AsyncGenerator<string> {
  for await (const row of rowsOf(db, table)) yield `${JSON.stringify(row)}\n`;
}

/** A name for each photo that says whose it is: its job’s number, and which of that job’s photos it is. */
async function photoNames(db: Db, numbers: ReadonlyMap<number, string>): Promise<Record<string, string>> {
  const names: Record<string, string> = {};
  const taken = new Map<string, number>();
  for await (const { hash, job_id, kind } of rowsOf(db, 'photo')) {
    if (names[String(hash)] !== undefined) continue;
    const job = (numbers.get(Number(job_id)) ?? '').replace(/[^\w-]+/g, '-');
    const count = (taken.get(job) ?? 0) + 1;
    taken.set(job, count);
    names[String(hash)] = `photos/job-${job}-${count}.${kind === 'jpeg' ? 'jpg' : kind}`;
  }
  return names;
}

async function writeSheet(db: Db, name: string, folder: string, told: Told) {
  const sheet = SHEETS[name]!;
  async function* cells() {
    for await (const row of rowsOf(db, sheet.table)) yield cellsOf(row, sheet.columns, told);
  }
  await pipeline(Readable.from(cells()), csvOf(sheet.columns), createWriteStream(join(folder, name)));
}

const NO_EXPORT = 'Nothing was exported: the folder is empty again, and the shop is as it was.';

async function main(): Promise<void> {
  let shop: Shop | undefined;
  try {
    const folder = process.argv[2];
    if (folder === undefined)
      throw new ExportFailed('Name the folder to export to: npm run export -- FOLDER');
    const now = () => new Date();
    shop = await openRecords({ ...shopOfCommand(process.env), now });
    const from = shop;
    const { tables, photos, missing } = await withBar(NO_EXPORT, (step) =>
      exportShop(from, resolve(folder), now, step),
    );
    const lost = missing.length === 0 ? '' : ` (${missing.length} more are missing or damaged on the disk)`;
    console.log(
      `Exported ${tables.job?.rows} jobs, ${tables.reading?.rows} readings and ${photos.length} photos${lost} to ${resolve(folder)}. README.txt there explains the files.`,
    );
  } catch (error) {
    const forPeople =
      error instanceof ExportFailed ||
      error instanceof Stopped ||
      error instanceof SettingsRefused ||
      error instanceof ShopWillNotOpen ||
      error instanceof RecordsUnavailable;
    if (!forPeople) throw error;
    console.error(error.message);
    process.exitCode = 1;
  } finally {
    await shop?.close();
  }
}

if (startedAs('export')) await main();
