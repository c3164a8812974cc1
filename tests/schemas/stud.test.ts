import { describe, expect, test } from 'vitest';
import { studCheckSchema } from '../../shared/schemas/studCheck.ts';
import { studMatchSchema } from '../../shared/schemas/studMatch.ts';
import { threadSchema } from '../../shared/schemas/thread.ts';
import { changed, faults, taken } from './changed.ts';

const STUD = {
  thread: '3/8-24 UNF-2A',
  threadStartMm: 1.0,
  threadEndMm: 20.0,
  projectionMm: 23.0,
  lengthToleranceMm: 0.25,
  pilotDiameterMm: 8.0,
  tensileMPa: 827,
  proofMPa: 586,
};

/** The request of the interface page. */
const REQUEST = {
  stud: STUD,
  stack: {
    style: 'one-piece',
    layers: [{ name: 'plate', thicknessMm: 3.2, toleranceMm: 0.1, holeDiameterMm: 10.3 }],
    holeCount: 6,
    holeCircleDiameterMm: 286,
    tipRoomMm: 40,
  },
  nut: {
    heightMm: 8.3,
    toleranceMm: 0.2,
    thread: '3/8-24 UNF-2B',
    proofMPa: 827,
    tensileMPa: 827,
    countersinkMm: 0.1,
    bearingOuterDiameterMm: 14,
    washerMm: 0,
    prevailing: false,
  },
  pullForwardMm: 4.0,
  criteria: { protrusionThreads: 1, startThreads: 2 },
  joint: {
    torqueNm: 37,
    nutFactor: 0.2,
    scatter: 0.25,
    friction: 0.15,
    engineTorqueNm: 350,
    serviceFactor: 2.0,
    studCount: 6,
    studCircleDiameterMm: 286,
  },
};

const UNF_38 = { system: 'unified', majorInch: 0.375, threadsPerInch: 24, series: 'UNF' };

test('a whole stud request comes through, its threads read', () => {
  expect(taken(studCheckSchema, REQUEST)).toEqual({
    ...REQUEST,
    stud: {
      ...STUD,
      thread: { ...UNF_38, designation: '3/8-24 UNF-2A', class: '2A' },
      filletMm: null,
      pitchDiameterMeasuredMm: null,
    },
    stack: {
      ...REQUEST.stack,
      layers: [{ ...REQUEST.stack.layers[0], kind: null, chamferMm: null }],
      leastPullForwardMm: null,
      mostPullForwardMm: null,
    },
    criteria: { ...REQUEST.criteria, pilotLeadMm: 1, leastPullForwardMm: null, mostPullForwardMm: null },
    nut: { ...REQUEST.nut, thread: { ...UNF_38, designation: '3/8-24 UNF-2B', class: '2B' } },
    joint: {
      ...REQUEST.joint,
      youngMPa: null,
      prevailingNm: null,
      studsUsedBefore: false,
      surface: 'rz-10-to-40',
      retightened: false,
    },
    coverStudCount: null,
    coverStudCircleDiameterMm: null,
  });
});

test('a field left out of a stud request is null', () => {
  const { stud, stack } = REQUEST;
  const bare = { style: stack.style, layers: [{ name: 'plate', thicknessMm: 3.2, toleranceMm: 0.1 }] };
  expect(taken(studCheckSchema, { stud, stack: bare })).toMatchObject({
    stack: {
      holeCount: null,
      holeCircleDiameterMm: null,
      tipRoomMm: null,
      layers: [{ holeDiameterMm: null }],
    },
    nut: null,
    pullForwardMm: null,
    criteria: { protrusionThreads: 1, startThreads: 2 },
    joint: null,
  });
  const nut = { heightMm: 8.3, toleranceMm: 0.2, countersinkMm: 0.1 };
  expect(taken(studCheckSchema, { stud, stack: bare, nut, criteria: { startThreads: 3 } })).toMatchObject({
    nut: { thread: null, proofMPa: null, tensileMPa: null, washerMm: 0, prevailing: false },
    criteria: { protrusionThreads: 1, startThreads: 3 },
  });
});

