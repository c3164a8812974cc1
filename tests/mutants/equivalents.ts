import type { Equivalent } from './table.ts';

/** Changes that make no difference to anybody; each with the reason. Counted apart by `npm run test:mutants`. */
export const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'views/drawings/pressureMap.tsx',
    was: 'away > half',
    becomes: 'away >= half',
    why: 'At half a sector both sides of the question give the same: 2·half − half, and 2·end − end.',
  },
];
