import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, inject } from 'vitest';
import type { Asked } from '../inside/instrument.ts';

export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const READY_MS = 200_000;

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
  readonly err: string;
}

/** The program, running as a process of its own. */
export interface Program {
  readonly url: string;
  readonly port: number;
  readonly pid: number;
  /** What it printed so far. */
  said(): { readonly out: string; readonly err: string };
  /** Asks what was put inside it; see inside/instrument.ts. */
  ask<T>(question: Asked): Promise<T>;
  kill(signal: NodeJS.Signals): void;
  readonly ended: Promise<Ended>;
  /** Stops it as a person would, and waits. */
  stop(): Promise<Ended>;
}

export interface How {
  readonly dataDir: string;
  readonly demo?: boolean;
  /** Modules of `inside` that are loaded before the program. */
  readonly inside?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  /** A command and its arguments that runs the rest of the line. */
  readonly under?: readonly string[];
  /** A pipe at file 3, for what is said with the last breath. */
  readonly lastWords?: (text: string) => void;
}

const running = new Set<ChildProcess>();
const folders: string[] = [];
afterEach(async () => {
  for (const child of running) child.kill('SIGKILL');
  await Promise.all([...running].map((child) => once(child, 'close')));
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder that is gone after the test. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'coverwright-faults-'));
  folders.push(folder);
  return folder;
}

/** A process that does not outlive the test. */
export function spawnBounded(command: string, args: readonly string[], options: SpawnOptions): ChildProcess {
  const child = spawn(command, args, options);
  running.add(child);
  child.once('close', () => running.delete(child));
  return child;
}

/** What node is to run: the built copy where there is one, else the source. */
export function nodeArguments(module: string): string[] {
  const built: string | undefined = inject('built');
  if (built === undefined) return ['--import', 'tsx', join(ROOT, module)];
  return [join(built, module.replace(/\.ts$/, '.js'))];
}

function launch(how: How): {
  child: ChildProcess;
  said: { out: string; err: string };
  ended: Promise<Ended>;
} {
  const preloads = (how.inside ?? []).flatMap((name) => [
    '--import',
    nodeArguments(`tests/faults/inside/${name}.ts`).at(-1)!,
  ]);
  const main = nodeArguments('src/main.ts');
  const line = [
    ...(how.under ?? []),
    process.execPath,
    '--expose-gc',
    ...main.slice(0, -1),
    ...preloads,
    main.at(-1)!,
  ];
  const { NODE_OPTIONS: _, ...env } = process.env;
  const child = spawnBounded(line[0]!, line.slice(1), {
    cwd: ROOT,
    env: {
      ...env,
      PORT: '0',
      HOST: '127.0.0.1',
      DATA_DIR: how.dataDir,
      DEMO: how.demo === false ? '0' : '1',
      ...how.env,
    },
    stdio: ['ignore', 'pipe', 'pipe', 'pipe', 'ipc'],
  });
  const said = { out: '', err: '' };
  child.stdout!.setEncoding('utf8').on('data', (text: string) => {
    said.out += text;
  });
  child.stderr!.setEncoding('utf8').on('data', (text: string) => {
    said.err += text;
  });
  const third = child.stdio[3];
  if (third && 'setEncoding' in third) {
    third.setEncoding('utf8').on('data', (text: string) => how.lastWords?.(text));
  }
  const ended = once(child, 'close').then(
    (): Ended => ({ code: child.exitCode, signal: child.signalCode, ...said }),
  );
  return { child, said, ended };
}

/** Starts the program and waits until it serves. */
export async function start(how: How): Promise<Program> {
  const { child, said, ended } = launch(how);
  const url = await new Promise<string>((resolve, reject) => {
    const limit = setTimeout(
      () => reject(new Error(`The program did not start in time: ${said.err}`)),
      READY_MS,
    );
    const look = () => {
      const found = /is ready: (http:\S+)/.exec(said.out)?.[1];
      if (found === undefined) return;
      clearTimeout(limit);
      resolve(found);
    };
    child.stdout!.on('data', look);
    void ended.then(({ code, signal, err }) => {
      clearTimeout(limit);
      reject(new Error(`The program ended (${code ?? signal}) instead of starting: ${err}`));
    });
  });
  let asked = 0;
  return {
    url,
    port: Number(new URL(url).port),
    pid: child.pid!,
    said: () => said,
    ask: <T>(question: Asked) =>
      new Promise<T>((resolve) => {
        const number = ++asked;
        const hear = (answer: { number: number; value: T }) => {
          if (answer.number !== number) return;
          child.off('message', hear);
          resolve(answer.value);
        };
        child.on('message', hear);
        child.send({ number, question });
      }),
    kill: (signal) => void child.kill(signal),
    ended,
    stop: () => {
      child.kill('SIGTERM');
      return ended;
    },
  };
}

/** Starts a program that is expected to end by itself; at the latest it is killed once it has printed `upTo`. */
export async function startAndEnd(how: How & { readonly upTo?: RegExp }): Promise<Ended> {
  const { child, said, ended } = launch(how);
  child.stdout!.on('data', () => {
    if (how.upTo?.test(said.out)) child.kill('SIGTERM');
  });
  const limit = setTimeout(() => child.kill('SIGKILL'), READY_MS);
  try {
    return await ended;
  } finally {
    clearTimeout(limit);
  }
}
