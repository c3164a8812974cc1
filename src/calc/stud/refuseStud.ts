import { briefLength, type LengthUnit, printAs, printTorque, STRESS } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Joint, Nut, Stack, Stud, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import type { ThreadGeometry, ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { threadGeometry } from './thread/threadGeometry.ts';

/** Nothing of a stud or stack is longer; keeps every sum finite. */
const LONGEST_MM = 10_000;
const MOST_LAYERS = 20;

/** Throws: a Refusal naming every field that the stud calculations cannot take. Repairs nothing. */
export function refuseStud(input: StudCheckInput, unit: LengthUnit = 'mm'): void {
  const { stud, stack, nut, criteria, joint } = input;
  const faults: readonly Fault[] = [
    ...studFaults(stud, unit),
    ...stackFaults(stack, nut, unit),
    ...numbers(unit, [
      ['pullForwardMm', 'The pull-forward gap', input.pullForwardMm, 'mm', { from: 0 }],
      [
        'criteria.protrusionThreads',
        'The number of threads past the nut',
        criteria.protrusionThreads,
        '',
        { from: 0 },
      ],
      [
        'criteria.startThreads',
        'The number of threads to start a nut',
        criteria.startThreads,
        '',
        { from: 0 },
      ],
    ]),
    ...(joint ? jointFaults(joint, unit) : []),
    ...count('coverStudCount', 'The cover’s number of studs', input.coverStudCount),
    ...numbers(unit, [
      [
        'coverStudCircleDiameterMm',
        'The cover’s bolt circle',
        input.coverStudCircleDiameterMm,
        'mm',
        { above: 0 },
      ],
    ]),
  ];
  if (faults.length > 0) throw new Refusal('stud-input', faults);
}

/** What of a stud alone cannot be worked with, whatever it is held against. */
export function studFaults(stud: Stud, unit: LengthUnit): readonly Fault[] {
  const mm = (x: number) => briefLength(x, unit);
  const { thread, threadStartMm, threadEndMm, projectionMm, tensileMPa, proofMPa } = stud;
  const { geometry, faults } = worked('stud.thread', thread);
  return [
    ...faults,
    ...unless(
      ['2A', '3A', '6g'].includes(thread.class),
      'stud.thread',
      `The stud’s thread is given as ${thread.designation}, class ${thread.class}, which is a nut’s; a stud’s is 2A, 3A or 6g.`,
    ),
    ...numbers(unit, [
      ['stud.threadStartMm', 'The first full thread', threadStartMm, 'mm', {}],
      ['stud.threadEndMm', 'The last full thread', threadEndMm, 'mm', {}],
      ['stud.projectionMm', 'The length from pad', projectionMm, 'mm', { above: 0 }],
    ]),
    ...unless(
      !(threadEndMm <= threadStartMm),
      'stud.threadEndMm',
      `The last full thread is at ${mm(threadEndMm)}; it must be farther out than the first, ${mm(threadStartMm)}.`,
    ),
    ...unless(
      !(projectionMm < threadEndMm),
      'stud.projectionMm',
      `The length from pad is ${mm(projectionMm)}; it can’t be less than the last full thread, ${mm(threadEndMm)}.`,
    ),
    ...(geometry ? pitchDiameter(geometry, stud.pitchDiameterMeasuredMm ?? null, unit) : []),
    ...numbers(unit, [
      ['stud.lengthToleranceMm', 'The stud’s length tolerance', stud.lengthToleranceMm, 'mm', { from: 0 }],
      ['stud.pilotDiameterMm', 'The stud pilot diameter', stud.pilotDiameterMm, 'mm', { above: 0 }],
      ['stud.filletMm', 'The weld fillet', stud.filletMm, 'mm', { from: 0 }],
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
  unit: LengthUnit,
): readonly Fault[] {
  return [
    ...unless(
      layers.length > 0,
      'stack.layers',
      'The flexplate stack has no layers. Enter at least the plate.',
    ),
    ...unless(
      layers.length <= MOST_LAYERS,
      'stack.layers',
      `The stack has ${layers.length} layers; this works for up to ${MOST_LAYERS}.`,
    ),
    ...layers.flatMap((layer, i) => {
      const at = `stack.layers.${i}`;
      const name = layer.name === '' ? `layer ${i + 1}` : `the ${layer.name}`;
      const { thicknessMm } = layer;
      return numbers(unit, [
        [`${at}.thicknessMm`, `The thickness of ${name}`, thicknessMm, 'mm', { above: 0 }],
        [`${at}.toleranceMm`, `The tolerance of ${name}`, layer.toleranceMm, 'mm', within(thicknessMm)],
        [`${at}.holeDiameterMm`, `The hole of ${name}`, layer.holeDiameterMm, 'mm', { above: 0 }],
        [`${at}.chamferMm`, `The chamfer of ${name}`, layer.chamferMm, 'mm', { from: 0 }],
      ]);
    }),
    ...count('stack.holeCount', 'The number of holes', holeCount),
    ...numbers(unit, [
      ['stack.holeCircleDiameterMm', 'The bolt circle', holeCircleDiameterMm, 'mm', { above: 0 }],
      ['stack.tipRoomMm', 'The room for the stud end', tipRoomMm, 'mm', { above: 0 }],
    ]),
    ...(nut ? nutFaults(nut, unit) : []),
  ];
}

function nutFaults(nut: Nut, unit: LengthUnit): readonly Fault[] {
  const { heightMm, bearingOuterDiameterMm } = nut;
  return [
    ...(nut.thread ? worked('nut.thread', nut.thread).faults : []),
    ...numbers(unit, [
      ['nut.heightMm', 'The nut’s height', heightMm, 'mm', { above: 0 }],
      ['nut.toleranceMm', 'The nut’s tolerance', nut.toleranceMm, 'mm', within(heightMm)],
      ['nut.countersinkMm', 'The nut’s countersink', nut.countersinkMm, 'mm', within(heightMm / 2)],
      [
        'nut.bearingOuterDiameterMm',
        'The nut’s washer-face diameter',
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

function jointFaults(joint: Joint, unit: LengthUnit): readonly Fault[] {
  const { torqueNm, studCircleDiameterMm, prevailingNm = null } = joint;
  return [
    ...numbers(unit, [
      ['joint.torqueNm', 'The tightening torque', torqueNm, 'N·m', { above: 0 }],
      ['joint.nutFactor', 'The nut factor', joint.nutFactor, '', { above: 0 }],
      ['joint.scatter', 'The torque-wrench scatter', joint.scatter, '', { from: 0, below: 1 }],
      ['joint.friction', 'The friction', joint.friction, '', { above: 0 }],
      ['joint.engineTorqueNm', 'The engine’s torque', joint.engineTorqueNm, 'N·m', { above: 0 }],
      ['joint.serviceFactor', 'The allowance for shock load', joint.serviceFactor, '', { above: 0 }],
      ['joint.prevailingNm', 'The prevailing torque', prevailingNm, 'N·m', within(torqueNm)],
    ]),
    ...count('joint.studCount', 'The number of studs', joint.studCount),
    ...numbers(unit, [
      ['joint.studCircleDiameterMm', 'The bolt circle', studCircleDiameterMm, 'mm', { above: 0 }],
      ['joint.youngMPa', 'Young’s modulus', joint.youngMPa, 'MPa', { above: 0 }],
    ]),
  ];
}

/** A pitch diameter lies between the root and the crest of its thread. */
function pitchDiameter(
  { minorMm, majorMm }: ThreadGeometry,
  mm: number | null,
  unit: LengthUnit,
): readonly Fault[] {
  const ends = { above: minorMm.basic, below: majorMm.basic };
  return numbers(unit, [['stud.pitchDiameterMeasuredMm', 'The measured pitch diameter', mm, 'mm', ends]]);
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
function numbers(reader: LengthUnit, rows: readonly Row[]): readonly Fault[] {
  return rows.flatMap(([path, name, value, unit, ends]) => {
    const wrong = value === null ? null : wrongWith(value, unit, ends, reader);
    return wrong === null ? [] : [{ path, message: `${name} ${wrong}` }];
  });
}

function wrongWith(value: number, unit: Row[3], ends: Ends, reader: LengthUnit): string | null {
  if (!Number.isFinite(value)) return 'is not a number.';
  const must = whatItMustBe(value, unit, ends, reader);
  return must === null ? null : `is ${printed(value, unit, reader)}; it must be ${must}.`;
}

function whatItMustBe(
  value: number,
  unit: Row[3],
  { above, from, below }: Ends,
  reader: LengthUnit,
): string | null {
  if (above !== undefined && value <= above) return `more than ${printed(above, unit, reader)}`;
  if (from !== undefined && value < from) return `at least ${printed(from, unit, reader)}`;
  if (below !== undefined && value >= below) return `less than ${printed(below, unit, reader)}`;
  if (unit === 'mm' && Math.abs(value) > LONGEST_MM) return `at most ${printed(LONGEST_MM, unit, reader)}`;
  return null;
}

function printed(value: number, unit: Row[3], reader: LengthUnit): string {
  switch (unit) {
    case 'mm':
      return briefLength(value, reader);
    case 'N·m':
      return printTorque(value, reader, 1);
    case 'MPa':
      return printAs(value, STRESS[reader]);
    default:
      return `${value}`;
  }
}
