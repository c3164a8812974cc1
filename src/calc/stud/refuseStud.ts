import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { StudCheckInput } from '../../../shared/words/stud.ts';
import type { ThreadSpec } from '../../../shared/words/thread.ts';
import { threadGeometry } from './thread/threadGeometry.ts';

/** Nothing of a stud or stack is longer; keeps every sum finite. */
const LONGEST_MM = 10_000;
const MOST_LAYERS = 20;

/** Throws: a Refusal naming every field that the stud calculations cannot take. Repairs nothing. */
export function refuseStud(input: StudCheckInput): void {
  const faults: Fault[] = [];
  const refuse = (path: string, message: string) => {
    faults.push({ path, message });
  };
  type Ends = { readonly above?: number; readonly from?: number; readonly below?: number };
  const number = (path: string, name: string, value: number | null, unit: string, ends: Ends) => {
    if (value === null) return;
    const u = unit === '' ? '' : ` ${unit}`;
    if (!Number.isFinite(value))
      refuse(path, `${name} is not a number; give it${unit ? ` in ${unit}` : ''}.`);
    else if (ends.above !== undefined && value <= ends.above)
      refuse(path, `${name} is ${value}${u}; it must be more than ${ends.above}${u}.`);
    else if (ends.from !== undefined && value < ends.from)
      refuse(path, `${name} is ${value}${u}; it must be ${ends.from}${u} or more.`);
    else if (ends.below !== undefined && value >= ends.below)
      refuse(path, `${name} is ${value}${u}; it must be less than ${ends.below}${u}.`);
    else if (unit === 'mm' && Math.abs(value) > LONGEST_MM)
      refuse(path, `${name} is ${value} mm; it must be at most ${LONGEST_MM} mm.`);
  };
  const length = (path: string, name: string, mm: number | null, ends: Ends) =>
    number(path, name, mm, 'mm', ends);
  const count = (path: string, name: string, value: number | null) => {
    if (value !== null && !(Number.isInteger(value) && value >= 1 && value <= 100))
      refuse(path, `${name} is ${value}; it must be a whole number from 1 to 100.`);
  };
  const thread = (path: string, spec: ThreadSpec) => {
    try {
      threadGeometry(spec);
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refuse(path, error.message);
    }
  };

  const { stud, stack, nut, criteria, joint } = input;
  thread('stud.thread', stud.thread);
  if (!['2A', '3A', '6g'].includes(stud.thread.class)) {
    refuse(
      'stud.thread',
      `The stud’s thread is given as ${stud.thread.designation}, class ${stud.thread.class}, which is a nut’s; a stud’s is 2A, 3A or 6g.`,
    );
  }
  length('stud.threadStartMm', 'The first full thread', stud.threadStartMm, {});
  length('stud.threadEndMm', 'The last full thread', stud.threadEndMm, {});
  length('stud.projectionMm', 'The stud’s projection', stud.projectionMm, { above: 0 });
  if (stud.threadEndMm <= stud.threadStartMm) {
    refuse(
      'stud.threadEndMm',
      `The last full thread is at ${stud.threadEndMm} mm; it must be beyond the first, at ${stud.threadStartMm} mm.`,
    );
  }
  if (stud.projectionMm < stud.threadEndMm) {
    refuse(
      'stud.projectionMm',
      `The stud’s tip is at ${stud.projectionMm} mm; it cannot be short of its last full thread, at ${stud.threadEndMm} mm.`,
    );
  }
  pitchDiameter(stud, (name, mm, ends) => length('stud.pitchDiameterMeasuredMm', name, mm, ends));
  length('stud.lengthToleranceMm', 'The stud’s length tolerance', stud.lengthToleranceMm, { from: 0 });
  length('stud.pilotDiameterMm', 'The pilot’s diameter', stud.pilotDiameterMm, { above: 0 });
  length('stud.filletMm', 'The stud’s fillet', stud.filletMm, { from: 0 });
  number('stud.tensileMPa', 'The stud’s tensile strength', stud.tensileMPa, 'MPa', { above: 0 });
  number('stud.proofMPa', 'The stud’s proof stress', stud.proofMPa, 'MPa', { above: 0 });
  if (stud.proofMPa !== null && stud.tensileMPa !== null && stud.proofMPa > stud.tensileMPa) {
    refuse(
      'stud.proofMPa',
      `The stud’s proof stress is ${stud.proofMPa} MPa; it cannot be above its tensile strength, ${stud.tensileMPa} MPa.`,
    );
  }

  if (stack.layers.length === 0) refuse('stack.layers', 'The stack has no layers; give at least one.');
  if (stack.layers.length > MOST_LAYERS) {
    refuse(
      'stack.layers',
      `The stack has ${stack.layers.length} layers; this works for up to ${MOST_LAYERS}.`,
    );
  }
  stack.layers.forEach((layer, i) => {
    const at = `stack.layers.${i}`;
    const name = layer.name === '' ? `layer ${i + 1}` : `the ${layer.name}`;
    length(`${at}.thicknessMm`, `The thickness of ${name}`, layer.thicknessMm, { above: 0 });
    length(`${at}.toleranceMm`, `The tolerance of ${name}`, layer.toleranceMm, {
      from: 0,
      ...(layer.thicknessMm > 0 ? { below: layer.thicknessMm } : {}),
    });
    length(`${at}.holeDiameterMm`, `The hole of ${name}`, layer.holeDiameterMm, { above: 0 });
    length(`${at}.chamferMm`, `The chamfer of ${name}`, layer.chamferMm, { from: 0 });
  });
  count('stack.holeCount', 'The number of holes', stack.holeCount);
  length('stack.holeCircleDiameterMm', 'The hole circle', stack.holeCircleDiameterMm, { above: 0 });
  length('stack.tipRoomMm', 'The room for the tip', stack.tipRoomMm, { above: 0 });

  if (nut) {
    if (nut.thread) thread('nut.thread', nut.thread);
    length('nut.heightMm', 'The nut’s height', nut.heightMm, { above: 0 });
    length('nut.toleranceMm', 'The nut’s tolerance', nut.toleranceMm, {
      from: 0,
      ...(nut.heightMm > 0 ? { below: nut.heightMm } : {}),
    });
    length('nut.countersinkMm', 'The nut’s countersink', nut.countersinkMm, {
      from: 0,
      ...(nut.heightMm > 0 ? { below: nut.heightMm / 2 } : {}),
    });
    length('nut.bearingOuterDiameterMm', 'The nut’s bearing diameter', nut.bearingOuterDiameterMm, {
      above: 0,
    });
    length('nut.washerMm', 'The washer', nut.washerMm, { from: 0 });
    number('nut.proofMPa', 'The nut’s proof stress', nut.proofMPa, 'MPa', { above: 0 });
    number('nut.tensileMPa', 'The nut’s tensile strength', nut.tensileMPa, 'MPa', { above: 0 });
  }
  length('pullForwardMm', 'The pull-forward gap', input.pullForwardMm, { from: 0 });
  number('criteria.protrusionThreads', 'The threads wanted past the nut', criteria.protrusionThreads, '', {
    from: 0,
  });
  number('criteria.startThreads', 'The threads that start a nut', criteria.startThreads, '', { from: 0 });
  if (joint) {
    number('joint.torqueNm', 'The tightening torque', joint.torqueNm, 'N·m', { above: 0 });
    number('joint.nutFactor', 'The nut factor', joint.nutFactor, '', { above: 0 });
    number('joint.scatter', 'The scatter of the preload', joint.scatter, '', { from: 0, below: 1 });
    number('joint.friction', 'The friction', joint.friction, '', { above: 0 });
    number('joint.engineTorqueNm', 'The engine’s torque', joint.engineTorqueNm, 'N·m', { above: 0 });
    number('joint.serviceFactor', 'The service factor', joint.serviceFactor, '', { above: 0 });
    number('joint.prevailingNm', 'The torque that only turns the nut', joint.prevailingNm ?? null, 'N·m', {
      from: 0,
      ...(joint.torqueNm > 0 ? { below: joint.torqueNm } : {}),
    });
    count('joint.studCount', 'The number of studs', joint.studCount);
    length('joint.studCircleDiameterMm', 'The stud circle', joint.studCircleDiameterMm, { above: 0 });
    number('joint.youngMPa', 'Young’s modulus', joint.youngMPa, 'MPa', { above: 0 });
  }
  count('coverStudCount', 'The cover’s number of studs', input.coverStudCount);
  length('coverStudCircleDiameterMm', 'The cover’s stud circle', input.coverStudCircleDiameterMm, {
    above: 0,
  });
  if (faults.length > 0) throw new Refusal('stud-input', faults);
}

/** A pitch diameter lies between the root and the crest of its thread. */
function pitchDiameter(
  { thread, pitchDiameterMeasuredMm: mm }: StudCheckInput['stud'],
  length: (name: string, mm: number, ends: { readonly above: number; readonly below: number }) => void,
): void {
  if (mm == null) return;
  try {
    const { minorMm, majorMm } = threadGeometry(thread);
    length('The pitch diameter measured', mm, { above: minorMm.basic, below: majorMm.basic });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
  }
}
