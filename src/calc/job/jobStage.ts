import {
  type Job,
  type JobSteps,
  LOOK_ITEMS,
  type LookItem,
  type NewReading,
  type Reading,
  type ReadingKind,
  type Received,
  STEP_NAMES,
  type Stage,
  type StepName,
  type StepStands,
  type StepState,
} from '../../../shared/words/job.ts';
import { type Place, RING_WIDTH_MM, samePlace } from '../../../shared/words/places.ts';
import { coverage } from '../cover/coverage.ts';
import { placeName } from '../cover/placeNames.ts';
import { restsOnUnjoinedRing } from './ringCredit.ts';

/** What the stage of a job follows from. */
export interface StageParts {
  readonly revision: number;
  readonly sections: Job['sections'];
  /** Every reading, the replaced and withdrawing ones too. */
  readonly readings: readonly Reading[];
  /** The revision at which the cover's family last became another, or another revision of itself. */
  readonly familyChangedAt: number;
  /** The revision at which the cut to try last became another; which lathe is to cut it changes nothing decided. */
  readonly planChangedAt: number;
  /** The revision at which the depths of the cuts last changed; 0 before any cut. */
  readonly cutsChangedAt: number;
  /** The revision at which a ring was welded on; 0 while none is. What was measured and cut before is void. */
  readonly weldedAt: number;
  /** The revision at which each pass was recorded: what was measured after one is void once the next is cut. */
  readonly passesAt: readonly number[];
}

/** The readings that were neither replaced nor withdrawn. */
export function currentReadings<R extends NewReading>(readings: readonly R[]): readonly R[] {
  const known = current.get(readings);
  if (known !== undefined) return known as readonly R[];
  const replaced = new Set(readings.map(({ replaces }) => replaces));
  const found = readings.filter((r) => r.valueMm !== null && !replaced.has(r.id));
  current.set(readings, found);
  return found;
}

/** Asked by every step of the same job's readings, which may be thousands; a list is never changed once it is made. */
const current = new WeakMap<readonly NewReading[], readonly NewReading[]>();

/** Where each step stands, for pages and for what may be signed alike: done when what it is for is there. */
export function stepsOf(parts: StageParts): JobSteps {
  const { sections, weldedAt } = parts;
  const { looked, received, studs, signature } = sections;
  const decided = decisionStands(parts);
  const replaced = decided && sections.decision?.body.decision === 'replace';
  const ringDue = decided && sections.decision?.body.decision === 'face-and-ring' && weldedAt === 0;
  return {
    receive: is(received !== null),
    look: is(
      looked !== null && !crackTestMissing(sections),
      looked !== null && replaced,
      notInspected(sections).length === 0 || replaced || looksLost(sections),
    ),
    measure: is(
      measured(parts, 'before', weldedAt),
      replaced || looksLost(sections),
      replaced || looksLost(sections) || isCovered(parts, weldedAt),
    ),
    decide: is(decided),
    cut: is(cut(sections, weldedAt) && !ringDue, replaced, leftToCutMm(parts) === null),
    verify: is(
      measured(parts, 'after', Math.max(weldedAt, parts.cutsChangedAt)),
      replaced,
      toMeasureAgain(parts) === 0,
    ),
    studs: is(studs !== null, replaced),
    sign: is(signature?.revision === parts.revision),
  };
}

function is(begun: boolean, spared = false, whole = true): StepStands {
  if (begun) return whole ? 'done' : 'partly';
  return spared ? 'spared' : 'open';
}

/** The stage a job is at for as long as a step is open, in the order they are asked for. Studs may come later. */
const STAGE_AT: readonly (readonly [StepName, Stage])[] = [
  ['measure', 'to-measure'],
  ['decide', 'to-decide'],
  ['cut', 'to-cut'],
  ['verify', 'to-verify'],
  // It may be faced before cracks are looked for, but not signed.
  ['look', 'to-look'],
];

export function stageOf(parts: StageParts, steps: JobSteps = stepsOf(parts)): Stage {
  if (parts.sections.closed?.body.closed) return 'closed';
  if (steps.sign === 'done') return 'signed';
  if (parts.sections.looked === null) return 'to-look';
  return STAGE_AT.find(([step]) => steps[step] === 'open')?.[1] ?? 'to-sign';
}

/** What a page shows of each step when `next` is what is to be done: `missing` where a later one waits for it. */
export function stepsShown(steps: JobSteps, next: StepName | null): Readonly<Record<StepName, StepState>> {
  const nextIndex = next === null ? STEP_NAMES.length : STEP_NAMES.indexOf(next);
  const shown = (step: StepName, index: number): StepState => {
    if (step === next) return 'next';
    const stands = steps[step];
    if (stands !== 'open') return stands === 'spared' ? 'later' : stands;
    if (step === 'studs') return next === 'sign' ? 'missing' : 'later';
    return index < nextIndex ? 'missing' : 'later';
  };
  return Object.fromEntries(STEP_NAMES.map((step, i) => [step, shown(step, i)])) as Record<
    StepName,
    StepState
  >;
}

/** Items of the inspection that nobody has looked at. */
function notInspected({ looked }: Job['sections']): readonly LookItem[] {
  if (looked === null) return [];
  const { items } = looked.body;
  return LOOK_ITEMS.filter(
    (item) => (items.find((one) => one.item === item)?.result ?? 'not-looked') === 'not-looked',
  );
}

