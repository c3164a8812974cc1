import fc from 'fast-check';
import { type StudCheckInput, SURFACE_CLASSES } from '../../../shared/words/stud/stud.ts';
import { EXAMPLE, JOINT, layer, metric, unified } from '../stud/example.ts';

const mm = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 100), max: Math.round(most * 100) }).map((n) => n / 100);
const maybe = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(one, { nil: null, freq: 2 });

/** A stud's thread, its nut's, and one that does not go on. */
const THREADS = [
  [unified(0.375, 24, '2A'), unified(0.375, 24, '2B')],
  [unified(0.375, 24, '3A'), unified(0.375, 24, '3B')],
  [unified(0.4375, 20, '2A'), unified(0.4375, 20, '2B')],
  [unified(0.375, 24, '2A'), unified(0.375, 16, '2B', 'UNC')],
  [metric(10, 1.25, '6g'), metric(10, 1.25, '6H')],
  [metric(10, 1.5, '6g'), metric(10, 1.5, '6H')],
  [metric(10, 1.25, '6g'), unified(0.375, 24, '2B')],
] as const;

const joint = fc.record({
  torqueNm: fc.constantFrom(15, 37, 37, 60, 90),
  nutFactor: fc.constantFrom(0.12, 0.2),
  scatter: fc.constantFrom(0, 0.25),
  friction: fc.constantFrom(0.1, 0.15),
  engineTorqueNm: fc.constantFrom(200, 350, 900),
  youngMPa: fc.constantFrom(null, 200_000),
  prevailingNm: fc.constantFrom(undefined, null, 3),
  studsUsedBefore: fc.constantFrom(undefined, true, false),
  surface: fc.constantFrom(undefined, ...SURFACE_CLASSES),
  retightened: fc.constantFrom(undefined, true, false),
  ofStack: fc.constantFrom(undefined, ['count' as const], ['count' as const, 'circle' as const]),
});

/** A stud of one kind or another in a stack, with everything that may be found of it. */
export const anyStud: fc.Arbitrary<StudCheckInput> = fc
  .record({
    threads: fc.constantFrom(...THREADS),
    start: mm(-0.5, 4),
    run: mm(10, 24),
    pilot: fc.constantFrom(0, 2, 6, 12),
    stud: fc.record({
      lengthToleranceMm: fc.constantFrom(0, 0.25),
      pilotDiameterMm: fc.constantFrom(null, 8, 8, 9.2),
      tensileMPa: fc.constantFrom(null, 827, 827, 520),
      proofMPa: fc.constantFrom(null, 480, 586),
      filletMm: fc.constantFrom(null, 0.3, 1.5),
      pitchDiameterMeasuredMm: fc.constantFrom(undefined, null, 8.75),
    }),
    layers: fc.array(
      fc.record({
        name: fc.constantFrom('plate', 'casting', 'shim'),
        kind: fc.constantFrom(undefined, 'plate' as const, 'casting' as const, 'shim' as const),
        thicknessMm: mm(1, 6),
        toleranceMm: fc.constantFrom(0, 0.1),
        holeDiameterMm: fc.constantFrom(null, 9.3, 10.3, 11.5),
        chamferMm: fc.constantFrom(null, 0.2, 1),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    stack: fc.record({
      style: fc.constantFrom('one-piece' as const, 'two-piece' as const),
      holeCount: fc.constantFrom(null, 4, 6),
      holeCircleDiameterMm: fc.constantFrom(null, 286, 286.4, 290),
      tipRoomMm: fc.constantFrom(null, 20, 40),
      leastPullForwardMm: fc.constantFrom(undefined, null, 1.5),
      mostPullForwardMm: fc.constantFrom(undefined, null, 4.5),
    }),
    nut: fc.option(
      fc.record({
        heightMm: fc.constantFrom(5, 8.3, 10),
        toleranceMm: fc.constantFrom(0, 0.2),
        given: fc.constantFrom(true, true, true, false),
        proofMPa: fc.constantFrom(null, 600, 827),
        tensileMPa: fc.constantFrom(null, 500, 827),
        countersinkMm: fc.constantFrom(0, 0.3),
        bearingOuterDiameterMm: fc.constantFrom(null, 14, 10.6),
        washerMm: fc.constantFrom(0, 2),
        prevailing: fc.boolean(),
      }),
      { nil: null, freq: 7 },
    ),
    pullForwardMm: maybe(mm(0, 7)),
    criteria: fc.record({
      protrusionThreads: fc.constantFrom(0, 1, 2),
      startThreads: fc.constantFrom(1, 2),
      pilotLeadMm: fc.constantFrom(undefined, 3),
      leastPullForwardMm: fc.constantFrom(undefined, null, 2),
      mostPullForwardMm: fc.constantFrom(undefined, null, 4),
    }),
    joint: fc.option(joint, { nil: null, freq: 3 }),
    coverStudCount: fc.constantFrom(null, 4, 6),
    coverStudCircleDiameterMm: fc.constantFrom(null, 286, 287.5),
  })
  .map(({ threads, start, run, pilot, stud, layers, stack, nut, joint: asked, ...more }) => {
    const given = <T extends object>(one: T) =>
      Object.fromEntries(Object.entries(one).filter(([, value]) => value !== undefined)) as T;
    const { given: known = true, ...ofNut } = nut ?? { given: true };
    return {
      ...more,
      criteria: given(more.criteria),
      stud: {
        ...EXAMPLE.stud,
        ...given(stud),
        thread: threads[0],
        threadStartMm: start,
        threadEndMm: start + run,
        projectionMm: start + run + pilot,
      },
      stack: { ...given(stack), layers: layers.map((one) => given({ ...layer(one.thicknessMm), ...one })) },
      nut: nut === null ? null : { ...EXAMPLE.nut!, ...ofNut, thread: known ? threads[1] : null },
      joint: asked === null ? null : { ...JOINT, ...given(asked) },
    } as StudCheckInput;
  });