describe('each wrong field is named, with one sentence', () => {
  test.each<[string, unknown, string]>([
    [
      'stud.thread',
      '3/8-24 UNC',
      'Thread: "3/8-24 UNC" is named UNC, but 3/8-24 is UNF, and 3/8 UNC has 16 threads per inch. Did you mean 3/8-24 UNF-2A?',
    ],
    [
      'stud.thread',
      '3/8-24 UNF-2B',
      'Thread: "3/8-24 UNF-2B" has class 2B, which is a nut’s; a stud’s is 2A or 3A.',
    ],
    ['stud.thread', 24, 'The thread must be a callout in text, such as "7/16-20 UNF-2A" or "M10x1.25".'],
    [
      'stud.threadStartMm',
      -1,
      'The first full thread is -1 mm; it must be at least 0 mm and at most 10000 mm.',
    ],
    [
      'stud.threadEndMm',
      0.5,
      'The last full thread is at 0.5 mm; it must be farther out than the first, at 1 mm.',
    ],
    [
      'stud.threadEndMm',
      1,
      'The last full thread is at 1 mm; it must be farther out than the first, at 1 mm.',
    ],
    [
      'stud.projectionMm',
      19.9,
      'The length from pad is 19.9 mm; it must be at least the last full thread’s, 20 mm.',
    ],
    ['stud.projectionMm', '23', 'The length from pad was sent as the text "23"; send a plain number of mm.'],
    ['stud.lengthToleranceMm', undefined, 'The length tolerance is missing; give a plain number of mm.'],
    [
      'stud.pilotDiameterMm',
      0,
      'The stud pilot diameter is 0 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'stud.proofMPa',
      828,
      'The stud’s proof stress is 828 MPa; it cannot be more than its tensile strength, 827 MPa.',
    ],
    [
      'stud.lengthMm',
      23,
      '"lengthMm" is no field here; take it out or check its spelling. Known here are thread, threadStartMm, threadEndMm, projectionMm, lengthToleranceMm, pilotDiameterMm, tensileMPa, proofMPa, filletMm, pitchDiameterMeasuredMm.',
    ],
    [
      'stack.style',
      'three-piece',
      'The flexplate was sent as the text "three-piece"; it is "one-piece" or "two-piece".',
    ],
    ['stack.layers', [], 'The flexplate stack has no layers; give at least the plate, with its thickness.'],
    [
      'stack.layers.0.thicknessMm',
      0,
      'The thickness of layer 1 is 0 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'stack.layers.0.thicknessMm',
      -3.2,
      'The thickness of layer 1 is -3.2 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    [
      'stack.layers.0.toleranceMm',
      3.2,
      'The tolerance of plate is 3.2 mm; it must be less than its thickness, 3.2 mm.',
    ],
    ['stack.layers.0.name', '  ', 'The name of layer 1 is empty. Enter it.'],
    ['stack.layers.0.name', 'x'.repeat(61), 'The name of layer 1 has 61 characters; at most 60 are kept.'],
    ['stack.layers.0.name', 'a\nb', 'The name of layer 1 has a control character in it; take it out.'],
    ['stack.holeCount', 1, 'The number of holes is 1; it must be a whole number from 2 to 24.'],
    [
      'stack.tipRoomMm',
      -1,
      'The room for the stud end is -1 mm; it must be more than 0 mm and at most 10000 mm.',
    ],
    ['nut.heightMm', 0, 'The nut height is 0 mm; it must be more than 0 mm and at most 10000 mm.'],
    [
      'nut.countersinkMm',
      4.1,
      'The nut is 8.3 mm high; a tolerance of 0.2 mm and two countersinks of 4.1 mm leave no thread. Measure them again.',
    ],
    ['nut.countersinkMm', undefined, 'The nut countersink is missing; give a plain number of mm.'],
    [
      'nut.thread',
      '3/8-24 UNF-2A',
      'Thread: "3/8-24 UNF-2A" has class 2A, which is a stud’s; a nut’s is 2B or 3B.',
    ],
    ['nut.prevailing', 'no', 'Prevailing-torque (locking) nut must be true or false.'],
    [
      'pullForwardMm',
      -0.1,
      'The pull-forward gap is -0.1 mm; it must be at least 0 mm and at most 10000 mm.',
    ],
    [
      'criteria.startThreads',
      -1,
      'The threads showing to start the nut by hand is -1 threads; it must be at least 0 threads and at most 20 threads.',
    ],
    ['joint.torqueNm', 0, 'The tightening torque is 0 N·m; it must be more than 0 N·m and at most 5000 N·m.'],
    ['joint.scatter', 1, 'The torque-wrench scatter is 1; it must be at least 0 and at most 0.95.'],
    [
      'joint.friction',
      15,
      'The friction between pad and flexplate is 15; it must be more than 0 and at most 1.',
    ],
    ['joint.studCount', 6.5, 'The number of studs is 6.5; it must be a whole number from 2 to 24.'],
  ])('a stud request with %s = %j is refused there', (path, value, message) => {
    const named = value === 4.1 ? 'nut.heightMm' : path;
    expect(faults(studCheckSchema, changed(REQUEST, path, value))).toEqual([{ path: named, message }]);
  });
});

describe('a match', () => {
  const { stud: _, ...surroundings } = REQUEST;

  test('a match without studs means those of the catalog', () => {
    expect(taken(studMatchSchema, surroundings).studs).toBeNull();
    expect(taken(studMatchSchema, { ...surroundings, studs: null }).studs).toBeNull();
  });

  test('studs of a match are sent flat, each with its id', () => {
    const [first] = taken(studMatchSchema, { ...surroundings, studs: [{ id: 'long', ...STUD }] }).studs ?? [];
    expect(first).toMatchObject({
      id: 'long',
      stud: { projectionMm: 23, thread: { class: '2A' }, filletMm: null, pitchDiameterMeasuredMm: null },
    });
    expect(first?.stud).not.toHaveProperty('id');
  });

  test.each<[unknown, string, string]>([
    [[], 'studs', 'The list of studs is empty. Leave it out to match every stud of the catalog.'],
    [
      [
        { id: 'a', ...STUD },
        { id: 'a', ...STUD },
      ],
      'studs.1.id',
      'The id "a" is listed twice among the studs; make each one different.',
    ],
    [[STUD], 'studs.0.id', 'The id of stud 1 in the list is missing; give it as text.'],
    [
      [{ id: 'a', ...STUD, threadEndMm: 0.5 }],
      'studs.0.threadEndMm',
      'The last full thread is at 0.5 mm; it must be farther out than the first, at 1 mm.',
    ],
    [
      Array.from({ length: 501 }, (_, i) => ({ id: `${i}`, ...STUD })),
      'studs',
      'The studs: 501 were sent; at most 500 can be taken at once.',
    ],
  ])('a match with unusable studs is refused at the stud (case %#)', (studs, path, message) => {
    expect(faults(studMatchSchema, { ...surroundings, studs })).toEqual([{ path, message }]);
  });
});

test('a thread sent alone may be a stud’s or a nut’s', () => {
  expect(taken(threadSchema, { thread: '7/16-20' }).thread.designation).toBe('7/16-20 UNF-2A');
  expect(taken(threadSchema, { thread: 'M10-6H' }).thread.designation).toBe('M10×1.5-6H');
  expect(faults(threadSchema, { thread: '' })[0]?.path).toBe('thread');
});
