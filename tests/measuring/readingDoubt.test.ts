import { describe, expect, test } from 'vitest';
import { demoCovers } from '../../data/demo/covers.ts';
import { demoFamilies } from '../../data/demo/families.ts';
import {
  doubtsAmong,
  type Expected,
  NOTHING_KNOWN,
  type ReadBefore,
  type ReadingInDoubt,
  readingDoubt,
} from '../../shared/measuring/readingDoubt.ts';

const EXPECTED: Expected = { nominalWallMm: 5, ...NOTHING_KNOWN };
const RADIUS = 110;

function typed(kind: ReadBefore['kind'], angleDeg: number, text: string, radiusMm = RADIUS): ReadingInDoubt {
  return {
    kind,
    angleDeg,
    radiusMm,
    valueMm: Number(text),
    typed: text,
    unit: 'mm',
    decimalSign: 'point',
  };
}
/** Eight stations of a face tilted by 0.06 either way. */
const FACE = [0.06, 0.05, 0.01, -0.03, -0.06, -0.05, 0, 0.04].map((mm, i) =>
  typed('face', 45 * i, String(mm)),
);

describe('an indicator reading, once its row has five others', () => {
  test('0.6 typed for 0.06 is asked about, with 0.06 as what was meant', () => {
    const asked = readingDoubt(typed('face', 0, '0.6'), FACE.slice(1), EXPECTED);
    expect(asked?.question).toMatch(/^0\.6 mm on the indicator\? .* Did you mean 0\.06 mm\?$/);
    expect(asked?.meantMm).toBeCloseTo(0.06, 9);
  });
  test('a true one is not asked about, nor one whose sign is where the tilt puts it', () => {
    for (const [i, one] of FACE.entries()) {
      expect(readingDoubt(one, FACE.toSpliced(i, 1), EXPECTED), one.typed).toBeNull();
    }
  });
  test('one with its sign forgotten is asked about', () => {
    const asked = readingDoubt(typed('face', 180, '0.06'), FACE.toSpliced(4, 1), EXPECTED);
    expect(asked?.meantTyped).toBe('-0.06 mm');
  });
  test('with four others nothing is known of the tilt, and only what no face can show is asked about', () => {
    expect(readingDoubt(typed('face', 0, '0.6'), FACE.slice(1, 5), EXPECTED)).toBeNull();
    expect(readingDoubt(typed('face', 0, '6'), FACE.slice(1, 5), EXPECTED)?.meantMm).toBe(0.06);
  });
});

describe('the depth of a heat mark', () => {
  const others = [0.2, 0.12, 0.25].map((mm, i) => typed('mark', 90 * i, String(mm)));
  test('2 typed for 0.2 is asked about, with 0.2 as what was meant', () => {
    expect(readingDoubt(typed('mark', 270, '2'), others, EXPECTED)).toMatchObject({
      question: '2 mm deep? The deepest other mark is 0.25 mm. Did you mean 0.2 mm?',
      meantMm: 0.2,
    });
  });
  test('the first mark of a cover is held against the wall', () => {
    const asked = readingDoubt(typed('mark', 0, '0.6'), [typed('wall', 0, '4.9')], EXPECTED);
    expect(asked?.question).toBe('0.6 mm deep? The wall here is 4.9 mm. Did you mean 0.06 mm?');
    expect(readingDoubt(typed('mark', 0, '0.49'), [typed('wall', 0, '4.9')], EXPECTED)).toBeNull();
  });
  test('a mark three times as deep as any other is asked about only above 0.25 mm', () => {
    const shallow = [typed('mark', 0, '0.05')];
    expect(readingDoubt(typed('mark', 90, '0.24'), shallow, EXPECTED)).toBeNull();
    expect(readingDoubt(typed('mark', 90, '0.26'), shallow, EXPECTED)).not.toBeNull();
  });
});

