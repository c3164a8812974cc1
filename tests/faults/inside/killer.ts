/**
 * Loaded into the program before it starts, by tests alone: a thread that kills the process at a chosen moment of a
 * transaction, to the microsecond. KILL_WHERE is `transaction` or `commit`, KILL_AFTER how many commits to let pass once
 * it serves; or it is `tables`, the next change of them. KILL_PART is how far into it, 0 to 1. The last words, on file 3, say what the process was doing.
 */
import { writeSync } from 'node:fs';
import { Server } from 'node:net';
import { fileURLToPath } from 'node:url';
import { isMainThread, Worker, workerData } from 'node:worker_threads';
import Database from 'better-sqlite3';

const DELAY = 0;
const DOING = 1;
/** About as long as a change of the tables and its commit take. */
const TABLES_US = 6000;
const WORDS = ['nothing', 'transaction', 'commit'];
const [NOTHING, TRANSACTION, COMMIT] = [0, 1, 2];

function microseconds(): number {
  return Number(process.hrtime.bigint() / 1000n);
}

function waitAndKill(shared: Int32Array): void {
  Atomics.wait(shared, DELAY, 0);
  const end = microseconds() + Atomics.load(shared, DELAY);
  while (microseconds() < end);
  writeSync(3, `${WORDS[Atomics.load(shared, DOING)]}\n`);
  process.kill(process.pid, 'SIGKILL');
}

function watch(): void {
  const { KILL_WHERE: where, KILL_AFTER: after, KILL_PART: part, KILL_CHECKPOINT: checkpoint } = process.env;
  const shared = new Int32Array(new SharedArrayBuffer(8));
  new Worker(fileURLToPath(import.meta.url), { workerData: shared, execArgv: [] }).unref();
  const lasts = { transaction: 2000, commit: 1000 };
  let commits = 0;
  let begun = 0;
  let counting = false;
  const listen = Server.prototype.listen;
  Server.prototype.listen = function (this: Server, ...args: Parameters<typeof listen>) {
    counting = true;
    return listen.apply(this, args);
  } as typeof listen;
  const arm = (typicalMicroseconds: number) => {
    Atomics.store(shared, DELAY, Math.max(1, Math.round(Number(part) * typicalMicroseconds)));
    Atomics.notify(shared, DELAY);
  };
  const smooth = (old: number, now: number) => 0.7 * old + 0.3 * now;

  const exec = Database.prototype.exec;
  Database.prototype.exec = function (this: Database.Database, sql: string) {
    const changes = /CREATE (TABLE|INDEX|TRIGGER)/.test(sql) && sql.length > 300;
    if (where === 'tables' && changes && this.name.endsWith('coverwright.sqlite')) arm(TABLES_US);
    return exec.call(this, sql);
  };

  const prepare = Database.prototype.prepare;
  Database.prototype.prepare = function (this: Database.Database, sql: string) {
    const statement = prepare.call(this, sql);
    if (!this.name.endsWith('coverwright.sqlite')) return statement;
    const run = statement.run.bind(statement) as (...args: unknown[]) => Database.RunResult;
    if (/^begin\b/i.test(sql)) {
      statement.run = (...args: unknown[]) => {
        const result = run(...args);
        begun = microseconds();
        Atomics.store(shared, DOING, TRANSACTION);
        if (where === 'transaction' && counting && commits === Number(after)) arm(lasts.transaction);
        return result;
      };
    }
    if (/^commit\b/i.test(sql)) {
      statement.run = (...args: unknown[]) => {
        // Few pages, so that copying the log into the file is often part of what is killed.
        if (checkpoint) this.pragma(`wal_autocheckpoint = ${checkpoint}`);
        const from = microseconds();
        lasts.transaction = smooth(lasts.transaction, from - begun);
        Atomics.store(shared, DOING, COMMIT);
        if (where === 'commit' && counting && commits === Number(after)) arm(lasts.commit);
        const result = run(...args);
        Atomics.store(shared, DOING, NOTHING);
        lasts.commit = smooth(lasts.commit, microseconds() - from);
        if (counting) commits++;
        return result;
      };
    }
    return statement;
  } as typeof prepare;
}

if (isMainThread) watch();
else waitAndKill(workerData);
