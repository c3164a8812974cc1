import type { Answer } from './answer.ts';

export type Status = 'pass' | 'caution' | 'fail' | 'not-checked';

/** One thing that was checked, against one limit, in one sentence a machinist understands. */
export interface Finding {
  readonly id: string;
  readonly title: string;
  readonly status: Status;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly sentence: string;
  /** Where the limit comes from. */
  readonly source: string;
  readonly answer: Answer | null;
}
