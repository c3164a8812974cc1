import type { Family } from '../../../shared/words/catalogue.ts';
import type { KnownFigures } from '../../../shared/words/fields/field.ts';
import type { StudRing } from '../../../shared/words/stud/choices.ts';
import type { Stack } from '../../../shared/words/stud/stud.ts';
import { FRICTIONS, NUT_FACTORS, SCATTERS } from '../../calc/stud/joint/jointFigures.ts';

/** What the figures of a joint can be chosen from, and what counts where nothing is chosen. */
export const JOINT_FIGURES: KnownFigures = {
  kFrom: { figures: NUT_FACTORS, otherwise: null },
  scatterFrom: { figures: SCATTERS, otherwise: 'wrench' },
  muFrom: { figures: FRICTIONS, otherwise: 'clean' },
};

/** The cover's own, where one is known, else what the stack's holes say. */
export function studRing(family: Family | null, stack: Stack | null): StudRing {
  return family
    ? { count: family.studCount, circleMm: family.studCircleDiameterMm, of: 'cover' }
    : { count: stack?.holeCount ?? null, circleMm: stack?.holeCircleDiameterMm ?? null, of: 'stack' };
}
