import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as pause } from 'node:timers/promises';
import type Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { SEED } from '../seed.ts';
import type { Kept, Stay } from './inside/witness.ts';
import { ask } from './kit/http.ts';
import { newFolder, nodeArguments, ROOT, spawnBounded, start } from './kit/program.ts';
import { random } from './kit/random.ts';
import { faultsIn, look } from './kit/shop.ts';
import { tell } from './kit/tell.ts';

const IN_COMMIT = 40;
const IN_TRANSACTION = 8;
const ANYWHERE = 8;
const KILLS = IN_COMMIT + IN_TRANSACTION + ANYWHERE;
/** Of the kills aimed into a commit, those that must have landed there. */
const LEAST_IN_COMMIT = 20;

function aims(): readonly ('commit' | 'transaction' | 'anywhere')[] {
  const all = [
    ...Array<'commit'>(IN_COMMIT).fill('commit'),
    ...Array<'transaction'>(IN_TRANSACTION).fill('transaction'),
    ...Array<'anywhere'>(ANYWHERE).fill('anywhere'),
  ];
  return all
    .map((aim) => ({ aim, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ aim }) => aim);
}

function startWitness(log: string) {
  const child = spawnBounded(process.execPath, [...nodeArguments('tests/faults/inside/witness.ts'), log], {
    cwd: ROOT,
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const lines = createInterface({ input: child.stdout! })[Symbol.asyncIterator]();
  return {
    /** Sends the people to the program; ends when it has gone. */
    workAt: async (url: string): Promise<Stay> => {
      child.stdin!.write(`${url}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error('The witness ended.');
      return JSON.parse(value);
    },
    end: () => child.stdin!.end(),
  };
}

const acknowledgedIn = (log: string): Kept[] =>
  readFileSync(log, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));

const READING = `SELECT count(*) AS n FROM reading JOIN job ON job.id = job_id
  WHERE reading.id = ? AND number = ?`;
const DECISION = `SELECT count(*) AS n FROM job_revision JOIN job ON job.id = job_id
  WHERE number = ? AND what = 'decision' AND json_extract(body, '$.reason') = ?`;

/** What was acknowledged and is not there just once. */
function lost(raw: Database.Database, kept: readonly Kept[]): unknown[] {
  const count = (sql: string, ...args: string[]) =>
    raw.prepare<string[], { n: number }>(sql).get(...args)?.n ?? 0;
  const there = (one: Kept): boolean => {
    switch (one.kind) {
      case 'job':
        return count('SELECT count(*) AS n FROM job WHERE number = ?', one.number) === 1;
      case 'readings':
        return one.ids.every((id) => count(READING, id, one.number) === 1);
      case 'decision':
        return count(DECISION, one.number, one.reason) === 1;
      case 'wrong':
        return false;
    }
  };
  return kept.filter((one) => !there(one));
}

/** The same thing twice under other names. */
function doubles(raw: Database.Database): unknown[] {
  return [
    ...raw
      .prepare(
        `SELECT job_id, angle_deg, radius_mm, count(*) FROM reading JOIN job ON job.id = job_id WHERE job.demo = 0
         GROUP BY job_id, angle_deg, radius_mm, kind HAVING count(*) > 1`,
      )
      .all(),
    ...raw
      .prepare(
        `SELECT job_id, json_extract(r.body, '$.reason') AS reason, count(*) FROM job_revision r
         JOIN job ON job.id = job_id WHERE what = 'decision' AND job.demo = 0 GROUP BY 1, 2 HAVING count(*) > 1`,
      )
      .all(),
  ];
}

test(`killed ${KILLS} times in a stream of readings and decisions, the program loses nothing it acknowledged`, async () => {
  console.log(`seed ${SEED}`);
  const dataDir = newFolder();
  const log = join(newFolder(), 'acknowledged');
  const witness = startWitness(log);
  const last = { commit: 0, transaction: 0, nothing: 0 };
  const total = { acknowledged: 0, sentAgain: 0 };
  for (const [round, aim] of [...aims(), 'none' as const].entries()) {
    const program = await start({
      dataDir,
      inside: ['killer'],
      env: {
        KILL_WHERE: aim,
        KILL_AFTER: String(Math.floor(random() * 20)),
        KILL_PART: String(random() * 0.95),
        ...(round % 2 === 0 && { KILL_CHECKPOINT: '8' }),
      },
      lastWords: (words) => {
        last[words.trim() as keyof typeof last]++;
      },
    });
    const faults = look(dataDir, (raw) => [
      ...faultsIn(raw),
      ...(round === 0 ? [] : lost(raw, acknowledgedIn(log))),
      ...doubles(raw),
    ]);
    expect(faults, `after kill ${round}`).toEqual([]);
    if (aim === 'none') {
      const decided = acknowledgedIn(log).findLast((one) => one.kind === 'decision');
      if (decided?.kind !== 'decision') throw new Error('No decision was ever acknowledged.');
      expect((await ask(`${program.url}/jobs/${decided.number}`)).text).toContain(decided.reason);
      expect((await program.stop()).code).toBe(0);
      break;
    }
    const gone = witness.workAt(program.url);
    if (aim === 'anywhere') {
      await pause(20 + random() * 400);
      program.kill('SIGKILL');
    }
    expect((await program.ended).signal).toBe('SIGKILL');
    const stay = await gone;
    total.acknowledged += stay.acknowledged;
    total.sentAgain += stay.sentAgain;
  }
  witness.end();
  const kinds = acknowledgedIn(log).map((one) => one.kind);
  console.log(
    `${total.acknowledged} writes acknowledged, ${total.sentAgain} sent again; killed in a commit ${last.commit} times, elsewhere in a transaction ${last.transaction}, between them ${last.nothing + ANYWHERE}`,
  );
  expect(kinds.filter((kind) => kind === 'decision').length).toBeGreaterThan(KILLS);
  expect(kinds.filter((kind) => kind === 'readings').length).toBeGreaterThan(KILLS);
  expect(total.sentAgain).toBeGreaterThan(KILLS);
  expect(last.commit).toBeGreaterThanOrEqual(LEAST_IN_COMMIT);
  tell(
    'Killed (`kill -9`) in a stream of readings and decisions',
    `${KILLS} kills, ${LEAST_IN_COMMIT} or more inside a commit`,
    'every acknowledged write is there once, the others whole or not at all; sending again is harmless',
  );
}, 1_800_000);
