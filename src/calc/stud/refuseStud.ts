import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Joint, Nut, Stack, Stud, StudCheckInput } from '../../../shared/words/stud.ts';
import type { ThreadGeometry, ThreadSpec } from '../../../shared/words/thread.ts';
import { threadGeometry } from './thread/threadGeometry.ts';

/** Nothing of a stud or stack is longer; keeps every sum finite. */
const LONGEST_MM = 10_000;
const MOST_LAYERS = 20;

/** Throws: a Refusal naming every field that the stud calculations cannot take. Repairs nothing. */
export function refuseStud(input: StudCheckInput): void {
  const { stud, stack, nut, criteria, joint } = input;
  const faults: readonly Fault[] = [
    ...studFaults(stud),
    ...stackFaults(stack, nut),
    ...numbers([
      ['pullForwardMm', 'The pull-forward gap', input.pullForwardMm, 'mm', { from: 0 }],
      [
        'criteria.protrusionThreads',
        'The threads wanted past the nut',
        criteria.protrusionThreads,
        '',
        { from: 0 },
      ],
      ['criteria.startThreads', 'The threads that start a nut', criteria.startThreads, '', { from: 0 }],
    ]),
    ...(joint ? jointFaults(joint) : []),
    ...count('coverStudCount', 'The cover’s number of studs', input.coverStudCount),
    ...numbers([
      [
        'coverStudCircleDiameterMm',
        'The cover’s stud circle',
        input.coverStudCircleDiameterMm,
        'mm',
        { above: 0 },
      ],
    ]),
  ];
  if (faults.length > 0) throw new Refusal('stud-input', faults);
}

/** What of a stud alone cannot be worked with, whatever it is held against. */
export function studFaults(stud: Stud): readonly Fault[] {
  const { thread, threadStartMm, threadEndMm, projectionMm, tensileMPa, proofMPa } = stud;
  const { geometry, faults } = worked('stud.thread', thread);
  return [
    ...faults,
    ...unless(
      ['2A', '3A', '6g'].includes(thread.class),
      'stud.thread',
      `The stud’s thread is given as ${thread.designation}, class ${thread.class}, which is a nut’s; a stud’s is 2A, 3A or 6g.`,
    ),
    ...numbers([
      ['stud.threadStartMm', 'The first full thread', threadStartMm, 'mm', {}],
      ['stud.threadEndMm', 'The last full thread', threadEndMm, 'mm', {}],
      ['stud.projectionMm', 'The stud’s projection', projectionMm, 'mm', { above: 0 }],
    ]),
    ...unless(
      !(threadEndMm <= threadStartMm),
      'stud.threadEndMm',
      `The last full thread is at ${threadEndMm} mm; it must be beyond the first, at ${threadStartMm} mm.`,
    ),
    ...unless(
      !(projectionMm < threadEndMm),
      'stud.projectionMm',
      `The stud’s tip is at ${projectionMm} mm; it cannot be short of its last full thread, at ${threadEndMm} mm.`,
    ),
    ...(geometry ? pitchDiameter(geometry, stud.pitchDiameterMeasuredMm ?? null) : []),
    ...numbers([
      ['stud.lengthToleranceMm', 'The stud’s length tolerance', stud.lengthToleranceMm, 'mm', { from: 0 }],
      ['stud.pilotDiameterMm', 'The pilot’s diameter', stud.pilotDiameterMm, 'mm', { above: 0 }],
      ['stud.filletMm', 'The stud’s fillet', stud.filletMm, 'mm', { from: 0 }],
      ['stud.tensileMPa', 'The stud’s tensile strength', tensileMPa, 'MPa', { above: 0 }],
      ['stud.proofMPa', 'The stud’s proof stress', proofMPa, 'MPa', { above: 0 }],
    ]),
    ...unless(
      proofMPa === null || tensileMPa === null || !(proofMPa > tensileMPa),
      'stud.proofMPa',
      `The stud’s proof stress is ${proofMPa} MPa; it cannot be above its tensile strength, ${tensileMPa} MPa.`,
    ),
  ];
}

/** What of a stack and its nut alone cannot be worked with. */
export function stackFaults(
  { layers, holeCount, holeCircleDiameterMm, tipRoomMm }: Stack,
  nut: Nut | null,
): readonly Fault[] {
  return [
    ...unless(layers.length > 0, 'stack.layers', 'The stack has no layers; give at least one.'),
    ...unless(
      layers.length <= MOST_LAYERS,
      'stack.layers',
      `The stack has ${layers.length} layers; this works for up to ${MOST_LAYERS}.`,
    ),
    ...layers.flatMap((layer, i) => {
      const at = `stack.layers.${i}`;
      const name = layer.name === '' ? `layer ${i + 1}` : `the ${layer.name}`;
      const { thicknessMm } = layer;
      return numbers([
        [`${at}.thicknessMm`, `The thickness of ${name}`, thicknessMm, 'mm', { above: 0 }],
        [`${at}.toleranceMm`, `The tolerance of ${name}`, layer.toleranceMm, 'mm', within(thicknessMm)],
        [`${at}.holeDiameterMm`, `The hole of ${name}`, layer.holeDiameterMm, 'mm', { above: 0 }],
        [`${at}.chamferMm`, `The chamfer of ${name}`, layer.chamferMm, 'mm', { from: 0 }],
      ]);
    }),
    ...count('stack.holeCount', 'The number of holes', holeCount),
    ...numbers([
      ['stack.holeCircleDiameterMm', 'The hole circle', holeCircleDiameterMm, 'mm', { above: 0 }],
      ['stack.tipRoomMm', 'The room for the tip', tipRoomMm, 'mm', { above: 0 }],
    ]),
    ...(nut ? nutFaults(nut) : []),
  ];
}

