import type { Verdict } from './cover.ts';
import type { DecisionKind, Stage } from './job.ts';
import type { RestsOn } from './trends.ts';

/** Something found to be wrong, from a day on. */
export interface Wrong {
  readonly number: number;
  readonly at: string;
  readonly who: string;
  readonly what: RestsOn;
  readonly id: string;
  /** As it was called then. */
  readonly name: string;
  /** A day. */
  readonly since: string;
  readonly reason: string;
}

export interface WrongClosed {
  readonly jobId: number;
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
  readonly closed: WrongClosed | null;
}

/** What is to be done where a job cannot be judged again by itself. */
export const TO_DO: Readonly<Record<RestsOn, string>> = {
  gauge: 'measure it again with a sound gauge',
  stack: 'choose its studs again',
  stud: 'choose its studs again',
  'stud-calc': 'choose its studs again',
  family: 'decide it again',
  criteria: 'decide it again',
  'cover-calc': 'decide it again',
  'plate-calc': 'decide it again',
};
