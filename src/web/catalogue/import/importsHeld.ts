import { randomUUID } from 'node:crypto';
import type { CatalogueKind } from '../../../../shared/words/terms.ts';
import type { Fields } from '../../request/typed.ts';
import { UnderWay } from '../../workUnderWay.ts';
import type { CsvTable } from './csvFile.ts';
import type { Preview } from './importPreview.ts';

/** A file that was sent and not kept yet. Nothing of it is in the records. */
export interface Held {
  readonly id: string;
  readonly kind: CatalogueKind;
  readonly work: UnderWay;
  bytes: Buffer | null;
  table: CsvTable | null;
  preview: Preview | null;
  /** Why the file cannot be read. */
  unreadable: string | null;
  /** How many of it were kept, once they are. */
  kept: { readonly added: number; readonly changed: number } | null;
  /** What was asked about and is right, by row. */
  readonly confirmed: Map<number, Fields>;
}

/** Of the files sent so many are remembered; the oldest goes first. */
const MOST = 6;

/** Files between being sent and being kept: in memory, since nothing is kept before somebody says so. */
export class ImportsHeld {
  readonly #held = new Map<string, Held>();

  add(kind: CatalogueKind, bytes: Buffer): Held {
    const held: Held = {
      ...{ id: randomUUID(), kind, bytes, table: null, preview: null, unreadable: null, kept: null },
      work: new UnderWay(),
      confirmed: new Map(),
    };
    this.#held.set(held.id, held);
    const [oldest] = this.#held.keys();
    if (this.#held.size > MOST && oldest !== undefined) this.drop(oldest);
    return held;
  }

  find(kind: CatalogueKind, id: string): Held | null {
    const held = this.#held.get(id);
    return held?.kind === kind ? held : null;
  }

  drop(id: string): void {
    void this.#held.get(id)?.work.stop();
    this.#held.delete(id);
  }
}