describe('two readings at one station', () => {
  const known = { ...EXPECTED, repeatabilityMm: 0.003, resolutionMm: 0.001 };
  test('4.698 beside 4.968 with a repeatability of 0.003 is asked about: two figures are swapped', () => {
    expect(readingDoubt(typed('wall', 0, '4.698'), [typed('wall', 0, '4.968')], known)).toMatchObject({
      question: '4.698 mm, and 4.968 mm at the same station? They differ by 0.27 mm. Did you mean 4.968 mm?',
      meantMm: 4.968,
    });
  });
  test('repeats within 5 times the repeatability, 3 steps or 0.01 mm are not', () => {
    const beside = (other: string, expected: Expected) =>
      readingDoubt(typed('wall', 0, '4.9'), [typed('wall', 0, other)], expected);
    expect(beside('4.915', known)).toBeNull();
    expect(beside('4.916', known)).not.toBeNull();
    expect(beside('4.93', { ...known, resolutionMm: 0.01 })).toBeNull();
    expect(beside('4.91', { ...known, repeatabilityMm: 0 })).toBeNull();
    expect(beside('4.912', { ...known, repeatabilityMm: 0 })).not.toBeNull();
  });
  test('of a gauge nobody described only what no gauge scatters is asked about', () => {
    const beside = (other: string) =>
      readingDoubt(typed('wall', 0, '4.9'), [typed('wall', 0, other)], EXPECTED);
    expect(beside('4.98')).toBeNull();
    expect(beside('4.69')).not.toBeNull();
  });
});

describe('a wall after the cut', () => {
  const cut = {
    walls: [{ angleDeg: 0, radiusMm: RADIUS, beforeMm: 4.9, leftMm: 4.58 }],
    allowanceMm: 0.05,
  };
  const after = (text: string) => readingDoubt(typed('wall', 0, text), [], { ...EXPECTED, cut });
  test('thicker than before it is asked about', () => {
    expect(after('4.97')?.question).toBe(
      '4.97 mm after the cut? Before it, 4.9 mm was measured here. Measure again, or confirm it.',
    );
  });
  test('off what the cut should have left by more than the allowance is asked about', () => {
    expect(after('4.53')).toBeNull();
    expect(after('4.52')?.question).toContain('The cut should have left about 4.58 mm here.');
    expect(after('4.85')).toMatchObject({ meantMm: 4.58 });
  });
});

describe('walls', () => {
  test('a slipped wall is held against its neighbors where the new wall is not known', () => {
    const neighbors = [typed('wall', 0, '4.9'), typed('wall', 90, '4.92')];
    expect(
      readingDoubt(typed('wall', 45, '0.49'), neighbors, { ...EXPECTED, nominalWallMm: 0 }),
    ).toMatchObject({
      question: '0.49 mm? Did you mean 4.9 mm?',
    });
  });
  test('a neighbor that is itself a slip does not make a true wall one', () => {
    expect(readingDoubt(typed('wall', 45, '4.9'), [typed('wall', 0, '0.49')], EXPECTED)).toBeNull();
  });
});

describe('all readings of a cover at once', () => {
  const COVERS = demoCovers
    .filter((one) => one.stations.length > 0)
    .map((cover) => {
      const readings = [
        ...cover.stations.flatMap((station): ReadingInDoubt[] => {
          const place = {
            angleDeg: station.angleDeg,
            radiusMm: station.radiusMm,
            decimalSign: 'point' as const,
          };
          const one = (kind: ReadBefore['kind'], read: { mm: number } | null): ReadingInDoubt[] =>
            read === null ? [] : [{ ...place, kind, valueMm: read.mm, typed: String(read.mm), unit: 'mm' }];
          return [
            ...station.wall.flatMap((read) => one('wall', read)),
            ...one('face', station.face),
            ...one('mark', station.mark),
          ];
        }),
        ...cover.marks.map(
          (mark): ReadingInDoubt => ({
            angleDeg: mark.angleDeg,
            radiusMm: mark.radiusMm,
            kind: 'mark',
            valueMm: mark.depth.mm,
            typed: String(mark.depth.mm),
            unit: 'mm',
            decimalSign: 'point',
          }),
        ),
      ];
      const family = demoFamilies.find((one) => one.id === cover.familyId)!;
      return {
        id: cover.id,
        readings,
        expected: { ...EXPECTED, nominalWallMm: family.family.nominalWallMm },
      };
    });

  test.each(COVERS)('no true reading of $id is asked about', ({ readings, expected }) => {
    expect(
      doubtsAmong(readings, expected).map(({ index, doubt }) => [readings[index], doubt.question]),
    ).toEqual([]);
  });
});
