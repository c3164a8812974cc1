import { type Done, partsSeen, type Step, Stopped } from '../progress.ts';

interface Running {
  part: Done;
  asked: boolean;
  finished: Promise<void>;
}

/** Long work of one page: one at a time, how far it is, and that it can be stopped. */
export class UnderWay {
  #running: Running | null = null;
  #failure: string | null = null;

  /** What goes on now, as far as it is; null when nothing does. */
  get part(): Done | null {
    return this.#running?.part ?? null;
  }

  /** Why the last one came to nothing, and what was then left; null when it came to its end. */
  get failure(): string | null {
    return this.#running ? null : this.#failure;
  }

  /** Does work that ends at its next step when it is stopped; `left` says what is left then. */
  run(left: string, work: (step: Step) => Promise<void>): Promise<void> {
    const seen = partsSeen(() => performance.now());
    const running: Running = { part: seen('Starting', 0, 1), asked: false, finished: Promise.resolve() };
    this.#running = running;
    this.#failure = null;
    running.finished = work((what, done, of) => {
      if (running.asked) throw new Stopped(left);
      running.part = seen(what, done, of);
    })
      .catch((error: unknown) => {
        this.#failure = error instanceof Error ? error.message : String(error);
        throw error;
      })
      .finally(() => {
        this.#running = null;
      });
    return running.finished;
  }

  /** Ends it at its next step, and waits for that. */
  async stop(): Promise<void> {
    const running = this.#running;
    if (running === null) return;
    running.asked = true;
    await running.finished.catch(() => undefined);
  }
}
