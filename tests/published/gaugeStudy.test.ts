import { describe, expect, it } from 'vitest';
import { STUDY_READINGS } from '../../data/examples/studyReadings.ts';
import { fisherShare } from '../../src/calc/measure/fisherShare.ts';
import { gaugeStudy } from '../../src/calc/measure/gaugeStudy.ts';

describe('Measurement Systems Analysis, 4th ed., ten parts, three people, three trials (from memory)', () => {
  const study = gaugeStudy(STUDY_READINGS);
  it.each([
    ['people', 3.16726, 2],
    ['covers', 88.36193, 9],
    ['interaction', 0.35898, 18],
    ['within', 2.75893, 60],
  ] as const)('the sum of squares of %s is %d', (name, squares, nu) => {
    expect(study[name].squares.toFixed(5)).toBe(squares.toFixed(5));
    expect(study[name].degreesOfFreedom).toBe(nu);
  });
  it('the total sum of squares is 94.64711', () => expect(study.totalSquares.toFixed(5)).toBe('94.64711'));
  it('the interaction is not significant and is pooled', () => {
    expect(study.pooled).toBe(true);
    expect(study.interaction.chance).toBeGreaterThan(0.05);
    expect(study.repeatabilityDegreesOfFreedom).toBe(78);
  });
  it.each([
    ['repeatability', '0.199933'],
    ['reproducibility', '0.226838'],
    ['betweenCovers', '1.042327'],
    ['total', '1.085300'],
  ] as const)('%s is %s', (name, printed) => expect(study[name].value!.toFixed(6)).toBe(printed));
  it('both together are 0.302373 as printed, 0.302372 from exact fractions', () => {
    // 0.3023715 from the printed readings in exact arithmetic, and from the printed parts: the print is 1.5e-6 high.
    expect(study.both.value!.toFixed(6)).toBe('0.302372');
    expect(Math.abs(study.both.value! - 0.302373)).toBeLessThan(2e-6);
  });
  it('repeatability and reproducibility are 27.86 % of the total; 4 categories', () => {
    expect(study.share.value!.toFixed(2)).toBe('27.86');
    expect(study.categories).toBe(4);
  });
});

describe('Fisher’s F, upper 5 and 1 % points (handbook tables, from memory)', () => {
  it.each([
    [4.96, 1, 10, 0.05],
    [3.71, 3, 10, 0.05],
    [2.35, 10, 20, 0.05],
    [161.4, 1, 1, 0.05],
    [4.17, 1, 30, 0.05],
    [6.55, 3, 10, 0.01],
    [3.37, 10, 20, 0.01],
  ])('F %d with %d and %d degrees of freedom is passed by a share of %d', (f, above, below, share) => {
    expect(Math.abs(fisherShare(f, [above, below]) - share)).toBeLessThan(share * 0.006);
  });
});
