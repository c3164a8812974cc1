import type { Answer } from './answer.ts';
import type { Weight } from './whatStops.ts';

export type Status = 'pass' | 'caution' | 'fail' | 'not-checked';

/** As every page, sheet, list and command says it. A tick stands for OK and for nothing else. */
export const STATUS_WORD: Readonly<Record<Status, string>> = {
  pass: 'OK',
  caution: 'Caution',
  fail: 'Not OK',
  'not-checked': 'Not checked',
};

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
  /** What it does while it is not met, where the shop chose otherwise than usual. */
  readonly weight?: Weight;
  /** Of `doubtful-readings`, where a request is judged: what was asked about and not confirmed. */
  readonly doubts?: readonly DoubtedReading[];
}

/** Whether the shop lets no reason and no statement get a cover past it. */
export function stops({ status, weight }: Pick<Finding, 'status' | 'weight'>): boolean {
  return status === 'fail' && weight === 'stop';
}

/** A reading that looks like a slip. */
export interface DoubtedReading {
  /** Where it is in the request: `stations.3.wallMm.1`. */
  readonly path: string;
  readonly valueMm: number;
  /** What was probably meant; null where nothing is likelier. */
  readonly probablyMm: number | null;
  readonly question: string;
}

/** A figure that was sent and looks like a slip. */
export interface DoubtedFigure {
  /** Where it is in the request: joint.torqueNm. */
  readonly path: string;
  readonly value: number;
  /** What was probably meant, in the same unit. */
  readonly probably: number;
  readonly unit: string;
  readonly question: string;
}
