import { createHash, timingSafeEqual } from 'node:crypto';
import { codeWords } from '../../records/people/passwords.ts';

/** A code printed once at start, good for one use while the program runs. */
export class FirstCode {
  readonly typed = codeWords(4);
  #used = false;

  /** Whether this is the code; takes as long for any wrong one. */
  is(typed: string): boolean {
    const asMade = typed.trim().toLowerCase().replace(/\s+/g, '-');
    return timingSafeEqual(digest(asMade), digest(this.typed)) && !this.#used;
  }

  /** From now on it is no code any more. */
  use(): void {
    this.#used = true;
  }
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
