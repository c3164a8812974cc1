import { describe, expect, it } from 'vitest';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { wallUncertainty } from '../../../src/calc/cover/wallUncertainty.ts';
import { CRITERIA, coverInput, NO_GAUGE, SET_ONE } from './sets.ts';

const GAUGE = {
  standardUncertaintyMm: 0.005,
  resolutionMm: 0.001,
  repeatabilityMm: 0.003,
  faceStandardUncertaintyMm: 0.002,
  cutSettingStandardUncertaintyMm: 0.005,
};
const of = (over: Partial<Parameters<typeof wallUncertainty>[0]> = {}) =>
  wallUncertainty({
    gauge: GAUGE,
    walls: [[4.92, 4.92], [4.9]],
    indicated: true,
    station: 0,
    confidence: 0.95,
    ...over,
  });

describe('uncertainty of the wall left (arithmetic on JCGM 100)', () => {
  it('uncertainty of the wall combines what is common to all stations and what is each station’s own', () => {
    const found = of()!;
    expect(found.commonMm).toBeCloseTo(Math.hypot(0.005, 0.005), 12);
    expect(found.ownMm[0]).toBeCloseTo(Math.hypot(0.001 / Math.sqrt(12), 0.003 / Math.SQRT2, 0.002), 12);
    expect(found.ownMm[1]).toBeCloseTo(Math.hypot(0.001 / Math.sqrt(12), 0.003, 0.002), 12);
    expect(found.standard.value).toBeCloseTo(0.007654, 6);
  });
  it('uncertainty with a given repeatability has infinite degrees of freedom, so U is 1.96 u at 95 %', () => {
    const found = of()!;
    expect(found.degreesOfFreedom).toBeNull();
    expect(found.expanded.value! / found.standard.value!).toBeCloseTo(1.96, 3);
    expect(found.missing).toEqual([]);
  });
  it('uncertainty pools the repeats where no repeatability is given', () => {
    // s² = ((0.01²)/2 + (0.02²)/2)/2 = 1.25e-4, ν 2; at station 0 s/√2 is all there is, so t(2) = 4.30.
    const walls = [[4.92, 4.93], [4.9, 4.92], [4.8]];
    const found = of({ gauge: null, walls })!;
    expect(found.repeatability).toEqual({ mm: expect.closeTo(Math.sqrt(1.25e-4), 12), from: 'pooled' });
    expect(found.degreesOfFreedom).toBeCloseTo(2, 9);
    expect(found.expanded.value! / found.standard.value!).toBeCloseTo(4.30265, 4);
    expect(found.ownMm[2]).toBeCloseTo(Math.sqrt(1.25e-4), 12);
  });
  it('pooled and given uncertainties are combined by Welch–Satterthwaite', () => {
    // u² = u_own² + u_cal² with u_cal = u_own: ν_eff = 4·2.
    const own = Math.sqrt(1.25e-4) / Math.SQRT2;
    const walls = [
      [4.92, 4.93],
      [4.9, 4.92],
    ];
    const found = of({ gauge: { ...NO_GAUGE, standardUncertaintyMm: own }, walls })!;
    expect(found.degreesOfFreedom).toBeCloseTo(8, 9);
  });
  it('a given repeatability is used instead of the pooled one', () => {
    const found = of({ walls: [[4.92, 4.99], [4.9]] })!;
    expect(found.repeatability).toEqual({ mm: 0.003, from: 'given' });
  });
  it('uncertainty of the wall names what was not given', () => {
    const found = of({ gauge: { ...NO_GAUGE, resolutionMm: 0.01 }, walls: [[4.9], [4.9]] })!;
    expect(found.missing).toEqual([
      'gauge calibration',
      'gauge repeatability',
      'indicator uncertainty',
      'depth-of-cut uncertainty',
    ]);
    expect(found.standard.warnings.map(({ code }) => code)).toEqual(['not-given']);
  });
  it('uncertainty of the wall is null without gauge and repeats', () => {
    expect(of({ gauge: null, walls: [[4.9], [4.9]] })).toBeNull();
    expect(of({ gauge: NO_GAUGE, walls: [[4.9], [4.9]] })).toBeNull();
  });
});

