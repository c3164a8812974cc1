import type { StandingReading, Taken } from '../../../shared/measuring/benchState.ts';
import type { Pass } from '../../../shared/words/job.ts';
import type { KnownReadings } from './knownReadings.ts';
import type { TabletShelf, Waiting } from './tabletShelf.ts';

const MOST_AT_ONCE = 200;
const ANSWER_WITHIN_MS = 10_000;
const LONGEST_PAUSE_MS = 15_000;

type TakenNow = Taken & { readonly standing: readonly StandingReading[] };

/** What came of sending once: what the server took, or the trouble, and whether it is asked again by itself. */
type Outcome = { readonly taken: TakenNow } | { readonly trouble: string; readonly askAgain: boolean };

export interface SenderParts {
  readonly job: string;
  readonly pass: Pass;
  readonly shelf: TabletShelf;
  readonly known: KnownReadings;
  /** Who measures, as typed; null where the server knows who is signed in. */
  readonly who: () => string | null;
  readonly why: () => string;
  readonly changed: () => void;
  readonly say: (text: string) => void;
}

/** Sends what waits: in order, one batch at a time, again until the server has answered. */
export class Sender {
  /** Why readings still wait, in a sentence; '' where nothing is wrong. */
  trouble = '';
  readonly #parts: SenderParts;
  readonly #here: string;
  #sending = false;
  #failures = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: SenderParts) {
    this.#parts = parts;
    this.#here = `/jobs/${encodeURIComponent(parts.job)}/measure`;
  }

  async send(): Promise<void> {
    const { changed, who } = this.#parts;
    clearTimeout(this.#timer);
    if (this.#sending) return;
    this.#clearWhatArrived();
    const batch = this.#batch();
    if (batch.length === 0) return changed();
    if (who() === '') {
      this.trouble = 'Enter your initials to send the readings.';
      return changed();
    }
    this.#sending = true;
    const outcome = await this.#post(batch);
    this.#sending = false;
    if ('taken' in outcome) {
      this.#settle(batch, outcome.taken);
      changed();
      return this.send();
    }
    this.trouble = outcome.trouble;
    changed();
    if (outcome.askAgain) this.#sendLater();
  }

  /** Asks what others did meanwhile. */
  async look(): Promise<void> {
    try {
      const answer = await fetch(`${this.#here}/standing?pass=${this.#parts.pass}`, {
        signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
      });
      if (answer.ok) {
        const told = (await answer.json()) as Pick<TakenNow, 'standing'>;
        this.#parts.known.onServer = told.standing;
      }
    } catch {
      return;
    }
    await this.send();
  }

  /** What the server told of elsewhere need not be sent. */
  #clearWhatArrived(): void {
    const { shelf, known } = this.#parts;
    const ids = known.idsOnServer();
    for (const { key, entry } of shelf.waiting()) if (ids.has(entry.reading.id)) shelf.takeOff(key);
  }

  #batch(): Waiting[] {
    return this.#parts.shelf
      .waiting()
      .filter(({ entry }) => !entry.refused)
      .slice(0, MOST_AT_ONCE);
  }

  async #post(batch: readonly Waiting[]): Promise<Outcome> {
    const { who, why, pass } = this.#parts;
    try {
      const answer = await fetch(`${this.#here}/kept?pass=${pass}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({
          who: who() ?? '',
          why: why(),
          readings: batch.map(({ entry }) => entry.reading),
        }),
        redirect: 'manual',
        signal: AbortSignal.timeout(ANSWER_WITHIN_MS),
      });
      return await outcomeOf(answer);
    } catch {
      return {
        trouble: 'No connection. Readings stay on this tablet and are sent when it returns.',
        askAgain: true,
      };
    }
  }

  #settle(batch: readonly Waiting[], taken: TakenNow): void {
    const { shelf, known, say } = this.#parts;
    const arrived = new Set([...taken.added, ...taken.already]);
    const refused = new Map(taken.refused.map((one) => [one.id, one.message]));
    for (const { key, entry } of batch) {
      const why = refused.get(entry.reading.id);
      if (arrived.has(entry.reading.id)) shelf.takeOff(key);
      else if (why !== undefined) shelf.put(key, { ...entry, refused: why });
    }
    known.onServer = taken.standing;
    this.#failures = 0;
    this.trouble = '';
    if (taken.beside[0]) say(taken.beside[0].message);
  }

  #sendLater(): void {
    this.#failures++;
    const pause = Math.min(LONGEST_PAUSE_MS, 500 * 2 ** Math.min(this.#failures, 5));
    this.#timer = setTimeout(() => void this.send(), pause);
  }
}

async function outcomeOf(answer: Response): Promise<Outcome> {
  const json = (answer.headers.get('Content-Type') ?? '').includes('json');
  if (answer.ok && json) return { taken: (await answer.json()) as TakenNow };
  if (answer.status === 422 && json) {
    const { error } = (await answer.json()) as { readonly error: { readonly message: string } };
    return { trouble: error.message, askAgain: false };
  }
  if (answer.status >= 500) {
    return { trouble: 'The server could not save them just now. Trying again.', askAgain: true };
  }
  return {
    trouble: 'The server did not take them. Reload this page and sign in if asked. Nothing here is lost.',
    askAgain: false,
  };
}
