import type { Asked, BenchState } from '../../../shared/measuring/benchState.ts';
import {
  indexOfStep,
  nextStep,
  type Step,
  stepsOf,
  timesOf,
  writeStep,
} from '../../../shared/measuring/steps.ts';
import type { KnownReadings } from './knownReadings.ts';

/** What a reading can be asked of: a step of the round, or a place between stations. */
export type Target = Pick<Asked, 'kind' | 'at' | 'angleDeg' | 'radiusMm' | 'place'>;

/** What is asked for, and what comes after it. */
export class Asking {
  asked: Asked | null;
  readonly steps: readonly Step[];
  readonly #state: BenchState;
  readonly #known: KnownReadings;
  readonly #skipped: Set<string>;
  #lastKept: Step | null = null;

  constructor(state: BenchState, known: KnownReadings) {
    this.#state = state;
    this.#known = known;
    this.asked = state.asked;
    this.#skipped = new Set(state.skipped);
    this.steps = stepsOf(state.stations, state.order);
    this.#passByWhatWaits();
  }

  measuredCount(): number {
    return this.steps.filter(this.#known.measured()).length;
  }

  /** Steps that were passed over and still have no reading, in order. */
  skipped(): readonly Step[] {
    const measured = this.#known.measured();
    return this.steps.filter((step) => this.#skipped.has(writeStep(step)) && !measured(step));
  }

  /** A reading was kept for what is asked. */
  kept(): void {
    this.#lastKept = this.#askedStep() ?? this.#lastKept;
  }

  skip(): void {
    const step = this.#askedStep();
    if (step !== null) this.#skipped.add(writeStep(step));
    this.goOn();
  }

  /**
   * To the next step that has no reading and was not skipped, after the one asked or, from between stations, after the
   * last one kept.
   */
  goOn(): void {
    const measured = this.#known.measured();
    const step = nextStep(
      this.steps,
      this.#askedStep() ?? this.#lastKept,
      (one) => measured(one) || this.#skipped.has(writeStep(one)),
    );
    if (step === null) this.asked = null;
    else this.turnToStep(step);
  }

  goBack(): void {
    const from = this.#askedStep();
    const index = from === null ? this.steps.length : indexOfStep(this.steps, from);
    const step = this.steps[(index - 1 + this.steps.length) % this.steps.length];
    if (step) this.turnToStep(step);
  }

  /** To a repeat of the last reading; false where nothing has been measured yet. */
  repeatLast(): boolean {
    const asked = this.#askedStep();
    const step =
      this.#lastKept ?? (asked === null ? undefined : this.steps[indexOfStep(this.steps, asked) - 1]);
    const station = step && this.#state.stations[step.at];
    if (!station) return false;
    this.turnTo({ ...station, ...step, place: station.name }, true);
    return true;
  }

  /** To the reading of a step: a new one, or a correction of the one it has. */
  turnToStep(step: Step): void {
    const station = this.#state.stations[step.at];
    if (!station) return;
    const { kind, at, nth } = step;
    const was = this.#known.at(kind, station)[nth] ?? null;
    const replaces = was && { id: was.id, shown: was.shown };
    const { angleDeg, radiusMm, name: place } = station;
    this.asked = { kind, at, nth, angleDeg, radiusMm, place, replaces, again: false };
  }

  /** To the first reading that a station still needs; where it has them all, to a correction of its last. */
  turnToStation(kind: Step['kind'], at: number): void {
    const times = timesOf(kind, this.#state.order);
    const station = this.#state.stations[at];
    if (station) {
      const has = this.#known.at(kind, station).length;
      this.turnToStep({ kind, at, nth: has < times ? has : Math.max(0, has - 1) });
    }
  }

  /** A new reading, a correction of what stands there, or with `again` a repeat beside it. */
  turnTo(target: Target, again = false): void {
    const { kind, at, angleDeg, radiusMm, place } = target;
    const here = this.#known.at(kind, target);
    const was = again ? undefined : here.at(-1);
    const replaces = was === undefined ? null : { id: was.id, shown: was.shown };
    const nth = replaces === null ? here.length : here.length - 1;
    this.asked = { kind, at, nth, angleDeg, radiusMm, place, replaces, again };
  }

  /** A correction of this very reading, of several that stand there. */
  correct(target: Target, { id, shown }: { readonly id: string; readonly shown: string }): void {
    this.turnTo(target);
    if (this.asked !== null) this.asked = { ...this.asked, replaces: { id, shown } };
  }

  /** The page was made before what waits here was typed. */
  #passByWhatWaits(): void {
    const { asked } = this;
    const step = this.#askedStep();
    if (asked === null || step === null || asked.replaces !== null || asked.again) return;
    if (this.#known.measured()(step)) this.goOn();
  }

  #askedStep(): Step | null {
    return this.asked === null || this.asked.at === null ? null : { ...this.asked, at: this.asked.at };
  }
}
