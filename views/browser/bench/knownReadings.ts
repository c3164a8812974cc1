import type { BenchState, StandingReading } from '../../../shared/measuring/benchState.ts';
import type { Step } from '../../../shared/measuring/steps.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { KeptReading } from '../../../shared/schemas/measuring.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import { type Place, samePlace } from '../../../shared/words/places.ts';
import type { TabletShelf } from './tabletShelf.ts';

export type Known = Place &
  Pick<
    StandingReading,
    'id' | 'kind' | 'at' | 'place' | 'shown' | 'who' | 'valueMm' | 'doubtful' | 'confirmed'
  >;

/** Kept here only once it could be read. */
export function mmOf({ typed, unit, decimalSign }: KeptReading): number {
  const read = readQuantity({ field: '', typed, kind: 'length', unit, decimalSign });
  return read.ok ? read.value : Number.NaN;
}

/** What is measured in this pass: on the server, and on this tablet. */
export class KnownReadings {
  /** Those the server has, as it last told. */
  onServer: readonly StandingReading[];
  readonly #state: BenchState;
  readonly #shelf: TabletShelf;

  constructor(state: BenchState, shelf: TabletShelf) {
    this.#state = state;
    this.#shelf = shelf;
    this.onServer = state.standing;
  }

  idsOnServer(): ReadonlySet<string> {
    return new Set(this.onServer.map((one) => one.id));
  }

  /** As they will stand once everything has been sent. */
  now(): readonly Known[] {
    const known = this.idsOnServer();
    const here = this.#shelf
      .waiting()
      .map(({ entry }) => entry)
      .filter((one) => one.reading.pass === this.#state.pass && !one.refused && !known.has(one.reading.id));
    const replaced = new Set(here.map((one) => one.reading.replaces));
    const all: Known[] = [
      ...this.onServer,
      ...here.map(({ reading, place, at }) => ({
        ...reading,
        place,
        at: at ?? -1,
        shown: reading.typed,
        who: '',
        valueMm: mmOf(reading),
        doubtful: false,
      })),
    ];
    return all.filter((one) => !replaced.has(one.id));
  }

  at(kind: ReadingKind, place: Place): readonly Known[] {
    return this.now().filter((one) => one.kind === kind && samePlace(one, place));
  }

  /** Whether a step has its reading; taken once for many steps. */
  measured(): (step: Step) => boolean {
    const now = this.now();
    return ({ kind, at, nth }) => {
      const place = this.#state.stations[at];
      return (
        place !== undefined && now.filter((one) => one.kind === kind && samePlace(one, place)).length > nth
      );
    };
  }
}
