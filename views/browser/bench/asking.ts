import type { Asked, BenchState } from '../../../shared/measuring/benchState.ts';
import { nextStep, type Step, stepsOf } from '../../../shared/measuring/steps.ts';
import type { KnownReadings } from './knownReadings.ts';

/** What a reading can be asked of: a step of the round, or a place between stations. */
export type Target = Pick<Asked, 'kind' | 'at' | 'angleDeg' | 'radiusMm' | 'place'>;

/** What is asked for, and what comes after it. */
export class Asking {
  asked: Asked | null;
  readonly steps: readonly Step[];
  readonly #state: BenchState;
  readonly #known: KnownReadings;
  #lastKept: Step | null = null;

  constructor(state: BenchState, known: KnownReadings) {
    this.#state = state;
    this.#known = known;
    this.asked = state.asked;
    this.steps = stepsOf(state.stations, state.order);
    this.#passByWhatWaits();
  }

  measuredCount(): number {
    return this.steps.filter(this.#known.measured()).length;
  }

  /** A reading was kept for what is asked. */
  kept(): void {
    if (this.asked !== null && this.asked.at !== null)
      this.#lastKept = { kind: this.asked.kind, at: this.asked.at };
  }

  /** To the next step that has no reading, after the one asked or, from between stations, after the last one kept. */
  goOn(): void {
    const step = nextStep(this.steps, this.#askedStep() ?? this.#lastKept, this.#known.measured());
    if (step === null) this.asked = null;
    else this.turnToStep(step);
  }

  goBack(): void {
    const from = this.#askedStep();
    const index = from === null ? this.steps.length : this.#indexOf(from);
    const step = this.steps[(index - 1 + this.steps.length) % this.steps.length];
    if (step) this.turnToStep(step);
  }

  /** To a repeat of the last reading; false where nothing has been measured yet. */
  repeatLast(): boolean {
    const asked = this.#askedStep();
    const step = this.#lastKept ?? (asked === null ? undefined : this.steps[this.#indexOf(asked) - 1]);
    if (!step) return false;
    this.turnToStep(step, true);
    return true;
  }

  turnToStep(step: Step, again = false): void {
    const station = this.#state.stations[step.at];
    if (station) this.turnTo({ ...station, ...step, place: station.name }, again);
  }

  /** A new reading, a correction of what stands there, or with `again` a repeat beside it. */
  turnTo(target: Target, again = false): void {
    const { kind, at, angleDeg, radiusMm, place } = target;
    const was = again ? undefined : this.#known.at(kind, target).at(-1);
    const replaces = was === undefined ? null : { id: was.id, shown: was.shown };
    this.asked = { kind, at, angleDeg, radiusMm, place, replaces, again };
  }

  /** A correction of this very reading, of several that stand there. */
  correct(target: Target, { id, shown }: { readonly id: string; readonly shown: string }): void {
    this.turnTo(target);
    if (this.asked !== null) this.asked = { ...this.asked, replaces: { id, shown } };
  }

  /** The page was made before what waits here was typed. */
  #passByWhatWaits(): void {
    const { asked } = this;
    const plain = asked !== null && asked.at !== null && asked.replaces === null && !asked.again;
    if (plain && this.#known.at(asked.kind, asked).length > 0) this.goOn();
  }

  #askedStep(): Step | null {
    return this.asked === null || this.asked.at === null
      ? null
      : { kind: this.asked.kind, at: this.asked.at };
  }

  #indexOf({ kind, at }: Step): number {
    return this.steps.findIndex((one) => one.kind === kind && one.at === at);
  }
}
