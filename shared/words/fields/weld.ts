import type { RingWelded } from '../job.ts';
import type { Fields } from './field.ts';

/** Whether a ring is joined to the pads: of a cover type’s ring, and of one that is on. */
export const JOINED_TO_PADS = {
  label: 'Ring welded to the pads all around',
  help: 'Only a ring welded to the pads all around counts for stiffness.',
  none: 'not known',
  box: 'ringJoined',
  kind: 'yes-no',
  optional: true,
} as const;

/** The weld of a stiffening ring. */
export const RING_WELDED = {
  on: { label: 'Day the ring was welded on', box: 'weldedOn', kind: 'day' },
  joinedToPads: JOINED_TO_PADS,
  note: { label: 'Note on the weld', box: 'weldNote', kind: 'text', most: 2000, none: 'none' },
} as const satisfies Fields<RingWelded>;
