import type { Answer } from '../../../../shared/words/answer.ts';
import type { Finding } from '../../../../shared/words/finding.ts';

/** A finding, with what the fold of `fits` and the ranking of a match need to know about it. */
export interface Checked {
  readonly finding: Finding;
  /** The stud's, stack's or nut's field that decides when this is not a pass. */
  readonly field: string;
  /** How far that field is off; 0 for a pass, null when it is no length. */
  readonly missMm: number | null;
  /** The reason in half a sentence, for a heading: "the tip stays inside the stack". */
  readonly short: string;
  /** What would do, in one sentence; '' when nothing of the stud would. */
  readonly mend: string;
  /** False when `fits` is not moved by it: the joint, and what needs fields nobody gave. */
  readonly counts: boolean;
  readonly answers: Readonly<Record<string, Answer>>;
}

/** A check that something missing keeps from being made: what is missing, and how to get it. */
export function notKnown(
  base: Pick<Finding, 'id' | 'title' | 'limit' | 'unit' | 'source'>,
  told: Pick<Checked, 'field' | 'short' | 'mend'> & Pick<Finding, 'sentence'>,
): Checked {
  const { sentence, ...rest } = told;
  return {
    finding: { ...base, status: 'not-checked', value: null, sentence, answer: null },
    ...rest,
    missMm: null,
    counts: true,
    answers: {},
  };
}
