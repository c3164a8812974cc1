import type { Job, MeasuringSetup, RingWelded } from '../../shared/words/job.ts';
import { ringToWeld } from '../calc/job/jobStage.ts';
import type { Edit } from './jobEdits.ts';

const NOTHING_SAID: MeasuringSetup = {
  gauge: '',
  gaugeFigures: null,
  gauges: [],
  chucking: null,
  residualRunoutMm: null,
  wallReadThrough: 'bare',
  stations: [],
  ringWelded: null,
};

/**
 * A ring was welded on: the set-up with it, what was said of measuring before kept. null when no ring is to be welded,
 * because it was sent a second time, or decided otherwise meanwhile.
 */
export function ringWeldedFrom(job: Job, ringWelded: RingWelded): Edit | null {
  if (!ringToWeld(job)) return null;
  return { what: 'setup', body: { ...(job.sections.setup?.body ?? NOTHING_SAID), ringWelded } };
}
