import type { ToldOnce } from '../../../views/pages/people/peoplePage.tsx';

const SHOWN_MS = 10 * 60 * 1000;
const MOST = 100;

/**
 * A password or token just made, for the session that made it and for ten minutes, so that a page loaded again still
 * shows it. In memory only; after that a new one is made.
 */
export class ToldToKeeper {
  readonly #told = new Map<
    string,
    { readonly told: ToldOnce; readonly path: string; readonly until: number }
  >();

  keep(session: string, path: string, told: ToldOnce, now: Date): void {
    this.#told.delete(session);
    this.#told.set(session, { told, path, until: now.getTime() + SHOWN_MS });
    for (const [oldest] of this.#told) {
      if (this.#told.size <= MOST) return;
      this.#told.delete(oldest);
    }
  }

  /** What this session was told on that page; null when nothing, or too long ago. */
  on(session: string | null, path: string, now: Date): ToldOnce | null {
    const kept = session === null ? undefined : this.#told.get(session);
    if (session !== null && kept !== undefined && now.getTime() >= kept.until) this.#told.delete(session);
    return kept !== undefined && kept.path === path && now.getTime() < kept.until ? kept.told : null;
  }
}
