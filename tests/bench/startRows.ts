import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { type Child, run } from './children.ts';
import { ask } from './load.ts';
import { PAGES } from './pages.ts';
import { atMost, type Row, under } from './rows.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const BUILT = 'dist/src/main.js';

/** A demo shop with so many invented jobs beside its own, in a folder of its own. */
function shopOf(jobs: number): string {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-bench-'));
  const words = [join(ROOT, 'dist/src/demo.js'), '--jobs', String(jobs)];
  const { status } = spawnSync(process.execPath, words, { env: { ...process.env, DATA_DIR: dataDir } });
  if (status !== 0) throw new Error(`The shop of ${jobs} jobs could not be made.`);
  return dataDir;
}

async function started(dataDir: string): Promise<{ program: Child; firstMs: number }> {
  const from = performance.now();
  const program = await run(BUILT, { env: { DATA_DIR: dataDir } });
  await ask({ url: `${program.url}/health` });
  return { program, firstMs: performance.now() - from };
}

/** From the start of the built program to its first answer, and its memory at rest. */
export async function startRows(): Promise<Row[]> {
  const dataDir = shopOf(1000);
  const firsts: number[] = [];
  let resident: number | null = null;
  for (let i = 0; i < 3; i++) {
    const { program, firstMs } = await started(dataDir);
    firsts.push(firstMs);
    await ask({ url: `${program.url}/` });
    await pause(1000);
    resident = program.residentMb();
    await program.stop();
  }
  rmSync(dataDir, { recursive: true, force: true });
  return [
    under('start to first answer, 1,000 jobs', [Math.min(...firsts) / 1000, 's'], 0.8),
    ...(resident === null ? [] : [under('memory at rest', [resident, 'MB'], 170)]),
  ];
}

/** What a day asks of the program, over and over; the numbers are of the demo's jobs and of those cast from them. */
const MIXED = [
  '/',
  '/jobs',
  '/jobs?text=face',
  '/jobs/1001/sheet',
  '/jobs/1001/measure',
  '/catalogue',
  ...Object.values(PAGES),
] as const;

/** Whether the memory still grows after `late` minutes of mixed load, beside what it was after `early`. */
export async function memoryRow(early: number, late: number): Promise<readonly Row[]> {
  const dataDir = shopOf(1000);
  const { program } = await started(dataDir);
  const from = performance.now();
  const until = async (minutes: number) => {
    for (let i = 0; performance.now() - from < minutes * 60_000; i++) {
      const paths = [MIXED[i % MIXED.length]!, `/jobs/${1001 + (i % 900)}`];
      await Promise.all(paths.map((path) => ask({ url: program.url + path })));
    }
    return program.residentMb();
  };
  const [before, after] = [await until(early), await until(late)];
  await program.stop();
  rmSync(dataDir, { recursive: true, force: true });
  if (before === null || after === null) return [];
  const what = `memory after ${late} minutes of mixed load`;
  return [atMost(what, [after, 'MB'], [before, `after ${early}`], 1.1)];
}

const ASKED: readonly (readonly [what: string, path: string, most: number])[] = [
  ['list of jobs', '/jobs', 4],
  ['front page', '/', 4],
  ['search: a number', '/jobs?text=1005', 1.5],
  ['search: no hit', '/jobs?text=zebrafish', 1.5],
  ['search: a rare word', '/jobs?text=customer+5+demo', 1.5],
  ['search: a word in every job', '/jobs?text=face', 4],
];

/** The same questions in a shop of 50,000 jobs and in one of 100, one after another. */
export async function bigRows(): Promise<Row[]> {
  const folders = [shopOf(100), shopOf(50_000)];
  const rows: Row[] = [];
  const programs = [];
  for (const dataDir of folders) programs.push((await started(dataDir)).program);
  const [small, big] = programs as [Child, Child];
  for (const [what, path, most] of ASKED) {
    const told = 'in a shop of 100';
    rows.push(
      atMost(
        `${what}, 50,000 jobs`,
        [await leastMs(big, path), 'ms'],
        [await leastMs(small, path), told],
        most,
      ),
    );
  }
  for (const program of programs) await program.stop();
  for (const dataDir of folders) rmSync(dataDir, { recursive: true, force: true });
  return rows;
}

async function leastMs({ url }: Child, path: string): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 12; i++) {
    const from = performance.now();
    await ask({ url: url + path });
    least = Math.min(least, performance.now() - from);
  }
  return least;
}
