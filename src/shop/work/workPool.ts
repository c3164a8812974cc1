import { Worker } from 'node:worker_threads';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { scriptAt } from '../../root.ts';
import type { Answers, Question, QuestionName } from './questions.ts';

export type WorkerAnswer =
  | { readonly began: true }
  | { readonly answer: unknown }
  | { readonly code: string; readonly faults: readonly Fault[] };

/** Who asks: what people wait for goes before what scripts ask, and of each the callers take turns. */
export interface Asker {
  readonly signal?: AbortSignal | undefined;
  readonly caller: string;
  readonly lane: Lane;
}
type Lane = 'people' | 'scripts';

/** The program itself, on behalf of a page. */
export const ITSELF: Asker = { caller: '', lane: 'people' };

/** Nobody waits for it any more: the page was left, or the slider moved on. */
export class NotWanted extends Error {}

/** The worker died of it twice. */
export class WorkFailed extends Error {}

/** As many wait already as may: of this caller, or of all in its lane. */
export class WorkBusy extends Error {
  readonly retryAfterS = 5;
}

interface Task {
  readonly key: string;
  readonly question: Question;
  readonly caller: string;
  lane: Lane;
  wanted: number;
  tries: number;
  readonly promise: Promise<unknown>;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** How many may wait, of one caller and in all; a page asks for about twenty. */
const MOST_WAITING: Readonly<Record<Lane, { readonly ofCaller: number; readonly inAll: number }>> = {
  people: { ofCaller: 80, inAll: 600 },
  scripts: { ofCaller: 8, inAll: 40 },
};

export interface WorkPoolOptions {
  readonly worker?: URL;
  /** Answers kept; the one asked for longest ago goes first. About 15 KB each. */
  readonly keep?: number;
  /** From when the thread took the question up. */
  readonly timeLimitMs?: number;
  /** For a thread to begin and take its first question up. */
  readonly startLimitMs?: number;
  /** What an answer that nobody waits for any more may still take. */
  readonly graceMs?: number;
}

const MOST_TRIES = 2;

const TOO_LONG =
  'Working this out took too long and was stopped. Send fewer stations, marks or repeats at a time.';
const BENDING_TOO_LONG =
  'Working out how this cover bends took too long and was stopped. Check the walls, the lining modulus and Young’s modulus, and their units.';

/**
 * One thread that works out what takes long, one question at a time, and the answers on bending it gave, by their
 * question. The thread begins with the first question, is replaced when it dies or takes too long, and keeps no program
 * alive while it has nothing to do. What takes too long is refused, and not tried again.
 */
export class WorkPool {
  readonly #worker: URL;
  readonly #keep: number;
  #timeLimitMs: number;
  readonly #startLimitMs: number;
  readonly #graceMs: number;
  readonly #kept = new Map<string, unknown>();
  readonly #tasks = new Map<string, Task>();
  readonly #queue: Task[] = [];
  /** When each caller that waits was last served, counted in questions. */
  readonly #served = new Map<string, number>();
  #count = 0;
  #thread: Worker | null = null;
  #running: Task | null = null;
  #timer: NodeJS.Timeout | undefined;

  constructor(options: WorkPoolOptions = {}) {
    const {
      worker = OWN_WORKER,
      keep = 400,
      timeLimitMs = 3000,
      startLimitMs = 30_000,
      graceMs = 250,
    } = options;
    this.#worker = worker;
    this.#keep = keep;
    this.#timeLimitMs = timeLimitMs;
    this.#startLimitMs = startLimitMs;
    this.#graceMs = graceMs;
  }

  /** Another time limit for what is taken up from now on. */
  giveTime(timeLimitMs: number): void {
    this.#timeLimitMs = timeLimitMs;
  }

