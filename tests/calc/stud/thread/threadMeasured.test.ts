import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readThread } from '../../../../shared/quantity/readThread.ts';
import { METRIC_PITCHES, UNIFIED_SIZES } from '../../../../shared/quantity/threadTables.ts';
import { threadGeometry } from '../../../../src/calc/stud/thread/threadGeometry.ts';
import { threadsLike } from '../../../../src/shop/studs/threads.ts';

const IN = 25.4;
const like = (majorMm: number, overMm: number | null, pitches = 10) =>
  threadsLike({ majorMm, majorWithinMm: 0.05, pitches, overMm, overWithinMm: 0.2 });
const named = (found: ReturnType<typeof like>) =>
  found.mayBe.map(({ thread }) => thread.designation.replace(/-(2A|6g)$/, ''));

describe('a thread by its diameter and its pitches', () => {
  // Major diameters: ASME B1.1 (3/8-24 UNF-2A 0.3739 / 0.3667 in) and ISO 965-1 (M10×1.5-6g 9.968 / 9.732 mm).
  it.each([
    ['3/8-24 UNF', 0.373 * IN, 0.417 * IN],
    ['3/8-16 UNC', 0.37 * IN, 0.625 * IN],
    ['5/16-24 UNF', 0.31 * IN, 0.417 * IN],
    ['M8×1', 7.9, 10],
    ['M10×1.5', 9.85, 15],
    ['M10×1.25', 9.88, 12.5],
    ['7/16-20 UNF', 0.433 * IN, 0.5 * IN],
    ['M12×1.75', 11.85, 17.5],
  ])('is told first: %s', (thread, majorMm, overMm) => {
    expect(named(like(majorMm, overMm))[0]).toBe(thread);
  });

  it('says how far each is off: 0 within the class, else to its nearest end', () => {
    const [first] = like(0.373 * IN, 0.417 * IN).mayBe;
    expect([first?.offMajorMm, first?.offPitchMm]).toEqual([0, expect.closeTo(0.0417 * IN - IN / 24, 9)]);
    // 9.45 mm is 0.282 below the least M10×1.5-6g, 9.732.
    const off = like(9.45, null).nearest.find(({ thread }) => thread.designation === 'M10×1.5-6g');
    expect(off?.offMajorMm).toBeCloseTo(9.45 - 9.732, 9);
    expect(off?.offPitchMm).toBeNull();
  });

  it('with the diameter alone names every thread of that size, the usual ones first', () => {
    expect(named(like(9.45, null)).slice(0, 2).sort()).toEqual(['3/8-16 UNC', '3/8-24 UNF']);
    expect(named(like(9.45, null))).toContain('3/8-32 UNEF');
  });

  it('names none where the reading suits none, and tells the nearest', () => {
    const found = like(6.9, 8);
    expect(found.mayBe).toEqual([]);
    expect(found.nearest).toHaveLength(3);
  });
});

const ALL = [
  ...UNIFIED_SIZES.flatMap(({ written, UNC, UNF, UNEF, UN }) =>
    [UNC, UNF, UNEF, ...UN].filter((n) => n !== null).map((n) => `${written}-${n}`),
  ),
  ...[...METRIC_PITCHES].flatMap(([size, pitches]) => pitches.map((pitch) => `M${size}x${pitch}`)),
];

describe('laws of a caliper reading', () => {
  it('any thread of the tables, read within its class and the caliper, is among those it may be', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.integer({ min: 3, max: 20 }),
        fc.boolean(),
        (callout, within, misread, misplaced, pitches, pitchToo) => {
          const read = readThread(callout, 'external');
          if (!read.ok) throw new Error(read.message);
          const { majorMm, pitchMm } = threadGeometry(read.thread);
          const major = majorMm.min! + within * (majorMm.max! - majorMm.min!);
          const found = like(
            major + 0.05 * misread,
            pitchToo ? pitches * pitchMm + 0.2 * misplaced : null,
            pitches,
          );
          expect(found.mayBe.map(({ thread }) => thread.designation)).toContain(read.thread.designation);
          const far = found.mayBe.map((one) => one.far);
          if (pitchToo) expect(far).toEqual([...far].sort((a, b) => a - b));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('read exactly in the middle of its class and its pitch, it is the first', () => {
    for (const callout of ALL) {
      const read = readThread(callout, 'external');
      if (!read.ok) throw new Error(read.message);
      const { majorMm, pitchMm } = threadGeometry(read.thread);
      const [first] = like((majorMm.min! + majorMm.max!) / 2, 10 * pitchMm).mayBe;
      expect(first?.thread.designation).toBe(read.thread.designation);
    }
  });
});
