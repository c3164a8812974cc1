import type * as z from 'zod';
import { CRITERIA } from '../words/fields/criteria.ts';
import { allOptional, type Fields } from '../words/fields/field.ts';
import { JOINT } from '../words/fields/joint.ts';
import { LAYER, NUT, STACK, STUD } from '../words/fields/stud.ts';
import {
  type Joint,
  type Layer,
  type Nut,
  PILOT_LEAD_MM,
  type Stack,
  type Stud,
  type StudCriteria,
} from '../words/stud/stud.ts';
import { count, extent, list, orElse, orNull, size, strict, text } from './fields.ts';
import { shapeOf } from './fromFields.ts';

const MOST_LAYERS = 20;

export type Refuse = (path: PropertyKey[], message: string) => void;

/** Puts a check of several fields together into the form a schema takes. */
export function across<T>(check: (value: T, refuse: Refuse) => void) {
  return (value: T, ctx: z.core.$RefinementCtx<T>): void =>
    check(value, (path, message) => ctx.addIssue({ code: 'custom', path, message }));
}

/** A stud's fields; the thread is read by whoever knows how it was sent. */
export function studFields<Thread extends z.ZodType>(thread: Thread) {
  return { thread, ...shapeOf(STUD) };
}

/** Thread start, thread end and tip come in that order; a stud is not proofed above what breaks it. */
export function refuseStud(stud: Omit<Stud, 'thread'>, refuse: Refuse): void {
  const { threadStartMm, threadEndMm, projectionMm, tensileMPa, proofMPa } = stud;
  if (threadEndMm <= threadStartMm) {
    refuse(
      ['threadEndMm'],
      `The last full thread is at ${threadEndMm} mm; it must be farther out than the first, at ${threadStartMm} mm.`,
    );
  }
  if (projectionMm < threadEndMm) {
    refuse(
      ['projectionMm'],
      `The length from pad is ${projectionMm} mm; it must be at least the last full thread’s, ${threadEndMm} mm.`,
    );
  }
  if (proofMPa !== null && tensileMPa !== null && proofMPa > tensileMPa) {
    refuse(
      ['proofMPa'],
      `The stud’s proof stress is ${proofMPa} MPa; it cannot be more than its tensile strength, ${tensileMPa} MPa.`,
    );
  }
}

export const layerSchema = strict('The entry', shapeOf(LAYER)).superRefine(
  across<Layer>(({ name, thicknessMm, toleranceMm }, refuse) => {
    if (toleranceMm < thicknessMm) return;
    refuse(
      ['toleranceMm'],
      `The tolerance of ${name} is ${toleranceMm} mm; it must be less than its thickness, ${thicknessMm} mm.`,
    );
  }),
);

export const stackSchema = strict(
  'The stack',
  shapeOf(STACK, {
    layers: list('The layers', layerSchema, {
      least: 1,
      most: MOST_LAYERS,
      empty: 'The flexplate stack has no layers; give at least the plate, with its thickness.',
    }),
  }),
) satisfies z.ZodType<Stack>;

/** A nut's fields; its thread may be left out, and is then taken as the stud's. */
export function nutFields<Thread extends z.ZodType>(thread: Thread) {
  return { thread, ...shapeOf(NUT) };
}

/** Countersinks and tolerances must leave some thread in the nut. */
export function refuseNut(
  nut: Pick<Nut, 'heightMm' | 'toleranceMm' | 'countersinkMm'>,
  refuse: Refuse,
): void {
  const { heightMm, toleranceMm, countersinkMm } = nut;
  if (2 * countersinkMm + toleranceMm < heightMm) return;
  refuse(
    ['heightMm'],
    `The nut is ${heightMm} mm high; a tolerance of ${toleranceMm} mm and two countersinks of ${countersinkMm} mm leave no thread. Measure them again.`,
  );
}

const DEFAULT_STUD_CRITERIA = {
  protrusionThreads: 1,
  startThreads: 2,
  pilotLeadMm: PILOT_LEAD_MM,
  leastPullForwardMm: null,
  mostPullForwardMm: null,
} satisfies StudCriteria;

const { protrusionThreads, startThreads, pilotLeadMm, leastPullForwardMm, mostPullForwardMm } = CRITERIA;
const studCriteriaSchema = orElse(
  strict(
    'The shop limits',
    shapeOf({
      protrusionThreads: { ...protrusionThreads, ifLeftOut: DEFAULT_STUD_CRITERIA.protrusionThreads },
      startThreads: { ...startThreads, ifLeftOut: DEFAULT_STUD_CRITERIA.startThreads },
      pilotLeadMm,
      leastPullForwardMm,
      mostPullForwardMm,
    } satisfies Fields<StudCriteria>),
  ),
  DEFAULT_STUD_CRITERIA,
);

export const jointSchema = strict('The joint', shapeOf(JOINT)) satisfies z.ZodType<Joint>;

/** A joint of which not everything is known yet. */
export const jointTypedSchema = strict('The joint', shapeOf(allOptional(JOINT)));

const MOST_CONFIRMED = 20_000;

/** Places of what looks like a slip and is right all the same: `joint.torqueNm`, `stack.layers.0.thicknessMm`. */
export const confirmedPlaces = orElse(
  list('What is confirmed', text('The place', { least: 1, most: 80 }), { most: MOST_CONFIRMED }),
  [],
);

/** What the check of one stud and the match of many have in common. */
export const studSurroundings = {
  pullForwardMm: orNull(extent('The pull-forward gap')),
  criteria: studCriteriaSchema,
  joint: orNull(jointSchema),
  coverStudCount: orNull(count('The number of studs of the cover', 2, 24)),
  coverStudCircleDiameterMm: orNull(size('The cover’s bolt circle diameter')),
};
