import type { ReadingKind } from '../words/job.ts';
import { type Place, turned } from '../words/places.ts';

/** One thing to be measured: a kind of reading at a place, counted from 0 in the order of the job's places. */
export interface Step {
  readonly kind: ReadingKind;
  readonly at: number;
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

export interface Order {
  readonly round: Round;
  readonly by: By;
  readonly asks: Asks;
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

/** Everything to be asked, in order. */
export function stepsOf(stations: readonly Place[], order: Order): Step[] {
  const round = roundOrder(stations, order.round);
  const kinds = [...order.asks].map((letter) => KIND_OF[letter]!);
  return order.by === 'kind'
    ? kinds.flatMap((kind) => round.map((at) => ({ kind, at })))
    : round.flatMap((at) => kinds.map((kind) => ({ kind, at })));
}

/** The next step, after the one given and round again, that has no reading yet; null when every one has. */
export function nextStep(
  steps: readonly Step[],
  after: Step | null,
  measured: (step: Step) => boolean,
): Step | null {
  const from = after === null ? -1 : steps.findIndex((one) => one.kind === after.kind && one.at === after.at);
  const rest = [...steps.slice(from + 1), ...steps.slice(0, from + 1)];
  return rest.find((step) => !measured(step)) ?? null;
}
