import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { Job } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Joint } from '../../../shared/words/stud/stud.ts';
import { onResurfacedPads } from '../../calc/stud/reach/onResurfacedPads.ts';
import { type NamedEntry, type StudsRanked, studChoicesFor } from '../studChoices.ts';

/** How much lower the studs of this cover are seated, because its pads were resurfaced. */
export function resurfacedMmOf(job: Job): number {
  return job.sections.setup?.body.knockOn?.padsResurfacedMm ?? 0;
}

/** A stud as it reaches from this cover's pads. */
export function seatedOn(job: Job, entry: CatalogueStud): CatalogueStud {
  return { ...entry, stud: onResurfacedPads(entry.stud, resurfacedMmOf(job)) };
}

/**
 * Every stud held against the stack on this job's cover. What cannot be used of gap or joint takes nothing away of the
 * rest: it is left out, and told in `faults`.
 */
export function studsForJob(
  job: Job,
  studs: readonly NamedEntry<CatalogueStud>[],
  asked: {
    readonly stack: CatalogueStack | null;
    readonly pullForwardMm: number | null;
    readonly joint: Joint | null;
    readonly criteria: ShopCriteria;
  },
  unit: LengthUnit,
  /** The one chosen: it is told even where others are better. */
  studId: string | null,
): StudsRanked & { readonly faults: readonly Fault[] } {
  const { stack, pullForwardMm, joint, criteria } = asked;
  if (stack === null) return { choices: [], skipped: [], leftOut: 0, faults: [] };
  const family = job.sections.received?.body.family ?? null;
  const seated = studs.map(({ id, body }) => ({ id, body: seatedOn(job, body) }));
  let faults: readonly Fault[] = [];
  for (const [gapMm, tightened] of [
    [pullForwardMm, joint],
    [pullForwardMm, null],
    [null, null],
  ] as const) {
    try {
      const held = studChoicesFor(seated, stack, gapMm, criteria, family, unit, tightened, studId);
      return { ...held, faults };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (faults.length === 0) faults = error.faults;
    }
  }
  return { choices: [], skipped: [], leftOut: 0, faults };
}
