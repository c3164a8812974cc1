import type { HeatMarkRow } from './heatMarks.ts';
import type { DecisionKind, Stage } from './job.ts';

/** One job of a cover that has a number of its own. */
export interface CoverJob {
  readonly number: string;
  readonly receivedOn: string;
  readonly familyName: string;
  readonly customerReference: string;
  readonly stage: Stage;
  readonly outcome: DecisionKind | null;
  /** The thinnest station as it came in, and after the cut; null where it was not measured. */
  readonly wallBeforeMm: number | null;
  readonly wallAfterMm: number | null;
  /** What its heat marks say, as it was decided; none where nothing was. */
  readonly heatMarks: readonly HeatMarkRow[];
}
