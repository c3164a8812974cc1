/** Told as long work goes on: what is being done, and how much of how much of it is done. Throws Stopped. */
export type Step = (what: string, done: number, of: number) => void;

/** Nobody looks, and nobody stops it. */
export const unseen: Step = () => undefined;

/** Somebody ended long work; the sentence says what was then left. */
export class Stopped extends Error {
  constructor(left: string) {
    super(`Stopped. ${left}`);
    this.name = 'Stopped';
  }
}

/** One part of long work, as far as it is. */
export interface Done {
  readonly what: string;
  readonly done: number;
  readonly of: number;
  /** How long this part has been going on. */
  readonly forMs: number;
}

const TELLING_MS = 2000;

/** "about 3 min left", if the rest goes as the part so far did; null before that says anything. */
export function leftInWords({ done, of, forMs }: Done): string | null {
  if (forMs < TELLING_MS || done <= 0 || done >= of) return null;
  const seconds = ((forMs / done) * (of - done)) / 1000;
  if (seconds < 10) return 'a few seconds left';
  if (seconds < 55) return `about ${Math.ceil(seconds / 10) * 10} s left`;
  const minutes = Math.ceil(seconds / 60);
  return minutes < 60 ? `about ${minutes} min left` : `about ${Math.round(minutes / 6) / 10} h left`;
}

/** "Copying photos: 12 of 400, about 3 min left"; what is one thing has no count. */
export function doneInWords(part: Done): string {
  const count = part.of > 1 ? `: ${Math.min(part.done, part.of)} of ${part.of}` : '';
  const left = leftInWords(part);
  return `${part.what}${count}${left === null ? '' : `, ${left}`}`;
}

const BAR = 20;

/** One line for a terminal, no wider than that. */
export function barLine(part: Done, columns: number): string {
  const full = part.of > 0 ? Math.floor((BAR * Math.min(part.done, part.of)) / part.of) : 0;
  const bar = part.of > 1 ? `[${'#'.repeat(full)}${'-'.repeat(BAR - full)}] ` : '';
  return `${bar}${doneInWords(part)}`.slice(0, Math.max(0, columns - 1));
}

/** Remembers since when a part goes on. */
export function partsSeen(now: () => number): (what: string, done: number, of: number) => Done {
  let since = now();
  let last = '';
  return (what, done, of) => {
    if (what !== last) since = now();
    last = what;
    return { what, done, of, forMs: now() - since };
  };
}

interface Terminal {
  readonly isTTY?: boolean;
  readonly columns?: number;
  write(text: string): unknown;
}

const DRAWN_EVERY_MS = 100;
const CLEAR = '\r\u001b[K';

/** A bar on one line of a terminal; nothing where nobody looks at one. `end` leaves the line empty. */
export function barOn(out: Terminal, now: () => number): { readonly step: Step; end(): void } {
  const seen = partsSeen(now);
  let drawnAt = Number.NEGATIVE_INFINITY;
  let last = '';
  const step: Step = (what, done, of) => {
    const part = seen(what, done, of);
    if (!out.isTTY || (what === last && done < of && now() - drawnAt < DRAWN_EVERY_MS)) return;
    drawnAt = now();
    last = what;
    out.write(`${CLEAR}${barLine(part, out.columns || 80)}`);
  };
  return { step, end: () => void (last !== '' && out.write(CLEAR)) };
}

/**
 * Does long work for a command, with a bar on the terminal. Ctrl-C ends it at its next step, with `left` saying what
 * was then left; pressed again it does no more, since npm hands on what the terminal has sent already.
 */
export async function withBar<T>(left: string, work: (step: Step) => Promise<T>): Promise<T> {
  const bar = barOn(process.stderr, () => performance.now());
  let asked = false;
  const ask = () => {
    asked = true;
  };
  process.on('SIGINT', ask);
  process.on('SIGTERM', ask);
  try {
    return await work((what, done, of) => {
      if (asked) throw new Stopped(left);
      bar.step(what, done, of);
    });
  } finally {
    bar.end();
    process.off('SIGINT', ask);
    process.off('SIGTERM', ask);
  }
}