describe('the decision rule of ISO 14253-1', () => {
  const decide = (minimumWallMm: number, gauge: typeof GAUGE | null) =>
    checkCover(coverInput({ criteria: { ...CRITERIA, minimumWallMm }, gauge }));
  const said = (found: ReturnType<typeof decide>) => found.findings.find(({ id }) => id === 'sure-of-it')!;

  it('a wall passes at the shop’s confidence', () => {
    const found = decide(4.3, GAUGE);
    expect(found.conformanceProbability).toBeGreaterThan(0.9999);
    expect(said(found).status).toBe('pass');
    expect(said(found).sentence).toMatch(/^More than 99\.9 % sure/); // never 100 %
    expect(found.verdict).toBe('face');
  });
  it('a wall above the minimum and below the confidence is measured again; only one below the minimum fails', () => {
    const near = decide(4.499, GAUGE);
    expect(near.conformanceProbability!).toBeLessThan(0.95);
    expect(said(near).status).toBe('caution');
    expect(near.verdict).toBe('measure-again');
    const below = decide(4.5001, GAUGE);
    expect(said(below).status).toBe('fail');
    expect(below.verdict).toBe('replace');
  });
  it('a wall exactly at the minimum does not fail', () => {
    expect(decide(4.5, GAUGE).verdict).toBe('measure-again');
    expect(decide(4.5, null).verdict).toBe('face');
  });
  it('a wall is compared plainly where nothing is known of the gauge, and the finding says so', () => {
    const plain = decide(4.499, null);
    expect(plain.conformanceProbability).toBeNull();
    expect(plain.leastWall.standardUncertaintyMm).toBeNull();
    expect(said(plain)).toMatchObject({ status: 'not-checked', sentence: expect.stringContaining('gauge') });
    expect(plain.verdict).toBe('face');
  });
  it('each station has its own probability, Φ(m/√(u_c² + u_i²))', () => {
    const found = decide(4.49, GAUGE);
    const [u, margin] = [Math.hypot(0.005, 0.005, 0.001 / Math.sqrt(12), 0.003, 0.002), 0.01];
    // Φ(1.259) from a table of the normal distribution (from memory).
    expect(margin / u).toBeCloseTo(1.259, 3);
    expect(found.stations[1]!.conformanceProbability).toBeCloseTo(0.896, 3);
    expect(found.conformanceProbability!).toBeLessThan(0.896);
  });
  it('the setting of the cut is named as what nothing settles only where it was given', () => {
    // A margin of nothing at two stations: no gauge makes it surer than a half.
    expect(decide(4.5, GAUGE).because).toContain('closer to the minimum than the depth of cut can be set.');
    expect(decide(4.5, { ...GAUGE, cutSettingStandardUncertaintyMm: 0 }).because).toContain(
      'No gauge will settle it: the wall is at its limit.',
    );
  });
  it('a doubtful planned cut is answered with a lesser one that would do', () => {
    const found = checkCover(coverInput({ gauge: GAUGE, plannedCutMm: 0.619 }));
    expect(found.verdict).toBe('measure-again');
    expect(found.because).toContain(
      'Cut 0.42 mm instead, the least that cleans up: that meets the confidence required.',
    );
  });
  it('repeats without spread change no number', () => {
    const twice = SET_ONE.map((s) => ({ ...s, wallMm: [s.wallMm[0]!, s.wallMm[0]!] }));
    const found = checkCover(coverInput({ stations: twice }));
    expect(found.leastWall).toMatchObject({ standardUncertaintyMm: 0, expandedUncertaintyMm: 0 });
    expect(found.conformanceProbability).toBe(1);
  });
});
