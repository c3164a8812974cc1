import type { DecisionKind } from '../job.ts';
import type { ShareInterval } from './trends.ts';

/** What each way costs the shop, and how often it judges each to come back. null: not given. */
export interface Costs {
  readonly facing: number | null;
  readonly ring: number | null;
  readonly newCover: number | null;
  readonly comeback: number | null;
  readonly facedBack: number | null;
  readonly ringedBack: number | null;
  readonly newBack: number | null;
}

/** What a way is expected to cost: under a chance of coming back, the least and the most of it. */
export interface WayCost {
  readonly way: DecisionKind;
  readonly cost: number;
  /** As the shop judges the chance; null where it does not. */
  readonly judged: { readonly chance: number; readonly expected: number } | null;
  /** As its jobs show it; null where none was released that way. */
  readonly shown: {
    readonly released: number;
    readonly back: number;
    readonly interval: ShareInterval;
    readonly low: number;
    readonly high: number;
  } | null;
}
