import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Readable } from 'node:stream';
import { type InsertObject, sql } from 'kysely';
import { type Step, Stopped, unseen, withBar } from '../../progress.ts';
import { startedAs } from '../../root.ts';
import { SettingsRefused } from '../../settings.ts';
import { type Db, makeFolder, type Shop, write } from '../database/database.ts';
import { ImportFailed, RecordsUnavailable, RestoreFailed, ShopWillNotOpen } from '../database/errors.ts';
import { MIGRATIONS } from '../database/migrate.ts';
import { openRecords } from '../database/open.ts';
import { holdAlone } from '../database/restoreGuard.ts';
import type { Tables } from '../database/tables.ts';
import { hashOf, keep, receive } from '../photos/files.ts';
import { shopOfCommand } from './commandFolder.ts';
import { linesOf } from './export.ts';
import { type ExportManifest, photoIn, readExport } from './exportManifest.ts';
import { EXPORTED_TABLES, type ExportedTable, type Row } from './exportTables.ts';

const AT_A_TIME = 200;
const ANY_SIZE = Number.POSITIVE_INFINITY;

/**
 * Puts an export into an empty shop, so that it is the same shop. The rows are read back and compared before they are
 * kept: all of it is, or nothing. Throws ImportFailed.
 */
export async function importShop(shop: Shop, folder: string, step: Step = unseen): Promise<ExportManifest> {
  const manifest = await examine(folder, step);
  await refuseFull(shop);
  for (const [i, hash] of manifest.photos.entries()) {
    step('Copying photos', i, manifest.photos.length);
    await keep(
      shop.dataDir,
      await receive(shop.dataDir, createReadStream(join(folder, photoIn(manifest, hash))), ANY_SIZE),
    );
  }
  await write(shop.db, async (trx) => {
    await refuseFull({ ...shop, db: trx });
    const of = EXPORTED_TABLES.reduce((sum, table) => sum + (manifest.tables[table]?.rows ?? 0), 0);
    let done = 0;
    const arrived = (rows: number) => {
      done += rows;
      step('Writing and comparing rows', done, of);
    };
    for (const table of EXPORTED_TABLES) {
      await insertLines(trx, table, linesFile(folder, table), arrived);
      const said = manifest.tables[table];
      if ((await sumOf(Readable.from(linesOf(trx, table)))) !== said?.sha256) {
        throw new ImportFailed(
          'differs',
          `Table ${table} did not read back as exported, so nothing was imported. Use the version of the program that made the export.`,
        );
      }
    }
  });
  return manifest;
}

async function examine(folder: string, step: Step): Promise<ExportManifest> {
  const manifest = await readExport(folder);
  if (manifest === null) {
    throw new ImportFailed(
      'no-export',
      `${folder} is not an export of a shop: shop.json is missing or unreadable. Name the folder npm run export made, or the unpacked .zip. Nothing was changed.`,
    );
  }
  const version = MIGRATIONS.at(-1)?.number ?? 0;
  if (manifest.version !== version) {
    throw new ImportFailed(
      'version',
      `The export is from version ${manifest.version}; this is version ${version}. Import it with that version, then start this one on the same folder. Nothing was changed.`,
    );
  }
  for (const table of EXPORTED_TABLES) {
    const path = linesFile(folder, table);
    if (!existsSync(path) || (await hashOf(path)) !== manifest.tables[table]?.sha256) throw broken(path);
  }
  for (const [i, hash] of manifest.photos.entries()) {
    step('Checking photos', i, manifest.photos.length);
    const path = join(folder, photoIn(manifest, hash));
    if ((await hashOf(path).catch(() => '')) !== hash) throw broken(path);
  }
  return manifest;
}

function broken(path: string): ImportFailed {
  return new ImportFailed(
    'broken',
    `${path} is missing or has changed since the export. Copy the export again. Nothing was changed.`,
  );
}

async function refuseFull(shop: Shop): Promise<void> {
  for (const table of EXPORTED_TABLES) {
    const { rows } = await sql<{ n: number }>`select count(*) as n from ${sql.table(table)}`.execute(shop.db);
    if (Number(rows[0]?.n) === 0) continue;
    throw new ImportFailed(
      'not-empty',
      `${shop.where} already has a shop, and import never mixes two. Set DATA_DIR to a new folder and import there first. Nothing was changed.`,
    );
  }
}

function linesFile(folder: string, table: ExportedTable): string {
  return join(folder, 'data', `${table}.jsonl`);
}

async function insertLines(
  db: Db,
  table: ExportedTable,
  path: string,
  arrived: (rows: number) => void,
): Promise<void> {
  let waiting: Row[] = [];
  const insert = async () => {
    // The columns are those of the same version; reading the rows back proves it.
    const rows = waiting as unknown as InsertObject<Tables, ExportedTable>[];
    if (rows.length > 0) await db.insertInto(table).values(rows).execute();
    arrived(rows.length);
    waiting = [];
  };
  for await (const line of linesIn(path)) {
    waiting.push(JSON.parse(line) as Row);
    if (waiting.length === AT_A_TIME) await insert();
  }
  await insert();
}

/** Node's own reader of lines also ends one at U+2028, which a note may hold. */
async function* linesIn(path: string): AsyncGenerator<string> {
  let rest = '';
  for await (const text of createReadStream(path, 'utf8')) {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
}

async function sumOf(lines: Readable): Promise<string> {
  const sum = createHash('sha256');
  for await (const line of lines) sum.update(line as string);
  return sum.digest('hex');
}

const NOTHING_IMPORTED = 'Nothing was imported: there are no jobs in the shop, and you can import again.';

async function main(): Promise<void> {
  let shop: Shop | undefined;
  try {
    const folder = process.argv[2];
    if (folder === undefined)
      throw new ImportFailed('no-export', 'Name the folder to import: npm run import -- FOLDER');
    const { dataDir, databaseUrl } = shopOfCommand(process.env, { makes: true });
    await withBar(NOTHING_IMPORTED, (step) => examine(resolve(folder), step));
    makeFolder(dirname(dataDir));
    makeFolder(dataDir);
    const held = holdAlone(dataDir);
    const into = await openRecords({ dataDir, databaseUrl, now: () => new Date() });
    shop = into;
    const { tables, photos, missing } = await withBar(NOTHING_IMPORTED, (step) =>
      importShop(into, resolve(folder), step),
    );
    held.release();
    const lost =
      missing.length === 0 ? '' : `; ${missing.length} photos were missing when the export was made`;
    console.log(
      `Imported ${tables.job?.rows} jobs, ${tables.reading?.rows} readings and ${photos.length} photos into ${shop.where}${lost}. Read back and compared: all the same. Everybody needs a new password.`,
    );
  } catch (error) {
    const forPeople =
      error instanceof ImportFailed ||
      error instanceof Stopped ||
      error instanceof RestoreFailed ||
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

if (startedAs('import')) await main();
