import type { CutMade, Job } from './job.ts';

/** Passes made before the ring was welded on: the walls were measured anew after it, so they are in those already. */
export function passesBeforeRing({ sections, passesAt = [], weldedAt = 0 }: Job): number {
  const made = sections.cuts?.body.cuts ?? [];
  return made.filter((_, i) => (passesAt[i] ?? Number.POSITIVE_INFINITY) < weldedAt).length;
}

/** The passes that count: those made on what was last measured. */
export function countingPasses(job: Job): readonly CutMade[] {
  return (job.sections.cuts?.body.cuts ?? []).slice(passesBeforeRing(job));
}
