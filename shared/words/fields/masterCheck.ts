import type { MasterCheck } from '../gauges/masterChecks.ts';
import type { Fields } from './field.ts';

/** What is typed at a check on a master. */
export const MASTER_CHECK = {
  masterMm: {
    label: 'Size of the master',
    help: 'As marked on the gauge block, ring or rod; 0 to check zero',
    box: 'master',
    kind: 'extent',
  },
  readingMm: { label: 'The gauge reads', box: 'reading', kind: 'height' },
} as const satisfies Fields<Pick<MasterCheck, 'masterMm' | 'readingMm'>>;
