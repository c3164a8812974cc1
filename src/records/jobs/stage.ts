import type { Job, NewReading, Reading, Received, Stage } from '../../../shared/words/job.ts';

/** What the stage of a job follows from. */
export interface StageParts {
  readonly revision: number;
  readonly sections: Job['sections'];
  /** Every reading, the replaced and withdrawing ones too. */
  readonly readings: readonly Reading[];
  /** The revision at which the cover's family last became another, or another revision of itself. */
  readonly familyChangedAt: number;
  /** The revision at which the depths of the cuts last changed; 0 before any cut. */
  readonly cutsChangedAt: number;
  /** The revision at which a ring was welded on; 0 while none is. What was measured and cut before is void. */
  readonly weldedAt: number;
  /** The revision at which each pass was recorded: what was measured after one is void once the next is cut. */
  readonly passesAt: readonly number[];
}

/** Those that neither were replaced nor only withdraw another. */
export function standing<R extends NewReading>(readings: readonly R[]): readonly R[] {
  const replaced = new Set(readings.map((r) => r.replaces));
  return readings.filter((r) => r.valueMm !== null && !replaced.has(r.id));
}

export function stageOf(parts: StageParts): Stage {
  const { sections } = parts;
  if (sections.signature?.revision === parts.revision) return 'signed';
  if (sections.looked === null) return 'to-look';
  const decided = decisionStands(parts);
  const decision = sections.decision?.body.decision;
  if (decided && decision === 'replace') return 'to-sign';
  if (!looksLost(sections) && !measured(parts, 'before', parts.weldedAt)) return 'to-measure';
  if (!decided) return 'to-decide';
  if (!cut(sections, parts.weldedAt)) return 'to-cut';
  if (!measured(parts, 'after', Math.max(parts.weldedAt, parts.cutsChangedAt))) return 'to-verify';
  return crackTestMissing(sections) ? 'to-look' : 'to-sign';
}

/** A decision counts while nothing it rested on has changed since. */
export function decisionStands(parts: StageParts): boolean {
  const { sections } = parts;
  if (sections.decision === null) return false;
  const newest = Math.max(
    parts.familyChangedAt,
    sections.looked?.revision ?? 0,
    sections.setup?.revision ?? 0,
    sections.plan?.revision ?? 0,
    lastChangeBeforeCut(parts.readings),
  );
  return newest < sections.decision.revision;
}

/** What still keeps the job from being signed, in words; empty when it may be, or has been. */
export function missingOf(job: Job): readonly string[] {
  const { sections, stage } = job;
  if (stage === 'to-sign' || stage === 'signed') return [];
  const missing: string[] = [];
  if (sections.looked === null) missing.push('the look for cracks and faults has not been recorded');
  else if (crackTestMissing(sections) && job.outcome !== 'replace')
    missing.push('cracks have not been looked for');
  const walls = (pass: Reading['pass']) => job.readings.some((r) => r.pass === pass && r.kind === 'wall');
  if (!walls('before') && !looksLost(sections)) missing.push('no wall has been measured');
  if (sections.decision === null) {
    missing.push('no decision has been made');
  } else if (job.outcome === null) {
    missing.push('the decision was made before later changes and has to be made again');
  }
  if (job.outcome === 'replace' || sections.decision === null) return missing;
  if (ringToWeld(job)) missing.push('the ring has not been welded');
  if (!cut(sections, job.weldedAt ?? 0)) missing.push('no cut has been recorded');
  else if (stage === 'to-verify' || !walls('after'))
    missing.push('no wall has been measured after the last cut');
  return missing;
}

/** Whether it is the same cover by the catalogue's account; a note or a reference may differ. */
export function sameFamily(a: Received, b: Received): boolean {
  return (
    a.familyId === b.familyId &&
    a.familyRevision === b.familyRevision &&
    JSON.stringify(a.family) === JSON.stringify(b.family)
  );
}

/** A crack, or a fault nothing can mend: measuring would not change what becomes of it. */
function looksLost({ looked }: Job['sections']): boolean {
  if (looked === null) return false;
  return looked.body.crackTest === 'found' || looked.body.items.some((i) => i.result === 'fault' && i.final);
}

/** It may be faced first, but a cover nobody looked for cracks in is not released. */
function crackTestMissing(sections: Job['sections']): boolean {
  return sections.looked?.body.crackTest === 'not-done' && !looksLost(sections);
}

function cut({ cuts }: Job['sections'], since: number): boolean {
  return cuts !== null && cuts.body.cuts.length > 0 && cuts.revision > since;
}

/** Decided to ring it, and the ring is not on: nothing is cut before, because welding pulls the face. */
export function ringToWeld({ outcome, weldedAt = 0 }: Pick<Job, 'outcome' | 'weldedAt'>): boolean {
  return outcome === 'face-and-ring' && weldedAt === 0;
}

/** Readings that count: those that stand, without what was measured before a ring was welded on or a further pass cut. */
export function counting<R extends Reading>(
  readings: readonly R[],
  { weldedAt, passesAt }: Pick<StageParts, 'weldedAt' | 'passesAt'>,
): readonly R[] {
  return standing(readings).filter(
    (one) => one.revision > weldedAt && (one.pass === 'before' || one.revision > (passesAt.at(-1) ?? 0)),
  );
}

function measured(parts: StageParts, pass: Reading['pass'], since: number): boolean {
  return standing(parts.readings).some((r) => r.kind === 'wall' && r.pass === pass && r.revision > since);
}

function lastChangeBeforeCut(readings: readonly Reading[]): number {
  const before = new Set(readings.filter((r) => r.pass === 'before').map((r) => r.id));
  const touching = readings.filter((r) => r.pass === 'before' || before.has(r.replaces ?? ''));
  return touching.reduce((newest, r) => Math.max(newest, r.revision), 0);
}
