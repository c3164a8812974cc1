import type { Job, Pass } from '../../../shared/words/job.ts';
import { meanWalls } from './jobPlaces.ts';

/**
 * The wall at the thinnest station of one pass: min over stations of (Σ wall / n), the mean of the readings there.
 *
 * Units: mm.   Valid: any job; null where no wall was read   Source: this program's own rule, its stations as `stationsRead`
 * Example: walls of 4.9 and 5.1 at one station and 5.2 at another are 5.0 (tests/calc/job/thinnestRead.test.ts)
 */
export function thinnestRead(job: Pick<Job, 'sections' | 'readings'>, pass: Pass): number | null {
  if (!job.readings.some((one) => one.pass === pass && one.kind === 'wall')) return null;
  const walls = meanWalls(job, pass);
  return walls.length === 0 ? null : Math.min(...walls);
}
