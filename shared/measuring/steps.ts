import type { ReadingKind } from '../words/job.ts';
import { type Place, turned } from '../words/places.ts';

/** One thing to be measured: a kind of reading at a place, counted from 0 in the order of the job's places. */
export interface Step {
  readonly kind: ReadingKind;
  readonly at: number;
  /** Which of the readings wanted there, counted from 0. */
  readonly nth: number;
}

export const ROUNDS = ['numbered', 'clockwise', 'anticlockwise', 'across'] as const;
/** Which station follows which. */
export type Round = (typeof ROUNDS)[number];
export const BYS = ['kind', 'station'] as const;
/** All walls, then all heights …; or wall, height and mark of one station before the next. */
export type By = (typeof BYS)[number];
export const ASKS = ['w', 'wf', 'wfm'] as const;
/** What is asked for: walls, walls and heights, or marks as well. */
export type Asks = (typeof ASKS)[number];

export const TIMES = [1, 2, 3] as const;
/** How often the wall of each station is read; the indicator and a heat mark are read once. */
export type Times = (typeof TIMES)[number];
export const REPEATS = ['together', 'rounds'] as const;
/** Whether the readings of a station follow one another, or the whole round is gone again. */
export type Repeats = (typeof REPEATS)[number];

export interface Order {
  readonly round: Round;
  readonly by: By;
  readonly asks: Asks;
  readonly times: Times;
  readonly repeats: Repeats;
}

export const KIND_OF: Readonly<Record<string, ReadingKind>> = { w: 'wall', f: 'face', m: 'mark' };

/** The order of the stations, as indexes: as numbered, round either way from stud 1, or each with its opposite. */
function roundOrder(stations: readonly Place[], round: Round): number[] {
  const indexes = stations.map((_, index) => index);
  const turn = (index: number) => turned(stations[index]?.angleDeg ?? 0);
  const radius = (index: number) => stations[index]?.radiusMm ?? 0;
  const back = (index: number) => (360 - turn(index)) % 360;
  switch (round) {
    case 'numbered':
      return indexes;
    case 'clockwise':
      return indexes.sort((a, b) => turn(a) - turn(b) || radius(a) - radius(b));
    case 'anticlockwise':
      return indexes.sort((a, b) => back(a) - back(b) || radius(a) - radius(b));
    case 'across':
      return indexes.sort(
        (a, b) => radius(a) - radius(b) || (turn(a) % 180) - (turn(b) % 180) || turn(a) - turn(b),
      );
  }
}

/** How many readings of a kind are wanted at a station. */
export function timesOf(kind: ReadingKind, { times }: Pick<Order, 'times'>): number {
  return kind === 'wall' ? times : 1;
}

/** Everything to be asked, in order. */
export function stepsOf(stations: readonly Place[], order: Order): Step[] {
  const round = roundOrder(stations, order.round);
  const kinds = [...order.asks].map((letter) => KIND_OF[letter]!);
  const readings = (kind: ReadingKind) => Array.from({ length: timesOf(kind, order) }, (_, nth) => nth);
  const together = (kind: ReadingKind, at: number) => readings(kind).map((nth) => ({ kind, at, nth }));
  if (order.repeats === 'together') {
    return order.by === 'kind'
      ? kinds.flatMap((kind) => round.flatMap((at) => together(kind, at)))
      : round.flatMap((at) => kinds.flatMap((kind) => together(kind, at)));
  }
  const once = (kind: ReadingKind, nth: number) => round.map((at) => ({ kind, at, nth }));
  if (order.by === 'kind') return kinds.flatMap((kind) => readings(kind).flatMap((nth) => once(kind, nth)));
  return [
    ...round.flatMap((at) => kinds.map((kind) => ({ kind, at, nth: 0 }))),
    ...kinds.flatMap((kind) =>
      readings(kind)
        .slice(1)
        .flatMap((nth) => once(kind, nth)),
    ),
  ];
}

/** Where a step stands among the steps; a reading beyond those wanted stands with the last of its station. */
export function indexOfStep(steps: readonly Step[], { kind, at, nth }: Step): number {
  return steps.findLastIndex((one) => one.kind === kind && one.at === at && one.nth <= nth);
}

/** The next step, after the one given and round again, that is still to be done; null when none is. */
export function nextStep(
  steps: readonly Step[],
  after: Step | null,
  isDone: (step: Step) => boolean,
): Step | null {
  const from = after === null ? -1 : indexOfStep(steps, after);
  const rest = [...steps.slice(from + 1), ...steps.slice(0, from + 1)];
  return rest.find((step) => !isDone(step)) ?? null;
}

const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'm' };

/** A step as an address carries it: `w.3`, and `w.3.1` for the second reading there. */
export function writeStep({ kind, at, nth }: Step): string {
  return `${LETTER[kind]}.${at}${nth > 0 ? `.${nth}` : ''}`;
}

/** The step that `writeStep` wrote, where there is such a station; else null. */
export function readStep(text: string | undefined, stations: readonly Place[]): Step | null {
  const named = /^([wfm])\.(\d{1,3})(?:\.(\d))?$/.exec(text ?? '');
  const at = Number(named?.[2]);
  return named && at < stations.length ? { kind: KIND_OF[named[1]!]!, at, nth: Number(named[3] ?? 0) } : null;
}
