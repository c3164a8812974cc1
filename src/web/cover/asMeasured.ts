import { LOOKED } from '../../../shared/words/fields/job.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';

/** What is asked of how it is measured without a job, by the names of the question. */
export const AS_MEASURED = {
  gauge: SETUP.gaugeFigures,
  chucking: SETUP.chucking,
  releaseClearanceMm: SETUP.releaseClearanceMm,
  knockOn: SETUP.knockOn,
} as const;

export const CRACK = { crackTest: { ...LOOKED.crackTest, box: 'crack' } } as const;
