import { createHash, timingSafeEqual } from 'node:crypto';
import { codeWords } from '../../records/people/passwords.ts';

/** A code printed once at start, good for one use while the program runs. */
export class FirstCode {
  readonly typed = codeWords(4);
  #used = false;

  /** Whether this is the code, with or without its dashes; takes as long for any wrong one. */
  is(typed: string): boolean {
    return timingSafeEqual(digest(typed), digest(this.typed)) && !this.#used;
  }

  /** From now on it is no code any more. */
  use(): void {
    this.#used = true;
  }
}

function digest(text: string): Buffer {
  const letters = text.toLowerCase().replace(/[^a-z0-9]/g, '');
  return createHash('sha256').update(letters).digest();
}
