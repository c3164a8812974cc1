import type { Joint, Layer, Nut, Stack, Stud, StudCheckInput } from '../../shared/words/stud/stud.ts';
import type { ThreadSpec } from '../../shared/words/stud/thread.ts';

type Unified = Extract<ThreadSpec, { system: 'unified' }>;
type Metric = Extract<ThreadSpec, { system: 'metric' }>;

export function unified(
  majorInch: number,
  threadsPerInch: number,
  threadClass: Unified['class'],
  series: Unified['series'] = 'UNF',
): ThreadSpec {
  return {
    system: 'unified',
    designation: `${majorInch}-${threadsPerInch} ${series}-${threadClass}`,
    majorInch,
    threadsPerInch,
    series,
    class: threadClass,
  };
}

export function metric(majorMm: number, pitchMm: number, threadClass: Metric['class']): ThreadSpec {
  return {
    system: 'metric',
    designation: `M${majorMm}×${pitchMm}-${threadClass}`,
    majorMm,
    pitchMm,
    class: threadClass,
  };
}

export const STUD: Stud = {
  thread: unified(0.375, 24, '2A'),
  threadStartMm: 1,
  threadEndMm: 20,
  projectionMm: 23,
  lengthToleranceMm: 0.25,
  pilotDiameterMm: 8,
  tensileMPa: 827,
  proofMPa: 586,
  filletMm: null,
};

export function layer(thicknessMm: number, more: Partial<Layer> = {}): Layer {
  return { name: 'plate', thicknessMm, toleranceMm: 0.1, holeDiameterMm: 10.3, chamferMm: null, ...more };
}

export const STACK: Stack = {
  style: 'one-piece',
  layers: [layer(3.2)],
  holeCount: 6,
  holeCircleDiameterMm: 286,
  tipRoomMm: 40,
};

export const NUT: Nut = {
  heightMm: 8.3,
  toleranceMm: 0.2,
  thread: unified(0.375, 24, '2B'),
  proofMPa: 827,
  tensileMPa: 827,
  countersinkMm: 0.1,
  bearingOuterDiameterMm: 14,
  washerMm: 0,
  prevailing: false,
};

export const JOINT: Joint = {
  torqueNm: 37,
  nutFactor: 0.2,
  scatter: 0.25,
  friction: 0.15,
  engineTorqueNm: 350,
  serviceFactor: 2,
  studCount: 6,
  studCircleDiameterMm: 286,
  youngMPa: null,
};

/** The example of the JSON interface: a short stud in a one-piece flexplate; everything given. */
export const EXAMPLE: StudCheckInput = {
  stud: STUD,
  stack: STACK,
  nut: NUT,
  pullForwardMm: 4,
  criteria: { protrusionThreads: 1, startThreads: 2 },
  joint: JOINT,
  coverStudCount: null,
  coverStudCircleDiameterMm: null,
};
