import type { KeptReading } from '../../../shared/schemas/measuring.ts';

/** A reading as this tablet keeps it until the server has it. Pages of earlier versions wrote the same. */
export interface ShelfEntry {
  readonly reading: KeptReading;
  readonly place: string;
  /** Counted from 0 among the stations; null for a mark between them. */
  readonly at: number | null;
  /** Why the server does not take it. */
  readonly refused?: string;
}

export interface Waiting {
  readonly key: string;
  readonly entry: ShelfEntry;
}

const SHELF = 'coverwright.reading.';

/**
 * What is kept on this tablet. Every reading has a key of its own, so that two pages open at once cannot lose one
 * another's. Keys sort in the order in which the readings were typed.
 */
export class TabletShelf {
  readonly #mine: string;
  /** Readings this tablet could not keep (storage full, or switched off): they live as long as the page. */
  readonly #homeless = new Map<string, ShelfEntry>();
  #last = 0;

  constructor(job: string, created: string) {
    this.#mine = `${SHELF}${encodeURIComponent(job)}.${encodeURIComponent(created)}.`;
  }

  /** Readings of this job, in the order typed. */
  waiting(): Waiting[] {
    const kept = storedKeys()
      .filter((key) => key.startsWith(this.#mine))
      .flatMap((key) => {
        const entry = readEntry(localStorage.getItem(key));
        return entry === null ? [] : [{ key, entry }];
      });
    const all = [...kept, ...[...this.#homeless].map(([key, entry]) => ({ key, entry }))];
    return all.sort((a, b) => (a.key < b.key ? -1 : 1));
  }

  add(entry: ShelfEntry): void {
    this.put(this.#newKey(entry.reading.id), entry);
  }

  put(key: string, entry: ShelfEntry): void {
    try {
      localStorage.setItem(key, JSON.stringify(entry));
      this.#homeless.delete(key);
    } catch {
      this.#homeless.set(key, entry);
    }
  }

  takeOff(key: string): void {
    this.#homeless.delete(key);
    try {
      localStorage.removeItem(key);
    } catch {
      // Nothing was kept there.
    }
  }

  /** Whether some readings would be lost with the page. */
  get leaks(): boolean {
    return this.#homeless.size > 0;
  }

  /** Numbers of other jobs whose readings this tablet still keeps. */
  otherJobs(): ReadonlySet<string> {
    const others = storedKeys().filter((key) => key.startsWith(SHELF) && !key.startsWith(this.#mine));
    return new Set(others.map((key) => decodeURIComponent(key.slice(SHELF.length).split('.')[0] ?? '')));
  }

  #newKey(id: string): string {
    const before = this.waiting().at(-1)?.key.slice(this.#mine.length).split('-')[0];
    this.#last = Math.max(Date.now(), this.#last + 1, Number(before ?? 0) + 1);
    return `${this.#mine}${String(this.#last).padStart(16, '0')}-${id}`;
  }
}

function storedKeys(): string[] {
  try {
    return Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i)).filter(
      (key) => key !== null,
    );
  } catch {
    return [];
  }
}

function readEntry(text: string | null): ShelfEntry | null {
  try {
    const entry = JSON.parse(text ?? 'null') as Partial<ShelfEntry> | null;
    return typeof entry === 'object' && typeof entry?.reading?.id === 'string' ? (entry as ShelfEntry) : null;
  } catch {
    return null;
  }
}

/** An id no other tablet makes. Random without `randomUUID`, which plain HTTP in a shop's network has not got. */
export function newReadingId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return `m-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
