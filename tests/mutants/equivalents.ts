import type { Equivalent } from './table.ts';

/** Changes that make no difference to anybody; each with the reason. Counted apart by `npm run test:mutants`. */
export const EQUIVALENTS: readonly Equivalent[] = [];
