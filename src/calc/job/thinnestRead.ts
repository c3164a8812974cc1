import type { Job, Pass } from '../../../shared/words/job.ts';
import { stationsRead } from './jobPlaces.ts';

/**
 * The wall at the thinnest station of one pass: min over stations of (Σ wall / n), the mean of the readings there.
 *
 * Units: mm.   Valid: any job; null where no wall was read   Source: this program's own rule, as `stationsRead`
 * Example: walls of 4.9 and 5.1 at one station and 5.2 at another are 5.0 (tests/calc/job/thinnestRead.test.ts)
 */
export function thinnestRead(job: Pick<Job, 'sections' | 'readings'>, pass: Pass): number | null {
  if (!job.readings.some((one) => one.pass === pass && one.kind === 'wall')) return null;
  const walls = stationsRead(job, pass).flatMap(({ readings }) => {
    const read = readings.flatMap(({ kind, valueMm }) =>
      kind === 'wall' && valueMm !== null ? [valueMm] : [],
    );
    return read.length === 0 ? [] : [read.reduce((sum, mm) => sum + mm, 0) / read.length];
  });
  return walls.length === 0 ? null : Math.min(...walls);
}
