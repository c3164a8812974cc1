import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { type Answered, ask, post } from './kit/http.ts';
import { newFolder, type Program, start, startAndEnd } from './kit/program.ts';
import { faultsIn, fileIn, jobForm, look, readingIds, readingsForm } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const FULL = 'The disk is full. This was not saved; free some space and try again.';
const MOST_WRITES = 4000;

const allIds = (dataDir: string) =>
  look(dataDir, (raw) => raw.prepare<[], string>('SELECT id FROM reading').pluck().all());

interface Filled {
  readonly refused: Answered;
  readonly token: string;
  readonly places: readonly number[];
  readonly kept: readonly string[];
}

/** Adds readings until one set is refused. */
async function writeUntilRefused(program: Program, number: string): Promise<Filled> {
  const kept: string[] = [];
  for (let i = 0; i < MOST_WRITES; i++) {
    const token = `${number}-fill-${i}`;
    const places = Array.from({ length: 60 }, (_, k) => i * 60 + k);
    const answer = await post(program.url, `/jobs/${number}/readings`, readingsForm(token, places));
    if (answer.status !== 303) return { refused: answer, token, places, kept };
    kept.push(...readingIds(token, places));
  }
  throw new Error('The disk never became full.');
}

/** Refused with a sentence; pages still open; after room was made the very same set is taken, once. */
async function standsFull(
  program: Program,
  folder: () => string,
  sentence: string | RegExp,
  makeRoom: () => unknown,
  whileFull: () => Promise<void> = async () => {},
): Promise<number> {
  const number = 'F-1';
  const filled = await writeUntilRefused(program, number);
  expect(filled.refused.status).toBe(503);
  expect(filled.refused.text).toMatch(sentence);
  expect(allIds(folder())).toEqual(expect.arrayContaining([...filled.kept]));
  expect(allIds(folder())).not.toContain(readingIds(filled.token, filled.places)[0]);
  expect((await ask(`${program.url}/jobs/${number}`)).status).toBe(200);
  const again = () =>
    post(program.url, `/jobs/${number}/readings`, readingsForm(filled.token, filled.places));
  expect((await again()).status).toBe(503);
  await whileFull();
  await makeRoom();
  expect((await again()).status).toBe(303);
  expect((await again()).status).toBe(303);
  const ids = allIds(folder());
  const all = [...filled.kept, ...readingIds(filled.token, filled.places)];
  expect(ids).toEqual(expect.arrayContaining(all));
  expect(ids.filter((id) => id.startsWith(number))).toHaveLength(all.length);
  expect(look(folder(), faultsIn)).toEqual([]);
  expect(program.said().err).toContain('SQLITE_');
  return all.length;
}

/** A photo and an export need room too: both get an answer, and nothing of them is left. */
async function photoAndExportRefused(program: Program): Promise<void> {
  const headers = { origin: program.url };
  const form = new FormData();
  form.append('who', 'TO');
  form.append('place', 'job');
  form.append('file', new Blob([Buffer.from([0xff, 0xd8, 0xff]), Buffer.alloc(2_000_000)]), 'one.jpg');
  for (const [path, body] of [
    ['/jobs/F-1/photos', form],
    ['/records/export', null],
  ] as const) {
    const answer = await fetch(program.url + path, { method: 'POST', headers, body });
    expect([path, answer.status, await answer.text()]).toEqual([path, 503, expect.stringContaining(FULL)]);
  }
}

/** Whether this account may have a small disk of its own for a while, in memory. */
const mayMount = (() => {
  const tried = spawnSync('unshare', ['-m', 'sh', '-c', 'mount -t tmpfs -o size=64k tmpfs /mnt'], {
    stdio: 'ignore',
  });
  return tried.status === 0;
})();

/** Runs a command with a disk of some KB over a folder, that is gone with it. */
const onSmallDisk = (folder: string, kilobytes: number, first = ':') => [
  'unshare',
  '-m',
  'sh',
  '-c',
  `mount -t tmpfs -o size=${kilobytes}k,mode=700 tmpfs "$0" && ${first} && exec "$@"`,
  folder,
];

/** Runs a command that may write no file longer than so many KB. */
const withShortFiles = (kilobytes: number) => ['sh', '-c', `ulimit -S -f ${2 * kilobytes}; exec "$@"`, 'sh'];

