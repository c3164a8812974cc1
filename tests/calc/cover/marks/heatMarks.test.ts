import { describe, expect, it } from 'vitest';
import { type HeatMarkRow, heatMarksInWords } from '../../../../shared/words/heatMarks.ts';
import { heatMarks } from '../../../../src/calc/cover/marks/heatMarks.ts';

const row = (radiusMm: number, depth: (deg: number) => number, count = 8) =>
  Array.from({ length: count }, (_, i) => {
    const angleDeg = (360 * i) / count;
    return { angleDeg, radiusMm, depthMm: depth(angleDeg) };
  });
const stud = (behind: number, between: number) => (deg: number) => (deg % 90 === 0 ? behind : between);
const cos = (deg: number) => Math.cos((deg * Math.PI) / 180);
const say = (stations: ReturnType<typeof row>, marks: ReturnType<typeof row> = []) =>
  heatMarks({ stations, marks, studCount: 4 });
const patterns = (rows: readonly HeatMarkRow[]) => rows.map(({ pattern }) => pattern);

describe('what the heat marks say', () => {
  it('0.2 mm behind the studs and 0.05 mm between: 60 % of the mean lies behind the studs', () => {
    const [found] = say(row(110, stud(0.2, 0.05)));
    expect(found!.meanMm).toBeCloseTo(0.125, 12);
    expect(found!.studShare).toBeCloseTo(0.6, 12);
    expect(found!.oneSidedShare).toBeCloseTo(0, 12);
    expect(found!.oneSidedDeg).toBeNull();
    expect(found!.pattern).toBe('behind-studs');
  });
  it('deeper toward 135°: one side, with its angle', () => {
    const [found] = say(row(110, (deg) => 0.1 + 0.06 * cos(deg - 135)));
    expect(found!.oneSidedShare).toBeCloseTo(0.6, 12);
    expect(found!.oneSidedDeg).toBeCloseTo(135, 9);
    expect(found!.pattern).toBe('one-side');
  });
  it('deeper between the studs', () =>
    expect(patterns(say(row(110, stud(0.04, 0.16))))).toEqual(['between-studs']));
  it('alike all the way around', () =>
    expect(patterns(say(row(110, stud(0.12, 0.1))))).toEqual(['all-round']));
  it('no depth anywhere is none', () => {
    const [found] = say(row(110, () => 0));
    expect(found).toEqual({
      radiusMm: 110,
      meanMm: 0,
      oneSidedShare: null,
      oneSidedDeg: null,
      studShare: null,
      pattern: 'none',
    });
  });
  it.each([
    [0.14, 0.06, 'behind-studs'],
    [0.1399, 0.0601, 'all-round'],
  ])('from 40 %% on the studs are told: %d behind, %d between is %s', (behind, between, pattern) => {
    expect(patterns(say(row(110, stud(behind, between))))).toEqual([pattern]);
  });
  it('the larger ratio to its threshold is the pattern', () => {
    const both = (side: number) => say(row(110, (deg) => stud(0.15, 0.05)(deg) + side * cos(deg)));
    expect(patterns(both(0.045))).toEqual(['behind-studs']);
    expect(patterns(both(0.055))).toEqual(['one-side']);
  });
  it('a row less than half as deep as the other leaves the other deeper; at half it does not', () => {
    const two = (inner: number) => patterns(say([...row(110, () => inner), ...row(128, () => 0.2)]));
    expect(two(0.09)).toEqual(['all-round', 'one-row-deeper']);
    expect(two(0.1)).toEqual(['all-round', 'all-round']);
    expect(two(0)).toEqual(['none', 'one-row-deeper']);
  });
  it('too few stations tell nothing, and are no shallower row', () => {
    const found = say([...row(110, () => 0.2), ...row(128, () => 0, 4)]);
    expect(patterns(found)).toEqual(['all-round', 'not-enough-stations']);
    expect(patterns(say(row(110, stud(0.2, 0), 4)))).toEqual(['not-enough-stations']);
  });
  it('one place fewer than behind every stud and between every pair is too few', () => {
    const round = row(110, stud(0.2, 0.05));
    expect(patterns(say(round.slice(0, 7)))).toEqual(['not-enough-stations']);
    expect(patterns(say(round.slice(0, 7), round.slice(7)))).toEqual(['behind-studs']);
  });
  it('a mark between stations counts on the nearest row, of two equally near the inner', () => {
    const rows = [...row(110, () => 0), ...row(128, () => 0)];
    const mark = (radiusMm: number) => [{ angleDeg: 22.5, radiusMm, depthMm: 0.1 }];
    const means = (radiusMm: number) => say(rows, mark(radiusMm)).map(({ meanMm }) => meanMm > 0);
    expect(means(120)).toEqual([false, true]);
    expect(means(119)).toEqual([true, false]);
  });
});

describe('what the heat marks say in words', () => {
  it('names row, share, mean, and where to look', () => {
    const rows = say([...row(110, stud(0.2, 0.05)), ...row(128, stud(0.1, 0.1))]);
    expect(heatMarksInWords(rows, 'mm')).toEqual([
      'Heat marks are deepest behind the studs on the inner row: 60 % above the mean of 0.125 mm.',
      'Heat marks run all the way around on the outer row, 0.100 mm deep on average.',
      'The cover bends between its studs. Look at the wall, a ring and the lock-up pressure.',
      'The clutch slipped. Look at the pressure, the lining, the oil and the release clearance.',
    ]);
  });
  it('says both means of a deeper row', () => {
    const rows = say([...row(110, () => 0.05), ...row(128, () => 0.2)]);
    expect(heatMarksInWords(rows, 'mm')[0]).toBe(
      'Heat marks are deeper on the outer row: 0.200 mm on average, 0.050 mm on the other row.',
    );
  });
  it('says that stations are too few, and nothing where no depth was read', () => {
    expect(heatMarksInWords(say(row(110, stud(0.2, 0), 4)), 'mm')).toEqual([
      'Too few stations to tell how the heat marks lie. A row needs one behind every stud and one between every pair.',
    ]);
    expect(heatMarksInWords(say(row(110, () => 0)), 'mm')).toEqual([]);
    expect(heatMarksInWords([], 'mm')).toEqual([]);
  });
});
