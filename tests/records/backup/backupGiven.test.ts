import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { listBackups } from '../../../src/records/backup/list.ts';
import { nextInWords, restore } from '../../../src/records/backup/restore.ts';
import { FILE_NAME, openShop } from '../../../src/records/database/database.ts';
import { fileOf, hashOf } from '../../../src/records/photos/files.ts';
import { writeSettings } from '../../../src/settingsFile.ts';
import { type Served, serve } from '../../web/program.ts';
import { photograph } from '../photos/photograph.ts';
import { jpeg } from '../photos/pictures.ts';
import { errorOf } from '../refusals.ts';
import { signedJob } from '../samples.ts';

const now = () => new Date('2026-03-02T17:04:05.678Z');
let place: string;
let program: Served;
let hash: string;
/** As the button on the page Backups sends it. */
let zip: string;
beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  program = await serve({ demo: false, open: async () => openShop({ dataDir: join(place, 'shop') }) });
  hash = await photograph(program.shop, (await signedJob(program.shop.db)).id, await jpeg());
  await program.post('/records/backups', {});
  const [backup] = await listBackups(join(place, 'shop', 'backups'));
  const sent = await fetch(`${program.url}/records/backups/${backup!.name}.zip`);
  zip = join(place, `${backup!.name}.zip`);
  writeFileSync(zip, new Uint8Array(await sent.arrayBuffer()));
});
afterAll(async () => {
  await program.close();
  rmSync(place, { recursive: true });
});

let machines = 0;
/** Restores on a machine that has no shop yet. */
async function onAnotherMachine(folder: string) {
  const dataDir = join(place, `machine-${++machines}`);
  const restored = restore({ dataDir, folder, now });
  return { dataDir, restored };
}

async function expectTheShop(dataDir: string): Promise<void> {
  const shop = openShop({ dataDir });
  expect((await shop.db.selectFrom('job').select('number').execute()).map((job) => job.number)).toEqual([
    '1001',
  ]);
  await shop.close();
  expect(await hashOf(join(dataDir, fileOf(hash)))).toBe(hash);
  expect(readdirSync(dataDir).filter((name) => name.startsWith('restoring-'))).toEqual([]);
}

function written(name: string, files: Readonly<Record<string, Uint8Array>>): string {
  const folder = join(place, name);
  for (const [path, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  return folder;
}

const entries = () => unzipSync(new Uint8Array(readFileSync(zip)));

test('the .zip that the button sent is restored on another machine', async () => {
  const { dataDir, restored } = await onAnotherMachine(zip);
  expect(await restored).toMatchObject({ aside: null });
  await expectTheShop(dataDir);
});

test('the folder around an unpacked backup is restored', async () => {
  const { dataDir, restored } = await onAnotherMachine(written('around', entries()));
  await restored;
  await expectTheShop(dataDir);
});

test('what else lies beside the backup, such as a note or a folder of pictures, is left alone', async () => {
  const folder = written('beside', {
    ...entries(),
    'note.txt': new Uint8Array([1]),
    'pictures/one.jpg': new Uint8Array([2]),
  });
  const { dataDir, restored } = await onAnotherMachine(folder);
  await restored;
  await expectTheShop(dataDir);
});

test('a backup packed again by somebody, files first and a folder deeper, is restored', async () => {
  const again = Object.entries(entries()).map(([path, bytes]) => [`stick/shop/${path}`, bytes] as const);
  const packed = join(place, 'again.zip');
  writeFileSync(
    packed,
    zipSync({ 'stick/notes.txt': new Uint8Array(3), ...Object.fromEntries(again.reverse()) }),
  );
  const { dataDir, restored } = await onAnotherMachine(packed);
  await restored;
  await expectTheShop(dataDir);
});

test('a folder with two backups asks for one of them by name', async () => {
  const two = written('two', entries());
  const [name] = readdirSync(two);
  cpSync(join(two, name!), join(two, 'older'), { recursive: true });
  const { dataDir, restored } = await onAnotherMachine(two);
  expect(await errorOf(restored)).toMatchObject({
    code: 'no-backup',
    message: `There are 2 backups in ${two}: ${[name, 'older'].sort().join(', ')}. Name one of them. Nothing was changed.`,
  });
  expect(existsSync(join(dataDir, FILE_NAME))).toBe(false);
});

test('a name that is no file and no folder is said to be nowhere', async () => {
  const nowhere = join(place, 'nowhere.zip');
  const { dataDir, restored } = await onAnotherMachine(nowhere);
  expect(await errorOf(restored)).toMatchObject({
    code: 'no-backup',
    message: `There is no file or folder ${nowhere}. Name a backup's folder or its .zip. Nothing was changed.`,
  });
  expect(existsSync(dataDir)).toBe(false);
});

test('a new folder has no settings, since no backup holds any, and is told how to get them', async () => {
  const dataDir = mkdtempSync(join(place, 'settings-'));
  expect(nextInWords(dataDir)).toBe(
    `No settings are saved in ${dataDir}, and a backup holds none. Run npm run setup, then start the program.`,
  );
  writeSettings(dataDir, { PORT: '4180' });
  expect(nextInWords(dataDir)).toBe('Now start the program.');
});

test.each([
  ['half a download', (whole: Uint8Array) => whole.slice(0, whole.length / 2), 'broken', "can't be unpacked"],
  ['no archive at all', () => new TextEncoder().encode('Dear reader.'), 'broken', "can't be unpacked"],
  [
    'an archive of something else',
    () => zipSync({ 'recipe.txt': new Uint8Array(9) }),
    'no-backup',
    'There is no finished backup in',
  ],
  [
    'an archive with a path that leads out of it',
    () => zipSync({ '../manifest.json': new Uint8Array(9) }),
    'broken',
    "can't be unpacked",
  ],
  [
    'a changed byte in a photo',
    (whole: Uint8Array) => {
      const files = unzipSync(whole);
      const photo = Object.keys(files).find((path) => path.endsWith(hash))!;
      files[photo]![100]! ^= 0xff;
      return zipSync(files);
    },
    'broken',
    'is damaged',
  ],
])('%s is refused in a sentence and leaves nothing behind', async (_, change, code, said) => {
  const bad = join(place, 'bad.zip');
  writeFileSync(bad, change(new Uint8Array(readFileSync(zip))));
  const { dataDir, restored } = await onAnotherMachine(bad);
  expect(await errorOf(restored)).toMatchObject({ code, message: expect.stringContaining(said) });
  expect(readdirSync(dataDir)).toEqual([]);
});