describe('a full disk', () => {
  test('refuses changes with a sentence and loses nothing (a small disk, or where none can be had a limit on files)', async () => {
    const dataDir = newFolder();
    if (mayMount) {
      const program = await start({ dataDir, under: onSmallDisk(dataDir, 3000) });
      const inside = `/proc/${program.pid}/root${dataDir}`;
      const ballast = join(inside, 'ballast');
      writeFileSync(ballast, Buffer.alloc(600_000));
      expect((await post(program.url, '/jobs', jobForm('F-1'))).status).toBe(303);
      // From here a path of that disk leads elsewhere, so it is copied to be looked at.
      const copied = () => {
        const copy = newFolder();
        cpSync(inside, copy, { recursive: true, filter: (name) => name !== ballast });
        return copy;
      };
      const sayFull = () => photoAndExportRefused(program);
      await standsFull(program, copied, FULL, () => rmSync(ballast), sayFull);
      // The small disk goes with the program; what lay on it is opened anew elsewhere.
      const copy = copied();
      expect((await program.stop()).code).toBe(0);
      const again = await start({ dataDir: copy });
      expect((await ask(`${again.url}/jobs/F-1`)).status).toBe(200);
      expect(look(copy, faultsIn)).toEqual([]);
    } else {
      const program = await start({ dataDir, under: withShortFiles(1500) });
      expect((await post(program.url, '/jobs', jobForm('F-1'))).status).toBe(303);
      await standsFull(
        program,
        () => dataDir,
        /This (was not|could not be) saved/,
        () => spawnSync('prlimit', ['--pid', String(program.pid), '--fsize=unlimited:']),
      );
    }
    tell(
      'Disk full',
      '2 ways, 2 refusals each',
      'a sentence (503), pages still open, nothing lost; taken once there is room',
    );
  });

  test('refuses changes with a sentence and loses nothing (the records may take no further page)', async () => {
    const dataDir = newFolder();
    const program = await start({ dataDir, inside: ['instrument'] });
    expect((await post(program.url, '/jobs', jobForm('F-1'))).status).toBe(303);
    await program.ask({ what: 'room', pages: 40 });
    await standsFull(
      program,
      () => dataDir,
      FULL,
      () => program.ask({ what: 'room', pages: null }),
    );
    expect((await program.stop()).code).toBe(0);
  });

  test.runIf(mayMount)('stops the start with a sentence', async () => {
    const dataDir = newFolder();
    const fill = `head -c 200000 /dev/zero > "$0/ballast" 2>/dev/null; true`;
    const ended = await startAndEnd({ dataDir, under: onSmallDisk(dataDir, 100, fill) });
    expect([ended.code, ended.out]).toEqual([1, '']);
    expect(ended.err).toMatch(/^Nothing can be saved in .+\.\n$/);
  });
});

test('a data folder that may not be written to stops the start with a sentence', async () => {
  const dataDir = newFolder();
  const shop = join(dataDir, 'shop');
  mkdirSync(shop, { mode: 0o555 });
  spawnSync('chmod', ['755', dataDir]);
  // Rights do not bind the superuser, so for it the program goes on as nobody.
  const bound = process.getuid?.() === 0 ? { inside: ['otherAccount'], env: { AS_UID: '65534' } } : {};
  const refused = await startAndEnd({ dataDir: shop, ...bound });
  expect([refused.code, refused.out]).toEqual([1, '']);
  expect(refused.err).toMatch(/^Nothing can be saved in .+ set DATA_DIR to another folder\.\n$/);
  expect(existsSync(fileIn(shop))).toBe(false);
  const beside = await startAndEnd({ dataDir: join(shop, 'inner'), ...bound });
  expect([beside.code, beside.out]).toEqual([1, '']);
  expect(beside.err).toMatch(/^Nothing can be saved in .+\.\n$/);
  tell('Folder that may not be written to', '2 starts', 'refused with a sentence, exit code 1; nothing made');
});

test('records that another program has locked refuse changes with a sentence, and take them afterwards', async () => {
  const dataDir = newFolder();
  const program = await start({ dataDir });
  expect((await post(program.url, '/jobs', jobForm('L-1'))).status).toBe(303);
  const other = new Database(fileIn(dataDir));
  other.exec('BEGIN IMMEDIATE');
  const waiting = () => post(program.url, '/jobs/L-1/readings', readingsForm('L-1-readings', [1, 2]));
  // A page is answered while the change still waits; a machine that was too slow for that is asked again.
  const refused = await (async () => {
    for (let tries = 0; tries < 5; tries++) {
      let waits = true;
      const change = waiting().finally(() => {
        waits = false;
      });
      expect((await ask(`${program.url}/jobs/L-1`)).status).toBe(200);
      const openMeanwhile = waits;
      const answer = await change;
      if (openMeanwhile) return answer;
    }
    throw new Error('No page was answered while a change waited.');
  })();
  expect(refused.status).toBe(503);
  expect(refused.text).toContain('The shop is busy saving something else. This was not saved; try again.');
  other.exec('ROLLBACK');
  expect((await waiting()).status).toBe(303);
  // Let go in time: the change just takes a little longer.
  other.exec('BEGIN EXCLUSIVE');
  const late = post(program.url, '/jobs/L-1/readings', readingsForm('L-1-later', [3, 4]));
  setTimeout(() => other.exec('ROLLBACK'), 700);
  expect((await late).status).toBe(303);
  expect(allIds(dataDir).filter((id) => id.startsWith('L-1'))).toHaveLength(4);
  expect((await program.stop()).code).toBe(0);
  other.exec('BEGIN IMMEDIATE');
  const start2 = await startAndEnd({ dataDir });
  expect([start2.code, start2.out]).toEqual([1, '']);
  expect(start2.err).toMatch(
    /^\S+coverwright\.sqlite is locked by another program\. Stop that program .+ Nothing was changed\.\n$/,
  );
  other.exec('ROLLBACK');
  other.close();
  expect(statSync(fileIn(dataDir)).size).toBeGreaterThan(0);
  tell(
    'Locked by another program',
    '2 changes, 1 start',
    'a sentence, pages open meanwhile; taken once the lock is gone',
  );
});
