import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const CAN_HOLD = spawnSync('taskset', ['-c', '0', 'true']).status === 0;

export interface Child {
  readonly url: string;
  /** From its start to the line that says its address. */
  readonly readyMs: number;
  /** Of its whole memory that is in use, in MB; null where the system does not say. */
  residentMb(): number | null;
  stop(): Promise<void>;
}

export interface RunAs {
  readonly env?: Readonly<Record<string, string>>;
  /** The core it is held to, where the system can. */
  readonly onCore?: number;
}

/** Runs a module of the sources, or a built one, until it prints its address. */
export async function run(module: string, { env = {}, onCore }: RunAs = {}): Promise<Child> {
  const from = performance.now();
  const loader = module.endsWith('.ts') ? ['--import', 'tsx'] : [];
  const node = [process.execPath, ...loader, join(ROOT, module)];
  const [program = '', ...words] =
    onCore !== undefined && CAN_HOLD ? ['taskset', '-c', `${onCore}`, ...node] : node;
  const child = spawn(program, words, {
    cwd: ROOT,
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1', BACKUP_AT: 'off', ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const url = await addressOf(child);
  return {
    url,
    readyMs: performance.now() - from,
    residentMb: () => residentOf(child.pid),
    stop: () =>
      new Promise((resolve) => {
        child.once('close', () => resolve());
        child.kill('SIGTERM');
      }),
  };
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const found = /(http:\/\/127\.0\.0\.1:\d+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    child.once('close', (code) => reject(new Error(`It ended with ${code} before it was ready: ${said}`)));
  });
}

function residentOf(pid: number | undefined): number | null {
  try {
    const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kilobytes === undefined ? null : Number(kilobytes) / 1024;
  } catch {
    return null;
  }
}
