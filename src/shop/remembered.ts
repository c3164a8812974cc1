import { createHash } from 'node:crypto';

/**
 * Answers kept by what they were worked out from, the one asked for longest ago dropped first. The key is made from the
 * whole of it and not from revision numbers, which repeat with other content when a backup is restored; so an answer
 * that is found is the one it would be worked out to, whoever changed what meanwhile.
 */
export class Remembered<Answer> {
  readonly #most: number;
  readonly #kept = new Map<string, Answer>();

  constructor(most: number) {
    this.#most = most;
  }

  static key(from: unknown): string {
    return createHash('sha256').update(JSON.stringify(from)).digest('base64');
  }

  /** The same of something that is never changed once it is made, made once for the same object. */
  static keyOf(from: object): string {
    const known = keys.get(from) ?? Remembered.key(from);
    keys.set(from, known);
    return known;
  }

  /** What is remembered of `from`; worked out where nothing is. */
  once(from: unknown, workOut: () => Answer): Answer {
    const key = Remembered.key(from);
    const found = this.get(key);
    if (found !== undefined) return found;
    const answer = workOut();
    this.set(key, answer);
    return answer;
  }

  get(key: string): Answer | undefined {
    const answer = this.#kept.get(key);
    if (answer === undefined) return undefined;
    this.#kept.delete(key);
    this.#kept.set(key, answer);
    return answer;
  }

  set(key: string, answer: Answer): void {
    this.#kept.delete(key);
    this.#kept.set(key, answer);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= this.#most) return;
      this.#kept.delete(oldest);
    }
  }
}

const keys = new WeakMap<object, string>();
