import {
  copyFileSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  truncateSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openShop } from '../../src/records/database/database.ts';
import { MIGRATIONS } from '../../src/records/database/migrate.ts';
import { ask, post } from './kit/http.ts';
import { newFolder, start, startAndEnd } from './kit/program.ts';
import { faultsIn, fileIn, jobForm, look, sumOf } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const WHOLE =
  /^\S+coverwright\.sqlite is damaged or not a database\. Leave it .+ restore the newest backup into another folder\. Nothing was changed\.\n$/;
const PARTED =
  /^\S+-wal has data, but .+ is missing or empty\. Put that file back, .+\. Nothing was changed\.\n$/;

function overwrite(file: string, at: number, bytes: Buffer): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, bytes, 0, bytes.length, at);
}

const noise = (length: number) => Buffer.from(Array.from({ length }, (_, i) => (i * 7919 + 13) % 251));

/** Files that hold something of the shop's, and what. The lock says only who runs. */
const sums = (dataDir: string) =>
  Object.fromEntries(
    readdirSync(dataDir, { withFileTypes: true })
      .filter((one) => one.isFile() && !/(-shm|\.lock)$/.test(one.name))
      .filter((one) => statSync(join(dataDir, one.name)).size > 0)
      .map((one) => [one.name, sumOf(readFileSync(join(dataDir, one.name)))]),
  );

async function closedShop(): Promise<string> {
  const dataDir = newFolder();
  const program = await start({ dataDir });
  expect((await program.stop()).code).toBe(0);
  return dataDir;
}

const DAMAGES: readonly [string, (file: string) => void, RegExp][] = [
  ['its first bytes', (file) => overwrite(file, 0, noise(100)), WHOLE],
  ['its page size', (file) => overwrite(file, 16, Buffer.from([0, 3])), WHOLE],
  ['a page in the middle', (file) => overwrite(file, 4096 * 12, noise(4096)), WHOLE],
  ['many pages', (file) => overwrite(file, 4096, noise(4096 * 20)), WHOLE],
  ['its end, cut off', (file) => truncateSync(file, 4096 * 9), WHOLE],
  ['its end, cut off in the middle of a page', (file) => truncateSync(file, 4096 * 7 + 100), WHOLE],
  ['all but some bytes', (file) => truncateSync(file, 90), WHOLE],
];

test('a damaged file is refused with what to do, and left as it is', async () => {
  const sound = await closedShop();
  for (const [what, damage, sentence] of DAMAGES) {
    const dataDir = newFolder();
    copyFileSync(fileIn(sound), fileIn(dataDir));
    damage(fileIn(dataDir));
    const before = sums(dataDir);
    const refused = await startAndEnd({ dataDir });
    expect([refused.code, refused.out], what).toEqual([1, '']);
    expect(refused.err, what).toMatch(sentence);
    expect(sums(dataDir), what).toEqual(before);
  }
  tell('Damaged file', `${DAMAGES.length} kinds`, 'refused with what to do, exit code 1; not a byte changed');
});

test('a missing file whose log is left is told of, and nothing is thrown away', async () => {
  const dataDir = newFolder();
  const program = await start({ dataDir });
  expect((await post(program.url, '/jobs', jobForm('D-1'))).status).toBe(303);
  program.kill('SIGKILL');
  await program.ended;
  const aside = newFolder();

  renameSync(fileIn(dataDir), join(aside, 'file'));
  const before = sums(dataDir);
  const noFile = await startAndEnd({ dataDir });
  expect([noFile.code, noFile.out]).toEqual([1, '']);
  expect(noFile.err).toMatch(PARTED);
  expect(sums(dataDir)).toEqual(before);
  renameSync(join(aside, 'file'), fileIn(dataDir));

  const again = await start({ dataDir });
  expect((await ask(`${again.url}/jobs/D-1`)).status).toBe(200);
  expect((await again.stop()).code).toBe(0);
  tell(
    'File missing after a kill, its log left',
    '1 start',
    'refused with what to do; put back together, all is there',
  );
});

const PARTS = [0.01, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1];

test('a start killed in the middle of making or changing the tables is finished by the next', async () => {
  const applied: number[] = [];
  for (const part of PARTS) {
    const dataDir = newFolder();
    const env = { KILL_WHERE: 'tables', KILL_PART: String(part) };
    expect((await startAndEnd({ dataDir, demo: false, inside: ['killer'], env })).signal).toBe('SIGKILL');
    await openShop({ dataDir }).close();
    applied.push(
      look(dataDir, (raw) => Number(raw.prepare('SELECT count(*) FROM schema_migration').pluck().get())),
    );
    expect(look(dataDir, faultsIn)).toEqual([]);
    if (part !== PARTS.at(0) && part !== PARTS.at(-1)) continue;
    const program = await start({ dataDir });
    expect((await ask(`${program.url}/jobs/1001`)).status).toBe(200);
    expect((await program.stop()).code).toBe(0);
  }
  expect(new Set(applied)).toEqual(new Set([MIGRATIONS.length]));
  tell(
    'Killed while the tables are made or changed',
    `${PARTS.length} kills`,
    'the next start finishes what was begun',
  );
});
