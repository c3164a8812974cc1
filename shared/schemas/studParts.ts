import type { z } from 'zod';
import { JOINT } from '../words/fields/joint.ts';
import type { Joint, Layer, Nut, Stack, Stud, StudCriteria } from '../words/stud.ts';
import {
  choice,
  count,
  extent,
  list,
  orElse,
  orNull,
  quantity,
  size,
  strict,
  text,
  yesNo,
} from './fields.ts';
import { shapeOf } from './fromFields.ts';

const MOST_LAYERS = 20;
/** Beyond any steel. */
const STRESS = { least: 0, open: true, most: 5000 };

export type Refuse = (path: PropertyKey[], message: string) => void;

/** Puts a check of several fields together into the form a schema takes. */
export function across<T>(check: (value: T, refuse: Refuse) => void) {
  return (value: T, ctx: z.core.$RefinementCtx<T>): void =>
    check(value, (path, message) => ctx.addIssue({ code: 'custom', path, message }));
}

/** A stud's fields; the thread is read by whoever knows how it was sent. */
export function studFields<Thread extends z.ZodType>(thread: Thread) {
  return {
    thread,
    threadStartMm: extent('The first full thread'),
    threadEndMm: extent('The last full thread'),
    projectionMm: size('The projection to the tip'),
    lengthToleranceMm: extent('The tolerance of the lengths'),
    pilotDiameterMm: orNull(size('The pilot’s diameter')),
    tensileMPa: orNull(quantity('The stud’s tensile strength', 'MPa', STRESS)),
    proofMPa: orNull(quantity('The stud’s proof stress', 'MPa', STRESS)),
    filletMm: orNull(extent('The weld or fillet at the pad')),
    pitchDiameterMeasuredMm: size('The pitch diameter measured').nullish(),
  };
}

/** Thread start, thread end and tip come in that order; a stud is not proofed above what breaks it. */
export function refuseStud(stud: Omit<Stud, 'thread'>, refuse: Refuse): void {
  const { threadStartMm, threadEndMm, projectionMm, tensileMPa, proofMPa } = stud;
  if (threadEndMm <= threadStartMm) {
    refuse(
      ['threadEndMm'],
      `The last full thread is at ${threadEndMm} mm; it must lie beyond the first one, at ${threadStartMm} mm.`,
    );
  }
  if (projectionMm < threadEndMm) {
    refuse(
      ['projectionMm'],
      `The stud projects ${projectionMm} mm; its tip cannot lie before the last full thread, at ${threadEndMm} mm.`,
    );
  }
  if (proofMPa !== null && tensileMPa !== null && proofMPa > tensileMPa) {
    refuse(
      ['proofMPa'],
      `The stud’s proof stress is ${proofMPa} MPa; it cannot be more than its tensile strength, ${tensileMPa} MPa.`,
    );
  }
}

const layer = strict('The entry', {
  name: text('The name', { least: 1, most: 60 }),
  thicknessMm: size('The thickness'),
  toleranceMm: extent('The tolerance'),
  holeDiameterMm: orNull(size('The hole’s diameter')),
  chamferMm: orNull(extent('The hole’s chamfer')),
}).superRefine(
  across<Layer>(({ name, thicknessMm, toleranceMm }, refuse) => {
    if (toleranceMm < thicknessMm) return;
    refuse(
      ['toleranceMm'],
      `The tolerance of ${name} is ${toleranceMm} mm; it must be less than its thickness, ${thicknessMm} mm.`,
    );
  }),
);

export const stackSchema = strict('The stack', {
  style: choice('The style of the stack', ['one-piece', 'two-piece']),
  layers: list('The layers', layer, {
    least: 1,
    most: MOST_LAYERS,
    empty: 'The stack has no layers; give at least the plate, with its thickness.',
  }),
  holeCount: orNull(count('The number of holes', 2, 24)),
  holeCircleDiameterMm: orNull(size('The hole circle’s diameter')),
  tipRoomMm: orNull(size('The room for the stud’s tip')),
}) satisfies z.ZodType<Stack>;

/** A nut's fields; its thread may be left out, and is then taken as the stud's. */
export function nutFields<Thread extends z.ZodType>(thread: Thread) {
  return {
    heightMm: size('The nut’s height'),
    toleranceMm: extent('The tolerance of the nut’s height'),
    thread,
    proofMPa: orNull(quantity('The nut’s proof stress', 'MPa', STRESS)),
    tensileMPa: orNull(quantity('The nut’s tensile strength', 'MPa', STRESS)),
    countersinkMm: extent('The nut’s countersink'),
    bearingOuterDiameterMm: orNull(size('The nut’s bearing diameter')),
    washerMm: orElse(extent('The washer’s thickness'), 0),
    prevailing: orElse(yesNo('Whether the nut is a prevailing-torque nut'), false),
  };
}

/** Countersinks and tolerances must leave some thread in the nut. */
export function refuseNut(nut: Omit<Nut, 'thread'>, refuse: Refuse): void {
  const { heightMm, toleranceMm, countersinkMm } = nut;
  if (2 * countersinkMm + toleranceMm < heightMm) return;
  refuse(
    ['heightMm'],
    `The nut is ${heightMm} mm high; nothing of it is left after a tolerance of ${toleranceMm} mm and two countersinks of ${countersinkMm} mm.`,
  );
}

export const pullForward = orNull(extent('The pull-forward gap'));

const DEFAULT_STUD_CRITERIA: StudCriteria = { protrusionThreads: 1, startThreads: 2 };
const threads = (name: string) => quantity(name, 'threads', { least: 0, most: 20 });

const studCriteriaSchema = orElse(
  strict('The criteria', {
    protrusionThreads: orElse(threads('The protrusion wanted'), DEFAULT_STUD_CRITERIA.protrusionThreads),
    startThreads: orElse(threads('The start wanted'), DEFAULT_STUD_CRITERIA.startThreads),
  }),
  DEFAULT_STUD_CRITERIA,
);

export const jointSchema = strict('The joint', shapeOf(JOINT)) satisfies z.ZodType<Joint>;

/** What the check of one stud and the match of many have in common. */
export const studSurroundings = {
  pullForwardMm: pullForward,
  criteria: studCriteriaSchema,
  joint: orNull(jointSchema),
  coverStudCount: orNull(count('The number of studs of the cover', 2, 24)),
  coverStudCircleDiameterMm: orNull(size('The cover’s stud circle’s diameter')),
};
