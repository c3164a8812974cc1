import type { Answer } from './answer.ts';

/** The comment above one calculation in its source file. */
export interface Formula {
  /** From the folder of calculations: `cover/toolPlane`. */
  readonly name: string;
  /** The file below `src/calc`, without its ending. */
  readonly file: string;
  /** The function the comment is about. */
  readonly function: string;
  /** The comment’s lines, as they are, with the marks of a comment taken off. */
  readonly text: string;
}

/** A calculation carried out on example figures. */
export interface WorkedExample {
  /** What went in, in words. */
  readonly given: string;
  /** Results that bring their own working. */
  readonly answers: readonly Answer[];
  /** Other results, in words. */
  readonly says: readonly string[];
}
