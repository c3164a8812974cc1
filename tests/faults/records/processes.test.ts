import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { FILE_NAME, openShop } from '../../../src/records/database/database.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';

interface Said {
  readonly number: string;
  readonly readings: readonly string[];
  readonly added: readonly string[];
}

const root = fileURLToPath(new URL('../../..', import.meta.url));
const WRITER = fileURLToPath(new URL('./writer.ts', import.meta.url));
const OPENER = fileURLToPath(new URL('./opener.ts', import.meta.url));
const BACKUP = fileURLToPath(new URL('../../../src/records/backup/backup.ts', import.meta.url));
const started: ChildProcess[] = [];
let dataDir: string;
beforeEach(() => {
  dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
});
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
  rmSync(dataDir, { recursive: true, force: true });
});

function run(script: string, args: readonly string[], env: NodeJS.ProcessEnv = process.env) {
  const child = spawn(process.execPath, ['--import', 'tsx', script, ...args], { cwd: root, env });
  started.push(child);
  return child;
}

const writer = (who: string, count: number) => run(WRITER, [dataDir, who, String(count)]);

async function whole(child: ReturnType<typeof run>) {
  const [out, err] = await Promise.all([text(child.stdout), text(child.stderr), once(child, 'close')]);
  return { out, err, code: child.exitCode };
}

const saidIn = (out: string): Said[] =>
  out
    .split('\n')
    .filter((line) => line.endsWith('}'))
    .map((line) => JSON.parse(line));

async function expectKept(said: readonly Said[]): Promise<void> {
  const shop = openShop({ dataDir });
  for (const { number, readings } of said) {
    const job = await getJob(shop.db, number);
    expect(job?.readings.map((r) => r.id).filter((id) => !id.startsWith('shared'))).toEqual(readings);
    expect(job?.sections.plan?.body.plannedCutMm).toBe(0.25);
  }
  await shop.close();
  const raw = new Database(join(dataDir, FILE_NAME));
  expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(raw.prepare('PRAGMA foreign_key_check').all()).toEqual([]);
  raw.close();
}

test('two programs that start on an empty folder at once, and both write, lose nothing of one another', async () => {
  const ends = await Promise.all([whole(writer('AB', 15)), whole(writer('CD', 15))]);
  expect(ends.map((end) => [end.code, end.err])).toEqual([
    [0, ''],
    [0, ''],
  ]);
  const said = ends.flatMap((end) => saidIn(end.out));
  expect(new Set(said.map((s) => s.number)).size).toBe(30);
  expect(said.flatMap((s) => s.added).sort()).toEqual(
    Array.from({ length: 15 }, (_, i) => `shared-${i}`).sort(),
  );
  await expectKept(said);
});

test('what was said to be kept is there after the program was killed in the middle of writing, again and again', async () => {
  const said: Said[] = [];
  for (const lines of [1, 6, 13]) {
    const child = writer('AB', 0);
    let heard = 0;
    for await (const line of createInterface({ input: child.stdout })) {
      said.push(JSON.parse(line));
      if (++heard === lines) child.kill('SIGKILL');
    }
    if (child.signalCode === null && child.exitCode === null) await once(child, 'close');
    expect(child.signalCode).toBe('SIGKILL');
  }
  expect(said.length).toBeGreaterThanOrEqual(20);
  await expectKept(said);
});

test('npm run backup copies a shop that another program is writing to, and says so in a line', async () => {
  const busy = writer('AB', 0);
  const lines = createInterface({ input: busy.stdout });
  const before: Said[] = [];
  for await (const line of lines) {
    before.push(JSON.parse(line));
    if (before.length === 8) break;
  }
  busy.stdout.resume();
  const backup = await whole(run(BACKUP, [], { ...process.env, DATA_DIR: dataDir }));
  expect([backup.code, backup.err]).toEqual([0, '']);
  const [, folder] =
    /^Shop in .+\nBacked up and checked: \d+ jobs, \d+ readings, 0 photos, \d+ kB, in (.+)\.\n$/.exec(
      backup.out,
    ) ?? [];
  expect(busy.exitCode).toBeNull();
  busy.kill('SIGKILL');
  await once(busy, 'close');
  rmSync(join(dataDir, FILE_NAME));
  for (const end of ['-wal', '-shm']) rmSync(join(dataDir, FILE_NAME + end), { force: true });
  const copy = new Database(join(folder ?? '', FILE_NAME), { readonly: true });
  await copy.backup(join(dataDir, FILE_NAME));
  copy.close();
  await expectKept(before);
});

test('npm run backup that cannot be made says why in one line and fails', async () => {
  const nothing = await whole(run(BACKUP, [], { ...process.env, DATA_DIR: dataDir }));
  expect([nothing.code, nothing.out]).toEqual([1, '']);
  expect(nothing.err).toBe(
    `There is no shop in ${dataDir}. Set DATA_DIR to the folder the program uses; it prints it at start.\n`,
  );
  await openShop({ dataDir }).close();
  writeFileSync(join(dataDir, 'stick'), 'a file');
  const nowhere = await whole(run(BACKUP, [join(dataDir, 'stick')], { ...process.env, DATA_DIR: dataDir }));
  expect([nowhere.code, nowhere.out]).toEqual([1, `Shop in ${dataDir}\n`]);
  expect(nowhere.err).toMatch(/^The backup could not be written to .+\.\n$/);
  const tilde = await whole(run(BACKUP, [], { ...process.env, DATA_DIR: '~/shop' }));
  expect([tilde.code, tilde.err.split('\n').length]).toEqual([1, 2]);
  expect(readdirSync(dataDir)).not.toContain('backups');
});

/** Rights do not bind the superuser, so for it the shop is opened as somebody else. */
const NOBODY = process.getuid?.() === 0 ? '65534' : '';

test.each([
  ['whose folder may not be written to', () => chmodSync(dataDir, 0o555)],
  ['whose file may not be read', () => chmodSync(join(dataDir, FILE_NAME), 0o000)],
  ['whose file may not be written to', () => chmodSync(join(dataDir, FILE_NAME), 0o444)],
])('a shop %s says so, and is left as it is', async (_, close) => {
  await openShop({ dataDir }).close();
  const before = readFileSync(join(dataDir, FILE_NAME));
  chmodSync(dataDir, 0o777);
  chmodSync(join(dataDir, FILE_NAME), 0o666);
  expect((await whole(run(OPENER, [dataDir, NOBODY]))).out).toBe('opened\n');
  close();
  const refused = await whole(run(OPENER, [dataDir, NOBODY]));
  chmodSync(dataDir, 0o700);
  chmodSync(join(dataDir, FILE_NAME), 0o600);
  expect([refused.code, refused.err]).toEqual([0, '']);
  expect(refused.out).toMatch(/^not-writable: Nothing can be saved in .+\.\n$/);
  expect(readFileSync(join(dataDir, FILE_NAME)).equals(before)).toBe(true);
});

test('a folder that can never be made is refused at once', async () => {
  const child = run(OPENER, ['/proc/coverwright/shop', '']);
  const limit = setTimeout(() => child.kill('SIGKILL'), 200_000);
  const { out, code } = await whole(child);
  clearTimeout(limit);
  expect(code).toBe(0);
  expect(out).toMatch(/^not-writable: /);
});