/** Whether the walls before the cut lie behind every stud and between them on one row, with a second row somewhere. */
function isCovered({ sections, readings }: StageParts, weldedAt: number): boolean {
  const studCount = sections.received?.body.family.studCount;
  if (studCount === undefined) return false;
  // Of thousands of repeats each place is asked about once.
  const places: Place[] = [];
  const radiiAt = new Map<number, Set<number>>();
  for (const { kind, pass, revision, angleDeg, radiusMm } of currentReadings(readings)) {
    if (kind !== 'wall' || pass !== 'before' || revision <= weldedAt) continue;
    const radii = radiiAt.get(angleDeg) ?? new Set();
    if (radii.has(radiusMm)) continue;
    radiiAt.set(angleDeg, radii.add(radiusMm));
    places.push({ angleDeg, radiusMm });
  }
  if (places.length === 0) return false;
  const { missingPlaces, secondRing } = coverage(places, studCount);
  return missingPlaces.length === 0 && secondRing;
}

/** A pass is set no closer than this (common practice, no source). */
const CUT_TO_MM = 0.003;

/**
 * What is left of the decided cut, once a pass was made; null where it is all cut, or was ended because nothing dark is
 * left.
 */
function leftToCutMm({
  sections,
  passesAt,
  weldedAt,
}: Pick<StageParts, 'sections' | 'passesAt' | 'weldedAt'>): number | null {
  const decision = sections.decision?.body;
  const made = (sections.cuts?.body.cuts ?? []).filter((_, i) => (passesAt[i] ?? weldedAt + 1) > weldedAt);
  const decidedMm = decision?.check.cut?.dialledMm;
  if (decidedMm === undefined || made.length === 0 || made.at(-1)?.look === 'gone') return null;
  const left = decidedMm - made.reduce((sum, { depthMm }) => sum + depthMm, 0);
  return left > CUT_TO_MM ? left : null;
}

/**
 * How many stations still have to be measured after the cut: those behind the studs and the three thinnest need their
 * wall, and every station its indicator reading where the shop limits the runout of the new face.
 */
function toMeasureAgain(parts: StageParts): number {
  const decision = parts.sections.decision?.body;
  if (!decision || decision.check.stations.length === 0) return 0;
  const since = Math.max(parts.weldedAt, parts.passesAt.at(-1) ?? 0);
  const after = currentReadings(parts.readings).filter(
    ({ pass, revision }) => pass === 'after' && revision > since,
  );
  const has = (kind: ReadingKind, place: Place) =>
    after.some((one) => one.kind === kind && samePlace(one, place));
  const { stations } = decision.check;
  const { studCount } = decision.input.cover;
  const thinnest = [...stations].sort((a, b) => a.wallAfterMm - b.wallAfterMm).slice(0, 3);
  const row = coverage(stations, studCount).ringRadiusMm;
  const behind = stations.filter(
    ({ angleDeg, radiusMm }) =>
      Math.abs(radiusMm - row) <= RING_WIDTH_MM && placeName(angleDeg, studCount).startsWith('behind'),
  );
  const needFace = decision.criteria.faceRunoutLimitMm !== null;
  const missing = stations.filter(
    (one) =>
      ((thinnest.includes(one) || behind.includes(one)) && !has('wall', one)) ||
      (needFace && !has('face', one)),
  );
  return missing.length;
}

/** A decision counts while nothing it rested on has changed since. */
export function decisionStands(parts: StageParts): boolean {
  const { sections } = parts;
  if (sections.decision === null) return false;
  const newest = Math.max(
    parts.familyChangedAt,
    sections.looked?.revision ?? 0,
    sections.setup?.revision ?? 0,
    parts.planChangedAt,
    lastChangeBeforeCut(parts.readings),
  );
  return newest < sections.decision.revision;
}

/** What still keeps the job from being signed, in words; empty when it may be, or has been. */
export function missingOf(job: Pick<Job, 'steps' | 'sections' | 'outcome' | 'weldedAt'>): readonly string[] {
  const { steps, sections } = job;
  const open = (step: StepName) => steps[step] === 'open';
  const missing: string[] = [];
  if (open('look')) {
    missing.push(sections.looked === null ? 'the inspection is not recorded' : 'the crack test is not done');
  }
  if (open('measure')) missing.push('no wall is measured');
  if (open('decide')) {
    missing.push(
      sections.decision === null ? 'no decision is made' : 'a new decision is needed since something changed',
    );
  }
  if (sections.decision === null) return missing;
  if (open('sign') && !open('decide') && restsOnUnjoinedRing(sections.decision.body)) {
    missing.push('the decision counts on a ring not recorded as welded to the pads: decide again');
  }
  if (ringToWeld(job)) missing.push('the ring is not welded on');
  if (open('cut') && !cut(sections, job.weldedAt ?? 0)) missing.push('no cut is recorded');
  else if (open('verify')) missing.push('no wall is measured after the last cut');
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

/** A crack, or a fault that cannot be mended: the cover is lost whatever is measured. */
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
  return currentReadings(readings).filter(
    (one) => one.revision > weldedAt && (one.pass === 'before' || one.revision > (passesAt.at(-1) ?? 0)),
  );
}

function measured(parts: StageParts, pass: Reading['pass'], since: number): boolean {
  return currentReadings(parts.readings).some(
    (r) => r.kind === 'wall' && r.pass === pass && r.revision > since,
  );
}

function lastChangeBeforeCut(readings: readonly Reading[]): number {
  const before = new Set(readings.filter((r) => r.pass === 'before').map((r) => r.id));
  const touching = readings.filter((r) => r.pass === 'before' || before.has(r.replaces ?? ''));
  return touching.reduce((newest, r) => Math.max(newest, r.revision), 0);
}
