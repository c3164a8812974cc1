import type { Job, Reading } from '../../../shared/words/job.ts';
import { alder, received } from '../../records/samples.ts';

const kept = <Body>(body: Body) => ({
  revision: 1,
  at: '2026-11-24T08:00:00.000Z',
  who: 'AK',
  why: '',
  body,
});

/** A job of a sample cover, not yet measured but for these readings. */
export function jobWith(readings: readonly Partial<Reading>[]): Pick<Job, 'sections' | 'readings'> {
  const none = {
    looked: null,
    inspected: null,
    setup: null,
    plan: null,
    decision: null,
    cuts: null,
    studs: null,
    signature: null,
    closed: null,
  };
  return {
    sections: { received: kept(received({ family: alder })), ...none },
    readings: readings.map((one, i) => ({
      id: `reading-${i}`,
      revision: 2,
      pass: 'before',
      kind: 'wall',
      angleDeg: 0,
      radiusMm: 110,
      valueMm: 4.9,
      typed: '4.9',
      gauge: '',
      doubtful: false,
      replaces: null,
      who: 'AK',
      at: '2026-11-24T08:00:00.000Z',
      ...one,
    })),
  };
}
