import { CALIPER } from '../words/fields/caliper.ts';
import { allOptional } from '../words/fields/field.ts';
import { STUD } from '../words/fields/stud.ts';
import type { StudLengths } from '../words/stud/choices.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { across, refuseStud } from './studParts.ts';

/** A thread as it was measured. */
export const threadTypedSchema = strict('The thread', shapeOf(CALIPER));

const { thread: _made, ...FIGURES } = STUD;

/** A stud of which not every length was measured. */
export const studFiguresSchema = strict('The stud', shapeOf(allOptional(FIGURES))).superRefine(
  across<StudLengths>(({ threadStartMm, threadEndMm, projectionMm, pilotDiameterMm }, refuse) => {
    if (threadEndMm === null || projectionMm === null) return;
    const rest = { lengthToleranceMm: 0, tensileMPa: null, proofMPa: null, filletMm: null };
    const startMm = threadStartMm ?? Number.NEGATIVE_INFINITY;
    refuseStud({ ...rest, threadStartMm: startMm, threadEndMm, projectionMm, pilotDiameterMm }, refuse);
  }),
);