function nutFaults(nut: Nut): readonly Fault[] {
  const { heightMm, bearingOuterDiameterMm } = nut;
  return [
    ...(nut.thread ? worked('nut.thread', nut.thread).faults : []),
    ...numbers([
      ['nut.heightMm', 'The nut’s height', heightMm, 'mm', { above: 0 }],
      ['nut.toleranceMm', 'The nut’s tolerance', nut.toleranceMm, 'mm', within(heightMm)],
      ['nut.countersinkMm', 'The nut’s countersink', nut.countersinkMm, 'mm', within(heightMm / 2)],
      [
        'nut.bearingOuterDiameterMm',
        'The nut’s bearing diameter',
        bearingOuterDiameterMm,
        'mm',
        { above: 0 },
      ],
      ['nut.washerMm', 'The washer', nut.washerMm, 'mm', { from: 0 }],
      ['nut.proofMPa', 'The nut’s proof stress', nut.proofMPa, 'MPa', { above: 0 }],
      ['nut.tensileMPa', 'The nut’s tensile strength', nut.tensileMPa, 'MPa', { above: 0 }],
    ]),
  ];
}

function jointFaults(joint: Joint): readonly Fault[] {
  const { torqueNm, studCircleDiameterMm, prevailingNm = null } = joint;
  return [
    ...numbers([
      ['joint.torqueNm', 'The tightening torque', torqueNm, 'N·m', { above: 0 }],
      ['joint.nutFactor', 'The nut factor', joint.nutFactor, '', { above: 0 }],
      ['joint.scatter', 'The scatter of the preload', joint.scatter, '', { from: 0, below: 1 }],
      ['joint.friction', 'The friction', joint.friction, '', { above: 0 }],
      ['joint.engineTorqueNm', 'The engine’s torque', joint.engineTorqueNm, 'N·m', { above: 0 }],
      ['joint.serviceFactor', 'The service factor', joint.serviceFactor, '', { above: 0 }],
      ['joint.prevailingNm', 'The torque that only turns the nut', prevailingNm, 'N·m', within(torqueNm)],
    ]),
    ...count('joint.studCount', 'The number of studs', joint.studCount),
    ...numbers([
      ['joint.studCircleDiameterMm', 'The stud circle', studCircleDiameterMm, 'mm', { above: 0 }],
      ['joint.youngMPa', 'Young’s modulus', joint.youngMPa, 'MPa', { above: 0 }],
    ]),
  ];
}

/** A pitch diameter lies between the root and the crest of its thread. */
function pitchDiameter({ minorMm, majorMm }: ThreadGeometry, mm: number | null): readonly Fault[] {
  const ends = { above: minorMm.basic, below: majorMm.basic };
  return numbers([['stud.pitchDiameterMeasuredMm', 'The pitch diameter measured', mm, 'mm', ends]]);
}

/** The sizes of a thread, or why they cannot be worked out. */
function worked(
  path: string,
  spec: ThreadSpec,
): { readonly geometry: ThreadGeometry | null; readonly faults: readonly Fault[] } {
  try {
    return { geometry: threadGeometry(spec), faults: [] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { geometry: null, faults: [{ path, message: error.message }] };
  }
}

interface Ends {
  readonly above?: number;
  readonly from?: number;
  readonly below?: number;
}

/** From 0 to less than the whole; without an upper end where the whole itself is wrong. */
function within(whole: number): Ends {
  return whole > 0 ? { from: 0, below: whole } : { from: 0 };
}

function unless(right: boolean, path: string, message: string): readonly Fault[] {
  return right ? [] : [{ path, message }];
}

function count(path: string, name: string, value: number | null): readonly Fault[] {
  const right = value === null || (Number.isInteger(value) && value >= 1 && value <= 100);
  return unless(right, path, `${name} is ${value}; it must be a whole number from 1 to 100.`);
}

type Row = readonly [path: string, name: string, value: number | null, unit: 'mm' | 'MPa' | 'N·m' | '', Ends];

/** The faults of many numbers; null stands for a number that was not given and has none. */
function numbers(rows: readonly Row[]): readonly Fault[] {
  return rows.flatMap(([path, name, value, unit, ends]) => {
    const wrong = value === null ? null : wrongWith(value, unit, ends);
    return wrong === null ? [] : [{ path, message: `${name} ${wrong}` }];
  });
}

function wrongWith(value: number, unit: Row[3], { above, from, below }: Ends): string | null {
  const u = unit === '' ? '' : ` ${unit}`;
  if (!Number.isFinite(value)) return `is not a number; give it${unit ? ` in ${unit}` : ''}.`;
  if (above !== undefined && value <= above) return `is ${value}${u}; it must be more than ${above}${u}.`;
  if (from !== undefined && value < from) return `is ${value}${u}; it must be ${from}${u} or more.`;
  if (below !== undefined && value >= below) return `is ${value}${u}; it must be less than ${below}${u}.`;
  if (unit === 'mm' && Math.abs(value) > LONGEST_MM)
    return `is ${value} mm; it must be at most ${LONGEST_MM} mm.`;
  return null;
}
