import type { Equivalent } from './table.ts';

/** Changes that make no difference to anybody; each with the reason. Counted apart by `npm run test:mutants`. */
export const EQUIVALENTS: readonly Equivalent[] = [
  {
    file: 'views/drawings/pressureMap.tsx',
    was: 'away > half',
    becomes: 'away >= half',
    why: 'At half a sector both sides of the question give the same: 2·half − half, and 2·end − end.',
  },
  {
    file: 'src/calc/judge/knockOnFindings.ts',
    was: 'crankPilotMm === null',
    becomes: 'false',
    why: 'A bore less nothing is a bore, which is above nothing: no limit either way.',
  },
  {
    file: 'src/calc/judge/verifyCut.ts',
    was: 'minimumTodayMm === null',
    becomes: 'false',
    why: 'Nothing is no more than any minimum, so the next question returns the same.',
  },
  {
    file: 'src/calc/judge/verifyCut.ts',
    was: 'by < -DIAL_MM',
    becomes: 'by <= -DIAL_MM',
    why: 'A difference of two dialled depths never comes to exactly a step of the dial in floating numbers.',
  },
  {
    file: 'src/calc/judge/wallFindings.ts',
    was: 'wallMm < minimum.mm - TOLERANCE_MM',
    becomes: 'wallMm <= minimum.mm - TOLERANCE_MM',
    why: 'The tolerance is there for the dust of floating numbers; no wall is exactly that far below.',
  },
  {
    file: 'src/calc/judge/dialledInFinding.ts',
    was: 'mm >= LEAST_SHIM_MM[unit] / 2',
    becomes: 'mm > LEAST_SHIM_MM[unit] / 2',
    why: 'A shim out of the solver is never exactly half of the least that prints.',
  },
  {
    file: 'src/calc/judge/gaugeFindings.ts',
    was: 'measuredOn !== null',
    becomes: 'true',
    why: 'No day comes before nothing: the comparison that follows is false by itself.',
  },
  {
    file: 'src/calc/judge/dialledInFinding.ts',
    was: 'minimum.mm - 1e-9',
    becomes: 'minimum.mm + 1e-9',
    why: 'The two differ by the dust of floating numbers only.',
  },
];
