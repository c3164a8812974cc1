import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listBackups } from '../../../src/records/backup/list.ts';
import { importShop } from '../../../src/records/carry/import.ts';
import { FILE_NAME, openShop } from '../../../src/records/database/database.ts';
import { openPostgres } from '../../../src/records/database/postgres.ts';
import { photograph } from '../../records/photos/photograph.ts';
import { jpeg } from '../../records/photos/pictures.ts';
import { signedJob } from '../../records/samples.ts';
import { onPostgres, placeOnPostgres } from '../../records/shops.ts';
import { type Served, serve } from '../program.ts';

let dataDir: string;
let program: Served;
let hash: string;
beforeAll(async () => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  program = await serve({
    demo: false,
    open: async ({ now }) => openShop({ dataDir: join(dataDir, 'shop'), now }),
  });
  hash = await photograph(program.shop, (await signedJob(program.shop.db)).id, await jpeg());
});
afterAll(async () => {
  await program.close();
  rmSync(dataDir, { recursive: true });
});

/** Unpacks an archive into a folder, by a library that did not make it; gives back the one folder in it. */
async function unpacked(answer: Response, name: string): Promise<string> {
  expect(answer.headers.get('content-type')).toBe('application/zip');
  const files = unzipSync(new Uint8Array(await answer.arrayBuffer()));
  const folders = new Set(Object.keys(files).map((path) => path.split('/')[0]!));
  expect(folders.size).toBe(1);
  for (const [path, bytes] of Object.entries(files)) {
    const place = join(dataDir, name, path);
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, bytes);
  }
  return join(dataDir, name, [...folders][0]!);
}

describe('the page of the records', () => {
  test('says how much there is and where, and that no backup was made yet', async () => {
    const { status, text } = await program.get('/records');
    expect(status).toBe(200);
    expect(text).toContain('1 job, 3 readings, 1 photo');
    expect(text).toContain(join(dataDir, 'shop'));
    expect(text).toContain('No backup yet');
  });

  test('makes a backup, lists it, and hands it out whole', async () => {
    expect(await program.post('/records/backups', {})).toMatchObject({
      status: 303,
      location: '/records#backups',
    });
    const [backup] = await listBackups(join(dataDir, 'shop', 'backups'));
    expect(backup?.manifest.reason).toBe('asked');
    expect((await program.get('/records')).text).toContain(`Download ${backup!.name}`);
    const folder = await unpacked(
      await fetch(`${program.url}/records/backups/${backup!.name}.zip`),
      'backup',
    );
    expect(readdirSync(folder).sort()).toEqual([FILE_NAME, 'files', 'manifest.json']);
    for (const { path } of backup!.manifest.files) {
      expect(readFileSync(join(folder, path)).equals(readFileSync(join(backup!.folder, path))), path).toBe(
        true,
      );
    }
  });

  test.each(['..%2f..%2fshop', 'coverwright-20200101-000000.zip', '%2e%2e%2fshop', 'coverwright.sqlite'])(
    'hands out nothing under the name %s',
    async (name) => {
      expect((await program.get(`/records/backups/${name}`)).status).toBe(404);
    },
  );

  test('hands out everything as one archive that makes the same shop again, and leaves nothing behind', async () => {
    const answer = await fetch(`${program.url}/records/export`, {
      method: 'POST',
      headers: { origin: program.url },
    });
    expect(answer.headers.get('content-disposition')).toBe(
      'attachment; filename="coverwright-export-2026-11-24.zip"',
    );
    const folder = await unpacked(answer, 'export');
    const copy = openShop({ dataDir: join(dataDir, 'copy') });
    const { photos } = await importShop(copy, folder);
    expect(photos).toEqual([hash]);
    const all = (shop: typeof copy) =>
      shop.db.selectFrom('job_revision').selectAll().orderBy('revision').execute();
    expect(await all(copy)).toEqual(await all(program.shop));
    await copy.close();
    expect(readdirSync(join(dataDir, 'shop')).filter((name) => name.startsWith('exporting-'))).toEqual([]);
  });

  test('changes nothing for another site', async () => {
    for (const path of ['/records/backups', '/records/export']) {
      const answer = await fetch(program.url + path, {
        method: 'POST',
        headers: { origin: 'http://elsewhere.example' },
      });
      expect(answer.status).toBe(403);
    }
  });
});

onPostgres('the page of the records of a shop in PostgreSQL', () => {
  test('makes a backup at a button too, and says how to go back to it', async () => {
    const place = await placeOnPostgres();
    const own = join(dataDir, 'branch');
    const branch = await serve({
      demo: false,
      databaseUrl: place.url,
      open: ({ now }) => openPostgres({ url: place.url, dataDir: own, now }),
    });
    await signedJob(branch.shop.db);
    expect(await branch.post('/records/backups', {})).toMatchObject({ status: 303 });
    const [backup] = await listBackups(join(own, 'backups'));
    expect(backup?.manifest.counts).toMatchObject({ job: 1, reading: 3 });
    const { text } = await branch.get('/records');
    expect(text).toContain(`Download ${backup!.name}`);
    expect(text).toContain('Make an empty database, set DATABASE_URL to it, and run npm run restore');
    await branch.close();
    await place.remove();
  });
});
