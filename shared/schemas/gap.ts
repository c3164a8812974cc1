import { FLEXPLATE_SEEN, GAP } from '../words/fields/gap.ts';
import { strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';

export const gapSchema = strict('The gap', shapeOf(GAP));

/** The thread is read by whoever knows how it was sent. */
export const flexplateSeenSchema = strict('The flexplate', shapeOf(FLEXPLATE_SEEN));
