import { describe, expect, it } from 'vitest';
import { coverageFactor } from '../../src/calc/measure/coverageFactor.ts';
import {
  combinedUncertainty,
  effectiveDegreesOfFreedom,
} from '../../src/calc/measure/effectiveDegreesOfFreedom.ts';
import { meanOfRepeats } from '../../src/calc/measure/meanOfRepeats.ts';
import { pooledRepeatability } from '../../src/calc/measure/pooledRepeatability.ts';

describe('JCGM 100:2008, 4.4.3 Table 1, twenty temperatures', () => {
  const readings = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
    101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
  ];
  it('the twenty temperatures have the printed mean', () =>
    expect(meanOfRepeats(readings)).toBeCloseTo(100.145, 9));
  it('the twenty temperatures have the printed standard deviation, and that of the mean', () => {
    const { standardDeviationMm, degreesOfFreedom } = pooledRepeatability([readings])!;
    expect(standardDeviationMm.toFixed(2)).toBe('1.49');
    expect((standardDeviationMm / Math.sqrt(20)).toFixed(2)).toBe('0.33');
    expect(degreesOfFreedom).toBe(19);
  });
});

describe('JCGM 100:2008, H.1, the end gauge', () => {
  // Contributions in nm; the unit does not matter.
  const contributions = [
    { name: 'standard', standardUncertaintyMm: 25, degreesOfFreedom: 18 },
    { name: 'difference', standardUncertaintyMm: 9.7, degreesOfFreedom: 25.6 },
    { name: 'expansion difference', standardUncertaintyMm: 2.9, degreesOfFreedom: 50 },
    { name: 'temperature difference', standardUncertaintyMm: 16.6, degreesOfFreedom: 2 },
  ];
  it('the end gauge’s uncertainty combines to 32 nm', () =>
    expect(combinedUncertainty(contributions).toFixed(0)).toBe('32'));
  it('the end gauge has 16.7 effective degrees of freedom, taken as 16', () => {
    // The contributions are printed to two or three figures: 25² + 9.7² + 2.9² + 16.6² is 1003, printed 1002.
    const nu = effectiveDegreesOfFreedom(contributions)!;
    expect(Math.abs(nu - 16.7)).toBeLessThan(0.07);
    expect(Math.floor(nu)).toBe(16);
  });
  it('the end gauge’s uncertainty expands to 93 nm at 99 %', () => {
    expect((coverageFactor(0.99, 16) * 31.66).toFixed(1)).toBe('92.5'); // unrounded; printed 2.92 × 32 = 93
  });
  it('a combined uncertainty has infinite degrees of freedom where every contribution has', () => {
    expect(
      effectiveDegreesOfFreedom([{ name: 'a', standardUncertaintyMm: 1, degreesOfFreedom: null }]),
    ).toBeNull();
  });
});

describe('JCGM 100:2008, Table G.2, t for two-sided coverage', () => {
  it.each([
    [16, '2.12', '2.17', '2.92'],
    [null, '1.96', '2.00', '2.58'], // 2.576 is printed to three places
    // From memory of Table G.2:
    [1, '12.71', '13.97', '63.66'],
    [2, '4.30', '4.53', '9.92'],
    [3, '3.18', '3.31', '5.84'],
    [4, '2.78', '2.87', '4.60'],
    [5, '2.57', '2.65', '4.03'],
    [8, '2.31', '2.37', '3.36'],
    [10, '2.23', '2.28', '3.17'],
    [20, '2.09', '2.13', '2.85'],
  ])('t for ν %s is %s, %s and %s', (nu, t95, t9545, t99) => {
    expect(coverageFactor(0.95, nu).toFixed(2)).toBe(t95);
    expect(coverageFactor(0.9545, nu).toFixed(2)).toBe(t9545);
    expect(coverageFactor(0.99, nu).toFixed(2)).toBe(t99);
  });
  it.each([
    [1, '1.84'],
    [5, '1.11'],
    [10, '1.05'],
  ])('Student’s t for %s degrees of freedom at 68.27 percent is %s', (nu, t) => {
    expect(coverageFactor(0.6827, nu).toFixed(2)).toBe(t);
  });
  it('t agrees with the closed forms for one and two degrees of freedom', () => {
    expect(coverageFactor(0.9, 1)).toBeCloseTo(Math.tan((0.9 * Math.PI) / 2), 8);
    expect(coverageFactor(0.9, 2)).toBeCloseTo(0.9 * Math.sqrt(2 / (1 - 0.81)), 8);
  });
  it('t at a fractional ν lies between its neighbors', () => {
    expect(coverageFactor(0.95, 2.5)).toBeLessThan(coverageFactor(0.95, 2.4));
    expect(coverageFactor(0.95, 2.5)).toBeGreaterThan(coverageFactor(0.95, 2.6));
    expect(coverageFactor(0.95, 1e7)).toBeCloseTo(1.959964, 5);
  });
});

describe('EA-4/02, S2, a 10 kg weight', () => {
  it('the 10 kg weight’s 22.5, 8.66, 14.4, 5.77 and 5.77 mg combine to 29.2–29.3 mg', () => {
    const mg = [22.5, 8.66, 14.4, 5.77, 5.77];
    const u = combinedUncertainty(
      mg.map((standardUncertaintyMm) => ({ name: 'part', standardUncertaintyMm, degreesOfFreedom: null })),
    );
    expect(u).toBeGreaterThan(29.15);
    expect(u).toBeLessThan(29.35);
  });
});
