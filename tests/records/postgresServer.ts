import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';

const START_MS = 60_000;
/** PostgreSQL does not run as the superuser; these accounts are tried in its place. */
const OTHER_ACCOUNTS = ['postgres', 'nobody'];
/** Where its folder may lie: the account it runs under must be able to enter what lies above. */
const PLACES = [tmpdir(), '/tmp', '/var/tmp', '/dev/shm'];

/** Nothing here is to be kept, so nothing waits for a disk. */
const SETTINGS = {
  listen_addresses: '127.0.0.1',
  fsync: 'off',
  full_page_writes: 'off',
  max_connections: '200',
  shared_buffers: '32MB',
  // Nobody asks through a socket, whose path may be too long for one.
  unix_socket_directories: '',
};

/** Its own alarms do not go off under a library that bends the clock for the tests. */
const { LD_PRELOAD: _, ...ITS_ENV } = process.env;

export interface PostgresServer {
  readonly url: string;
  /** As if the power had failed. */
  kill(): Promise<void>;
  /** Again on the same port, with what it had kept. */
  start(): Promise<void>;
  /** Stops it, and throws away what it had kept. */
  remove(): Promise<void>;
}

/** The folder with PostgreSQL's programs; null when the machine has none. */
export function postgresPrograms(): string | null {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const folders = [
    ...(process.env.PATH ?? '').split(delimiter),
    ...versions.map((version) => join(debian, version, 'bin')),
  ];
  return (
    folders.find((folder) => ['initdb', 'postgres'].every((name) => existsSync(join(folder, name)))) ?? null
  );
}

/** A PostgreSQL of the tests' own, in a folder of its own, on a free port of this machine only. */
export async function startPostgres(
  programs: string,
  settings: Partial<typeof SETTINGS> = {},
): Promise<PostgresServer> {
  const { folder, account } = makePlace();
  const made = spawnSync(
    join(programs, 'initdb'),
    ['-D', join(folder, 'data'), '-U', 'shop', '-A', 'trust', '-E', 'UTF8', '--locale=C', '-N'],
    { ...account, cwd: folder, encoding: 'utf8' },
  );
  if (made.status !== 0) {
    rmSync(folder, { recursive: true, force: true });
    throw new Error(`initdb failed: ${(made.error?.message ?? made.stderr).trim()}`);
  }
  const port = await freePort();
  const url = `postgres://shop@127.0.0.1:${port}/postgres`;
  const options = Object.entries({ ...SETTINGS, ...settings, port });
  const args = options.flatMap(([name, value]) => ['-c', `${name}=${value}`]);
  let running = await begin();

  async function begin() {
    // It ends when the shell loses its input: also when the tests are killed.
    const script = '"$@" 2>"$0" & server=$!; read -r how || how=QUIT; kill -s $how $server; wait $server';
    const log = join(folder, 'log');
    const child = spawn(
      '/bin/sh',
      ['-c', script, log, join(programs, 'postgres'), '-D', join(folder, 'data'), ...args],
      { ...account, cwd: folder, env: ITS_ENV, stdio: ['pipe', 'ignore', 'ignore'] },
    );
    for (let waited = 0; !(await answers(url)); waited += 50) {
      if (child.exitCode !== null || waited > START_MS) {
        child.stdin.end();
        const said = existsSync(log) ? readFileSync(log, 'utf8').trim().split('\n').slice(-3).join(' ') : '';
        throw new Error(`PostgreSQL did not start: ${said}`);
      }
      await pause(50);
    }
    return child;
  }

  async function end(signal: string): Promise<void> {
    if (running.exitCode !== null) return;
    running.stdin.end(`${signal}\n`);
    await once(running, 'close');
  }

  return {
    url,
    kill: () => end('QUIT'),
    start: async () => {
      running = await begin();
    },
    remove: async () => {
      await end('QUIT');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

interface Account {
  readonly uid?: number;
  readonly gid?: number;
}

/** A new folder, and an account that may run PostgreSQL in it. */
function makePlace(): { readonly folder: string; readonly account: Account } {
  const accounts = accountsAllowed();
  for (const place of PLACES) {
    if (!existsSync(place)) continue;
    const folder = mkdtempSync(join(place, 'coverwright-postgres-'));
    for (const account of accounts) {
      if (account.uid !== undefined) chownSync(folder, account.uid, account.gid ?? 0);
      if (reaches(account, folder)) return { folder, account };
    }
    rmSync(folder, { recursive: true });
  }
  throw new Error(
    accounts.length === 0
      ? 'there is no account but the superuser to run it under'
      : `no account that may run it can enter a folder in ${PLACES.join(', ')}`,
  );
}

function accountsAllowed(): readonly Account[] {
  if (process.getuid?.() !== 0) return [{}];
  return OTHER_ACCOUNTS.flatMap((name) => {
    const [uid, gid] = ['-u', '-g'].map((what) =>
      Number(spawnSync('id', [what, name], { encoding: 'utf8' }).stdout),
    );
    return uid && gid ? [{ uid, gid }] : [];
  });
}

/** Whether somebody can come to a folder by its path, and write into it. */
function reaches(account: Account, folder: string): boolean {
  const tried = spawnSync('/bin/sh', ['-c', 'cd / && cd "$0" && test -w .', folder], {
    ...account,
    cwd: '/',
  });
  return tried.status === 0;
}

async function freePort(): Promise<number> {
  const taken = createServer().listen(0, '127.0.0.1');
  await once(taken, 'listening');
  const { port } = taken.address() as AddressInfo;
  taken.close();
  await once(taken, 'close');
  return port;
}

/** Whether a database can be talked to. */
export async function answers(url: string): Promise<boolean> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  try {
    await client.connect();
    return true;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
}
