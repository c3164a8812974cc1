import type { BenchState } from '../../../shared/measuring/benchState.ts';
import { show, tell } from './byId.ts';
import type { TabletShelf } from './tabletShelf.ts';

const WORKER = '/assets/modules/views/browser/bench/pageKeeper.js';
const STILL_MS = 1500;

/** The measuring page stays usable without the network, as far as this browser lets it; where it does not, it says so. */
export class KeepPage {
  readonly #person: string;
  #worker: ServiceWorker | null = null;
  #stands: unknown = null;
  #partsKept = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor({ person }: Pick<BenchState, 'person'>, shelf: TabletShelf) {
    this.#person = person;
    if (isSecureContext && 'serviceWorker' in navigator) void this.#begin();
    else this.#sayKeepOpen();
    window.addEventListener('beforeunload', (event) => {
      // Kept or not, readings that wait cannot be sent from a page that does not open again.
      if (shelf.waiting().length > 0 && (shelf.leaks || this.#worker === null)) event.preventDefault();
    });
  }

  /** What the server has changed: the copy is made anew, once it stands still. */
  stands(onServer: unknown): void {
    if (onServer === this.#stands) return;
    this.#stands = onServer;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#renew(), STILL_MS);
  }

  #renew(): void {
    if (this.#worker === null) return;
    const parts = this.#partsKept ? [] : partsOfThePage();
    this.#partsKept = true;
    this.#worker.postMessage({ person: this.#person, page: pageWithoutStep(), parts });
  }

  async #begin(): Promise<void> {
    try {
      await navigator.serviceWorker.register(WORKER, { scope: '/jobs/', type: 'module' });
      this.#worker = (await navigator.serviceWorker.ready).active;
      this.#renew();
    } catch {
      this.#sayKeepOpen();
    }
  }

  #sayKeepOpen(): void {
    tell(
      'keep-open',
      'Keep this page open while you measure: it cannot be opened again while the network is down.',
    );
    show('keep-open', true);
  }
}

/** Style, letters and scripts, as this page loaded them. */
function partsOfThePage(): readonly string[] {
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  return [...new Set(loaded.filter((name) => name.startsWith(`${location.origin}/assets/`)))];
}

/** This page in its order, asking for whatever is next. */
function pageWithoutStep(): string {
  const page = new URL(location.href);
  for (const name of ['at', 'after', 'again', 'ma', 'mr', 'skipped']) page.searchParams.delete(name);
  page.hash = '';
  return page.href;
}
