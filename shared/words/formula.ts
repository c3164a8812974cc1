import type { Answer } from './answer.ts';

/** What stands above one calculation in its own file. */
export interface Formula {
  /** From the folder of calculations: `cover/toolPlane`. */
  readonly name: string;
  /** Where it stands below `src/calc`, without its ending. */
  readonly file: string;
  /** The function it stands above. */
  readonly function: string;
  /** The comment’s lines, as they are, with the marks of a comment taken off. */
  readonly text: string;
}

/** A calculation carried out on example figures. */
export interface WorkedExample {
  /** What went in, in words. */
  readonly given: string;
  /** What came out where it brings its own working. */
  readonly answers: readonly Answer[];
  /** What came out otherwise, in words. */
  readonly says: readonly string[];
}