  /**
   * Throws a Refusal for what cannot be worked out or takes too long, WorkBusy where too many wait, NotWanted once the
   * asker's signal aborts, WorkFailed where the thread could not.
   */
  async ask<Name extends QuestionName>(
    name: Name,
    asked: Parameters<Answers[Name]>,
    asker: Asker = ITSELF,
  ): Promise<ReturnType<Answers[Name]>> {
    return (await this.#ask({ name, asked }, asker)) as ReturnType<Answers[Name]>;
  }

  async #ask(question: Question, asker: Asker): Promise<unknown> {
    const { signal } = asker;
    if (signal?.aborted) throw new NotWanted();
    const key = JSON.stringify(question);
    const kept = this.#kept.get(key);
    if (kept !== undefined) {
      this.#kept.delete(key);
      this.#kept.set(key, kept);
      return kept;
    }
    const task = this.#tasks.get(key) ?? this.#add(key, question, asker);
    if (asker.lane === 'people') task.lane = 'people';
    task.wanted += 1;
    if (task === this.#running && task.wanted === 1) this.#stopAfter(this.#timeLimitMs, task);
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

  /** How much is under way and waits, for whoever watches the program. */
  waiting(): { readonly running: number } & Readonly<Record<Lane, number>> {
    const of = (lane: Lane) => this.#queue.filter((task) => task.lane === lane).length;
    return { running: this.#running === null ? 0 : 1, people: of('people'), scripts: of('scripts') };
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

  #add(key: string, question: Question, { caller, lane }: Asker): Task {
    const inLane = this.#queue.filter((task) => task.lane === lane);
    const { ofCaller, inAll } = MOST_WAITING[lane];
    const own = inLane.filter((task) => task.caller === caller).length;
    if (inLane.length >= inAll || own >= ofCaller) throw new WorkBusy();
    let resolve!: Task['resolve'];
    let reject!: Task['reject'];
    const promise = new Promise<unknown>((yes, no) => {
      resolve = yes;
      reject = no;
    });
    // Whoever waits is told through a promise of its own; one that nobody waits for any more fails unheard.
    promise.catch(() => undefined);
    const task: Task = { key, question, caller, lane, wanted: 0, tries: 0, promise, resolve, reject };
    this.#tasks.set(key, task);
    this.#queue.push(task);
    return task;
  }

  #dropUnwanted(task: Task): void {
    if (task.wanted > 0) return;
    if (task === this.#running) {
      this.#stopAfter(this.#graceMs, task);
      return;
    }
    const place = this.#queue.indexOf(task);
    if (place < 0) return;
    this.#queue.splice(place, 1);
    this.#end(task, () => task.reject(new NotWanted()));
  }

  #end(task: Task, tell: () => void): void {
    if (this.#tasks.get(task.key) === task) this.#tasks.delete(task.key);
    tell();
  }

  /** The lane of people first; in it the caller who was served longest ago, and of that one what was asked first. */
  #takeNext(): Task | undefined {
    const lane: Lane = this.#queue.some((task) => task.lane === 'people') ? 'people' : 'scripts';
    const served = ({ caller }: Task) => this.#served.get(caller) ?? 0;
    const [first, ...others] = this.#queue.filter((task) => task.lane === lane);
    if (first === undefined) {
      this.#served.clear();
      return undefined;
    }
    const task = others.reduce((best, one) => (served(one) < served(best) ? one : best), first);
    this.#queue.splice(this.#queue.indexOf(task), 1);
    this.#count += 1;
    this.#served.set(task.caller, this.#count);
    return task;
  }

  #next(): void {
    if (this.#running !== null) return;
    const task = this.#takeNext();
    if (task === undefined) {
      this.#thread?.unref();
      return;
    }
    this.#running = task;
    task.tries += 1;
    const thread = this.#thread ?? this.#begin();
    this.#thread = thread;
    thread.ref();
    this.#stopAfter(this.#startLimitMs, task);
    thread.postMessage(task.question);
  }

  #stopAfter(ms: number, task: Task): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#stopTooLong(task), ms);
  }

  /** Told at once; the thread ends by itself a moment later, and a new one goes on. */
  #stopTooLong(task: Task): void {
    if (task !== this.#running) return;
    const message = task.question.name === 'bending' ? BENDING_TOO_LONG : TOO_LONG;
    this.#end(task, () => task.reject(new Refusal('too-long', [{ path: '', message }])));
    task.wanted = 0;
    void this.#thread?.terminate();
  }

  #begin(): Worker {
    const thread = threadOf(this.#worker);
    let why = 'it ended';
    thread.on('message', (said: WorkerAnswer) => {
      if (thread === this.#thread) this.#answered(said);
    });
    thread.on('error', (error) => {
      why = String(error);
    });
    thread.on('exit', () => {
      if (thread === this.#thread) this.#died(why);
    });
    return thread;
  }

  #answered(said: WorkerAnswer): void {
    const task = this.#running;
    if (task === null) return;
    if ('began' in said) {
      if (task.wanted > 0) this.#stopAfter(this.#timeLimitMs, task);
      return;
    }
    this.#running = null;
    clearTimeout(this.#timer);
    this.#end(task, () => {
      if ('answer' in said) {
        if (task.question.name === 'bending') this.#remember(task.key, said.answer);
        task.resolve(said.answer);
      } else {
        task.reject(new Refusal(said.code, said.faults));
      }
    });
    this.#next();
  }

  #died(why: string): void {
    this.#thread = null;
    const task = this.#running;
    this.#running = null;
    clearTimeout(this.#timer);
    if (task !== null) {
      if (task.tries < MOST_TRIES && task.wanted > 0) this.#queue.unshift(task);
      else {
        const failed = new WorkFailed(`The thread that works out what takes long could not: ${why}.`);
        this.#end(task, () => task.reject(failed));
      }
    }
    this.#next();
  }

  #remember(key: string, answer: unknown): void {
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

const OWN_WORKER = scriptAt('src/shop/work/worker');
