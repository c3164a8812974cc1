import type { Verdict } from '../cover.ts';
import type { DecisionKind, Stage } from '../job.ts';
import type { Fits } from '../stud/stud.ts';
import type { RestsOn } from './trends.ts';

/** What is right of a gauge that was wrong; null where it is not known. */
export interface RightGauge {
  /** What it read too much. */
  readonly biasMm: number | null;
  readonly calibrationUMm: number | null;
}

/** Something found to be wrong, from a day on. */
export interface Wrong extends RightGauge {
  readonly number: number;
  readonly at: string;
  readonly who: string;
  readonly what: RestsOn;
  readonly id: string;
  /** The one revision that was wrong; null: each of them. */
  readonly revision: number | null;
  /** As it was called then. */
  readonly name: string;
  /** A day. */
  readonly since: string;
  readonly reason: string;
}

/** Said when a job or a slip was gone through. */
export interface WrongClosed {
  readonly at: string;
  readonly who: string;
  readonly word: string;
}

/** A job that rested on it. */
export interface RestedOn {
  readonly jobId: number;
  readonly number: string;
  readonly familyName: string;
  readonly stage: Stage;
  readonly outcome: DecisionKind | null;
  /** When what was wrong was used. */
  readonly since: string;
  /** Not judged again yet: only so many are at once. */
  readonly waits: boolean;
  /** As it was decided; null where nothing is. */
  readonly before: Verdict | null;
  /** Judged again with what is right; null where that cannot be. */
  readonly now: Verdict | null;
  /** What was measured after the cut, put right, is below the minimum; null where it is not, or is not known. */
  readonly thinAfter: string | null;
  /** Where the cover lies on the shelf, and for which job; null where it does not. */
  readonly shelf: { readonly lies: string; readonly forJob: string | null } | null;
  readonly closed: WrongClosed | null;
}

/** A counter slip that rested on it. */
export interface SlipRestedOn {
  readonly number: number;
  readonly day: string;
  readonly who: string;
  readonly customerReference: string;
  readonly stackName: string;
  readonly studName: string;
  /** Its parts were counted out of stock. */
  readonly counted: boolean;
  /** As it was answered. */
  readonly before: Fits;
  /** Answered again with what is right; null where that cannot be. */
  readonly now: Fits | null;
  readonly because: string;
  readonly closed: WrongClosed | null;
}

/** What is to be done where a job cannot be judged again by itself. */
export const TO_DO: Readonly<Record<RestsOn, string>> = {
  gauge: 'measure it again with a sound gauge',
  lathe: 'plan its passes again',
  stack: 'choose its studs again',
  stud: 'choose its studs again',
  'stud-calc': 'choose its studs again',
  family: 'decide it again',
  criteria: 'decide it again',
  'cover-calc': 'decide it again',
  'plate-calc': 'decide it again',
};
