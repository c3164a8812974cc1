import { Worker } from 'node:worker_threads';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { StiffnessAnswer, StiffnessInput } from '../../../shared/words/stiffness.ts';

export type WorkerAnswer =
  | { readonly answer: StiffnessAnswer }
  | { readonly code: string; readonly faults: readonly Fault[] };

/** Nobody waits for it any more: the page was left, or the slider moved on. */
export class NotWanted extends Error {}

/** The worker died of it twice, or took too long. */
export class BendingFailed extends Error {}

interface Task {
  readonly key: string;
  readonly input: StiffnessInput;
  wanted: number;
  tries: number;
  readonly promise: Promise<StiffnessAnswer>;
  readonly resolve: (answer: StiffnessAnswer) => void;
  readonly reject: (error: Error) => void;
}

export interface BendingPoolOptions {
  readonly worker?: URL;
  /** Answers kept; the one asked for longest ago goes first. About 15 KB each. */
  readonly keep?: number;
  readonly timeLimitMs?: number;
}

const MOST_TRIES = 2;

/**
 * One thread that works out how covers bend, one cover at a time and in turn, and the answers it gave, by their input.
 * The thread begins with the first question, is replaced when it dies or takes too long, and keeps no program alive
 * while it has nothing to do.
 */
export class BendingPool {
  readonly #worker: URL;
  readonly #keep: number;
  readonly #timeLimitMs: number;
  readonly #kept = new Map<string, StiffnessAnswer>();
  readonly #tasks = new Map<string, Task>();
  readonly #queue: Task[] = [];
  #thread: Worker | null = null;
  #running: Task | null = null;
  #timer: NodeJS.Timeout | undefined;

  constructor({ worker = OWN_WORKER, keep = 400, timeLimitMs = 10_000 }: BendingPoolOptions = {}) {
    this.#worker = worker;
    this.#keep = keep;
    this.#timeLimitMs = timeLimitMs;
  }

  /** Throws a Refusal for what is no cover, NotWanted once `signal` aborts, BendingFailed where the thread could not. */
  async bend(input: StiffnessInput, signal?: AbortSignal): Promise<StiffnessAnswer> {
    if (signal?.aborted) throw new NotWanted();
    const key = JSON.stringify(input);
    const kept = this.#kept.get(key);
    if (kept !== undefined) {
      this.#kept.delete(key);
      this.#kept.set(key, kept);
      return kept;
    }
    const task = this.#tasks.get(key) ?? this.#add(key, input);
    task.wanted += 1;
    this.#next();
    if (signal === undefined) return task.promise;
    return new Promise((resolve, reject) => {
      const leave = () => {
        task.wanted -= 1;
        this.#dropUnwanted(task);
        reject(new NotWanted());
      };
      signal.addEventListener('abort', leave, { once: true });
      task.promise.then(resolve, reject).finally(() => signal.removeEventListener('abort', leave));
    });
  }

  /** What is under way is given up. */
  async close(): Promise<void> {
    for (const task of this.#queue.splice(0)) this.#end(task, () => task.reject(new NotWanted()));
    const running = this.#running;
    this.#running = null;
    if (running) this.#end(running, () => running.reject(new NotWanted()));
    clearTimeout(this.#timer);
    await this.#thread?.terminate();
    this.#thread = null;
  }

  #add(key: string, input: StiffnessInput): Task {
    let resolve!: Task['resolve'];
    let reject!: Task['reject'];
    const promise = new Promise<StiffnessAnswer>((yes, no) => {
      resolve = yes;
      reject = no;
    });
    // Whoever waits is told through a promise of its own; one that nobody waits for any more fails unheard.
    promise.catch(() => undefined);
    const task: Task = { key, input, wanted: 0, tries: 0, promise, resolve, reject };
    this.#tasks.set(key, task);
    this.#queue.push(task);
    return task;
  }

  #dropUnwanted(task: Task): void {
    const place = this.#queue.indexOf(task);
    if (task.wanted > 0 || place < 0) return;
    this.#queue.splice(place, 1);
    this.#end(task, () => task.reject(new NotWanted()));
  }

  #end(task: Task, tell: () => void): void {
    this.#tasks.delete(task.key);
    tell();
  }

  #next(): void {
    if (this.#running !== null) return;
    const task = this.#queue.shift();
    if (task === undefined) {
      this.#thread?.unref();
      return;
    }
    this.#running = task;
    task.tries += 1;
    const thread = this.#thread ?? this.#begin();
    this.#thread = thread;
    thread.ref();
    this.#timer = setTimeout(() => void thread.terminate(), this.#timeLimitMs);
    thread.postMessage(task.input);
  }

  #begin(): Worker {
    const thread = threadOf(this.#worker);
    let why = 'it ended';
    thread.on('message', (said: WorkerAnswer) => {
      const task = this.#running;
      if (thread !== this.#thread || task === null) return;
      this.#running = null;
      clearTimeout(this.#timer);
      this.#end(task, () => {
        if ('answer' in said) {
          this.#remember(task.key, said.answer);
          task.resolve(said.answer);
        } else {
          task.reject(new Refusal(said.code, said.faults));
        }
      });
      this.#next();
    });
    thread.on('error', (error) => {
      why = String(error);
    });
    thread.on('exit', () => {
      if (thread !== this.#thread) return;
      this.#thread = null;
      const task = this.#running;
      this.#running = null;
      clearTimeout(this.#timer);
      if (task !== null) {
        if (task.tries < MOST_TRIES && task.wanted > 0) this.#queue.unshift(task);
        else {
          const failed = new BendingFailed(`The thread that works out bending could not: ${why}.`);
          this.#end(task, () => task.reject(failed));
        }
      }
      this.#next();
    });
    return thread;
  }

  #remember(key: string, answer: StiffnessAnswer): void {
    this.#kept.set(key, answer);
    if (this.#kept.size <= this.#keep) return;
    const [oldest] = this.#kept.keys();
    if (oldest !== undefined) this.#kept.delete(oldest);
  }
}

/** Run from its sources, as in tests, the thread needs the loader that understands them. */
function threadOf(worker: URL): Worker {
  const at = JSON.stringify(worker.href);
  return worker.pathname.endsWith('.ts')
    ? new Worker(`import('tsx/esm/api').then(({ tsImport }) => tsImport(${at}, ${at}))`, {
        eval: true,
        execArgv: [],
      })
    : new Worker(worker);
}

const OWN_WORKER = new URL(
  import.meta.url.endsWith('.ts') ? './bendingWorker.ts' : './bendingWorker.js',
  import.meta.url,
);
