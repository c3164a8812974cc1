import type { RepeatsTold } from '../../../shared/words/gauges/gaugeStudies.ts';
import { pooledRepeatability } from '../../calc/measure/pooledRepeatability.ts';

/** Repeatability from ordinary jobs; null where no station was read twice in one job. */
export function repeatabilityInJobs({
  jobs,
  repeats,
}: {
  readonly jobs: number;
  readonly repeats: readonly (readonly number[])[];
}): RepeatsTold | null {
  const pooled = pooledRepeatability(repeats);
  return (
    pooled && {
      jobs,
      stations: repeats.length,
      repeatability: pooled.answer,
      degreesOfFreedom: pooled.degreesOfFreedom,
    }
  );
}
