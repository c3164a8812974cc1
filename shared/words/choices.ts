import type { CatalogueStack, CatalogueStud } from './catalogue.ts';
import type { StudCheck, StudMatch } from './stud.ts';

/** A stud of the catalogue, held against a stack. */
export interface StudChoice {
  readonly match: StudMatch;
  readonly entry: CatalogueStud;
}

/** A stack of the catalogue, held against a stud. */
export interface StackChoice {
  readonly id: string;
  readonly entry: CatalogueStack;
  readonly check: StudCheck;
  /** The stud does not go on its nut. */
  readonly otherThread: boolean;
  /** What would have to change, a sentence each. */
  readonly mends: readonly string[];
}
