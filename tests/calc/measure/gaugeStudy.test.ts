import { describe, expect, it } from 'vitest';
import { STUDY_READINGS } from '../../../data/examples/studyReadings.ts';
import { fisherShare } from '../../../src/calc/measure/fisherShare.ts';
import { gaugeStudy, type StudyReadings } from '../../../src/calc/measure/gaugeStudy.ts';

describe('the share above a ratio of mean squares', () => {
  it.each([1, 5, 40, 900])('is (1 + 2f/ν)^(−ν/2) with 2 above and %d below (closed form)', (below) => {
    for (const f of [0, 0.3, 1, 4, 30])
      expect(fisherShare(f, [2, below])).toBeCloseTo((1 + (2 * f) / below) ** (-below / 2), 9);
  });
  it.each([
    [3, 7],
    [18, 60],
    [500, 4000],
  ])('is what is left of the share of the ratio turned over (%d, %d)', (a, b) => {
    for (const f of [0.5, 0.97, 1.2])
      expect(fisherShare(f, [a, b]) + fisherShare(1 / f, [b, a])).toBeCloseTo(1, 9);
  });
});

/** By hand: two covers 10 apart, two people 2 apart, repeats 2 apart. */
const BY_HAND: StudyReadings = [
  [
    [0, 2],
    [2, 4],
  ],
  [
    [10, 12],
    [12, 14],
  ],
];

describe('a gauge study', () => {
  it('is worked out by hand for two covers, two people and two rounds', () => {
    // Means: covers 2 and 12, people 6 and 8, all 7. SS covers 4·(25 + 25), people 4·(1 + 1), crossed 0, within 4·2.
    const study = gaugeStudy(BY_HAND);
    expect([study.covers, study.people, study.interaction, study.within].map((row) => row.squares)).toEqual([
      200, 8, 0, 8,
    ]);
    expect(study.pooled).toBe(true);
    expect(study.repeatability.value).toBeCloseTo(Math.sqrt(8 / 5), 12);
    expect(study.betweenPeople.value).toBeCloseTo(Math.sqrt((8 - 1.6) / 4), 12);
    expect(study.betweenCovers.value).toBeCloseTo(Math.sqrt((200 - 1.6) / 4), 12);
  });

  it('keeps an interaction that is more than chance', () => {
    // Person B reads cover 1 high and cover 2 low. Means 0 2 / 12 10: crossed 2·4·1.5², hand-made below.
    const study = gaugeStudy([
      [
        [0, 0.2],
        [4, 4.2],
      ],
      [
        [14, 14.2],
        [10, 10.2],
      ],
    ]);
    // Cell means 0.1 4.1 / 14.1 10.1: covers 2.1 12.1, people 7.1 7.1; each cell is 2 off: SS 2·4·2² = 32, within 4·0.02.
    expect(study.interaction.squares).toBeCloseTo(32, 9);
    expect(study.within.squares).toBeCloseTo(0.08, 9);
    expect(study.pooled).toBe(false);
    expect(study.repeatability.value).toBeCloseTo(Math.sqrt(0.02), 9);
    expect(study.peopleByCover.value).toBeCloseTo(Math.sqrt((32 - 0.02) / 2), 9);
    expect(study.reproducibility.value).toBeCloseTo(Math.sqrt((32 - 0.02) / 2), 9);
  });

  it('counts a variance below zero as 0, and says so', () => {
    const alike = gaugeStudy([
      [
        [1, 3],
        [3, 1],
      ],
      [
        [11, 13],
        [13, 11],
      ],
    ]);
    expect(alike.betweenPeople.value).toBe(0);
    expect(alike.betweenPeople.warnings[0]!.text).toContain('below zero and counts as 0');
    expect(alike.repeatability.warnings).toEqual([]);
  });

  it('readings that are all alike have no spread and no share', () => {
    const same = gaugeStudy([
      [
        [5, 5],
        [5, 5],
      ],
      [
        [5, 5],
        [5, 5],
      ],
    ]);
    expect([same.both.value, same.share.value, same.categories]).toEqual([0, null, null]);
    expect(same.share.warnings[0]!.code).toBe('no-spread');
  });

  it('does not change when every reading is shifted, and grows with the scale', () => {
    const changed = gaugeStudy(STUDY_READINGS.map((one) => one.map((cell) => cell.map((x) => 5 + 0.01 * x))));
    const as = gaugeStudy(STUDY_READINGS);
    for (const name of ['repeatability', 'reproducibility', 'both', 'total'] as const)
      expect(changed[name].value! * 100).toBeCloseTo(as[name].value!, 9);
  });

  it('refuses too few, and a missing reading', () => {
    expect(() => gaugeStudy([BY_HAND[0]!])).toThrow('at least 2 covers');
    expect(() => gaugeStudy([BY_HAND[0]!, [[1, 2], [1]]])).toThrow('A reading is missing');
  });
});
