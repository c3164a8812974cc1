import {
  type Expected,
  type ReadBefore,
  type ReadingInDoubt,
  readingDoubt,
} from '../../../shared/measuring/readingDoubt.ts';
import type { Doubt } from '../../../shared/quantity/doubt.ts';
import type { Job, Pass, Reading } from '../../../shared/words/job.ts';
import { countingPasses } from '../../../shared/words/passes.ts';
import { wallsLeftBy } from '../../calc/cover/face/wallsLeftBy.ts';
import { meanOfRepeats } from '../../calc/measure/meanOfRepeats.ts';
import { expectedOf } from './coverDoubts.ts';

/** What a new reading of a job is held against: the readings of its pass that count, and what else is known. */
export interface HeldAgainst {
  readonly others: readonly ReadBefore[];
  readonly expected: Expected;
}

/** `replaced`: ids of the readings the new one takes the place of, which say nothing of it. */
export function heldAgainst(job: Job, pass: Pass, replaced: readonly string[] = []): HeldAgainst {
  const others = othersOf(job, pass, replaced).map(({ kind, angleDeg, radiusMm, valueMm }) => ({
    kind,
    angleDeg,
    radiusMm,
    valueMm,
  }));
  return { others, expected: expectedAt(job, pass) };
}

function expectedAt(job: Job, pass: Pass): Expected {
  const { received, setup } = job.sections;
  const { cut: _, ...known } = expectedOf(
    received?.body.family.nominalWallMm ?? 0,
    setup?.body.gaugeFigures ?? null,
  );
  return { ...known, cut: pass === 'after' ? cutOf(job) : null };
}

function othersOf(job: Job, pass: Pass, replaced: readonly string[]): readonly ReadBefore[] {
  const gone = new Set(replaced);
  return job.readings.filter(
    (one): one is Reading & ReadBefore => one.pass === pass && one.valueMm !== null && !gone.has(one.id),
  );
}

/** Asks about a new reading of a job; `beside` are others sent along with it. null where there is nothing to ask. */
export function jobReadingDoubt(
  job: Job,
  pass: Pass,
  reading: ReadingInDoubt,
  { replaced = [], beside = [] }: { replaced?: readonly string[]; beside?: readonly ReadBefore[] } = {},
): Doubt | null {
  const others = othersOf(job, pass, replaced).concat(beside);
  return readingDoubt(reading, others, expectedAt(job, pass));
}

/** The walls the decision was made on, and what the passes made since should have left of them. */
function cutOf(job: Job): Expected['cut'] {
  const decision = job.sections.decision?.body;
  const passes = countingPasses(job);
  if (!decision || passes.length === 0) return null;
  const { stations } = decision.input;
  const left = wallsLeftBy(
    stations,
    passes.reduce((sum, { depthMm }) => sum + depthMm, 0),
  );
  return {
    walls: stations.map(({ angleDeg, radiusMm, wallMm }, i) => ({
      angleDeg,
      radiusMm,
      beforeMm: meanOfRepeats(wallMm),
      leftMm: left[i]!,
    })),
    allowanceMm: decision.criteria.cleanUpAllowanceMm,
  };
}
