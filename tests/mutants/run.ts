import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { MutantResult } from '@stryker-mutator/api/core';
import { Stryker } from '@stryker-mutator/core';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { EQUIVALENTS } from './equivalents.ts';
import { type Change, keyOf, tableOf, told } from './table.ts';

/**
 * Breaks lines one at a time and asks whether a test notices: `npm run test:mutants` tries 300 changes of `src` and
 * `views`, drawn by chance; `npm run test:mutants -- src/calc/judge views/drawings` all of each folder or file named;
 * `--sample 40` so many of each, `--seed 7` the same ones again; `--tests tests/calc,tests/laws` asks those tests alone,
 * which is quick while one writes them; `--at-once 2` tries two at a time. Stryker makes the changes, and runs for each
 * only the tests that pass by it, the nearest first (`nearest.ts`).
 */
const root = fileURLToPath(new URL('../..', import.meta.url));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string' },
    seed: { type: 'string' },
    tests: { type: 'string' },
    'at-once': { type: 'string' },
  },
});
const groups = positionals.length > 0 ? positionals.map((place) => [place]) : [['src', 'views']];
const seed = Number(values.seed ?? Date.now() % 1_000_000_007);
const share = Number(values['at-once'] ?? 1);
const sample = Number(values.sample ?? (positionals.length > 0 ? Infinity : 300));
if (!Number.isSafeInteger(seed) || Number.isNaN(sample) || !Number.isSafeInteger(share))
  throw new Error('Seed, sample and at-once are whole numbers.');

process.chdir(root);
const drawn: Change[] = [];
for (const places of groups) {
  const all = await changesIn(places.flatMap(filesIn).toSorted());
  drawn.push(...draw(all, sample, seed));
  console.log(
    `Seed ${seed}: ${Math.min(sample, all.length)} of ${all.length} changes of ${places.join(', ')}.`,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'coverwright-mutants-'));
try {
  const asked = join(folder, 'asked.json');
  writeFileSync(asked, JSON.stringify(drawn.map(keyOf)));
  process.env.MUTANTS_ASKED = asked;
  process.env.MUTANTS_ROOT = root;
  process.env.MUTANTS_TESTS = values.tests ?? '';
  process.env.MUTANTS_TIMES = join(folder, 'times.json');
  mkdirSync(join(folder, 'work'));
  const results = await new Stryker({
    mutate: drawn.map(
      ({ file, location: { start, end } }) =>
        `${file}:${start.line + 1}:${start.column}-${end.line + 1}:${end.column}`,
    ),
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutants/vitest.config.ts' },
    plugins: ['@stryker-mutator/vitest-runner', './tests/mutants/askedOnly.mjs'],
    checkers: ['asked-only'],
    coverageAnalysis: 'perTest',
    concurrency: share,
    // Against hanging only; see `byTheClock`.
    timeoutMS: 120_000,
    timeoutFactor: 4,
    dryRunTimeoutMinutes: 60,
    ignorePatterns: ['dist', 'tests/pictures'],
    // vitest does not check types, and some tests read the first line of a file.
    disableTypeChecks: false,
    warnings: { slow: false, preprocessorErrors: true, unknownOptions: true, unserializableOptions: true },
    reporters: ['progress-append-only', 'at-once'],
    tempDirName: join(folder, 'work'),
    allowConsoleColors: false,
  }).runMutationTest();
  // Stryker counts from nothing while it works and from one when it reports.
  const tried = results
    .filter(({ status }) => status !== 'CompileError')
    .map((result) => changeOf({ ...result, location: fromNothing(result.location) }));
  console.log(told(tried, EQUIVALENTS));
  const { text, shares } = tableOf(tried, EQUIVALENTS, seed);
  console.log(text);
  if (shares.src < 0.92 || shares.views < 0.85) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function filesIn(place: string): string[] {
  if (/\.tsx?$/.test(place)) return [place];
  return readdirSync(place, { recursive: true, encoding: 'utf8' })
    .filter((name) => /(?<!\.d)\.tsx?$/.test(name))
    .map((name) => `${place}/${name}`);
}

/** Every change Stryker would make in these files. */
async function changesIn(paths: readonly string[]): Promise<Change[]> {
  const quiet = () => {};
  const logger = {
    isTraceEnabled: () => false,
    isDebugEnabled: () => false,
    isInfoEnabled: () => false,
    isWarnEnabled: () => false,
    isErrorEnabled: () => false,
    isFatalEnabled: () => false,
    trace: quiet,
    debug: quiet,
    info: quiet,
    warn: quiet,
    error: quiet,
    fatal: quiet,
  };
  const { mutants } = await new Instrumenter(logger).instrument(
    paths.map((path) => ({ name: join(root, path), content: readFileSync(path, 'utf8'), mutate: true })),
    { ignorers: [], excludedMutations: [], plugins: null, noHeader: false },
  );
  return mutants
    .filter(({ status }) => status !== 'Ignored')
    .map((mutant) => changeOf({ ...mutant, status: 'Pending' }));
}

function fromNothing({ start, end }: MutantResult['location']): MutantResult['location'] {
  const less = ({ line, column }: typeof start) => ({ line: line - 1, column: column - 1 });
  return { start: less(start), end: less(end) };
}

function changeOf({
  fileName,
  location,
  mutatorName,
  replacement,
  status,
  statusReason,
}: Partial<MutantResult>): Change {
  const file = fileName!.slice(root.length).replace(/^\//, '');
  const { start, end } = location!;
  const lines = readFileSync(join(root, file), 'utf8')
    .split('\n')
    .slice(start.line, end.line + 1);
  lines[lines.length - 1] = lines.at(-1)!.slice(0, end.column);
  lines[0] = lines[0]!.slice(start.column);
  return {
    file,
    location: location!,
    mutator: mutatorName!,
    was: lines.join('\n'),
    becomes: replacement!,
    status: status!,
    byTheClock: byTheClock(status!, statusReason ?? ''),
  };
}

/** Only time said so, which a loaded machine may have taken; an endless loop is counted in turns instead. */
function byTheClock(status: MutantResult['status'], reason: string): boolean {
  return status === 'Timeout' ? !reason.startsWith('Hit limit') : /timed out in \d+ ?ms/.test(reason);
}

/** So many of them, the same ones for the same seed (mulberry32, public domain). */
function draw(from: readonly Change[], count: number, start: number): Change[] {
  if (count >= from.length) return [...from];
  let state = start >>> 0;
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const left = [...from];
  return Array.from(
    { length: Math.min(count, from.length) },
    () => left.splice(Math.floor(random() * left.length), 1)[0]!,
  );
}
