import fc from 'fast-check';
import type { StudCheckInput } from '../../shared/words/stud/stud.ts';
import { EXAMPLE, layer, metric, unified } from '../calc/stud/example.ts';

export const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
export const THREADS = [
  [unified(0.375, 24, '2A'), unified(0.375, 24, '2B')],
  [unified(0.4375, 20, '2A'), unified(0.4375, 20, '2B')],
  [unified(0.3125, 18, '3A', 'UNC'), unified(0.3125, 18, '2B', 'UNC')],
  [metric(10, 1.25, '6g'), metric(10, 1.25, '6H')],
  [metric(12, 1.75, '6g'), metric(12, 1.75, '6H')],
] as const;

/** Any stud in any stack that is no nonsense. */
export const anyStudCheck: fc.Arbitrary<StudCheckInput> = fc
  .record({
    thread: fc.constantFrom(...THREADS),
    start: mm(-1, 8),
    thread_: mm(4, 30),
    pilot: mm(0, 15),
    tolerance: mm(0, 0.5),
    layers: fc.array(fc.record({ t: mm(1.5, 12), tol: mm(0, 0.3) }), { minLength: 1, maxLength: 4 }),
    height: mm(3, 14),
    washer: fc.constantFrom(0, 1.5, 2.5),
    gap: mm(0, 8),
  })
  .map(({ thread, start, thread_, pilot, tolerance, layers, height, washer, gap }) => ({
    ...EXAMPLE,
    stud: {
      ...EXAMPLE.stud,
      thread: thread[0],
      threadStartMm: start,
      threadEndMm: start + thread_,
      projectionMm: Math.max(start + thread_ + pilot, 1),
      lengthToleranceMm: tolerance,
    },
    stack: { ...EXAMPLE.stack, layers: layers.map(({ t, tol }) => layer(t, { toleranceMm: tol })) },
    nut: { ...EXAMPLE.nut!, thread: thread[1], heightMm: height, toleranceMm: 0.2, washerMm: washer },
    pullForwardMm: gap,
  }));
