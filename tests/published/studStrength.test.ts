import { describe, expect, it } from 'vitest';
import { neededEngagement } from '../../src/calc/stud/neededEngagement.ts';
import { tensileStressArea } from '../../src/calc/stud/tensileStressArea.ts';
import { threadGeometry } from '../../src/calc/stud/threadGeometry.ts';
import { threadShearAreas } from '../../src/calc/stud/threadShearAreas.ts';
import { metric, unified } from '../calc/stud/example.ts';

const series = (inch: number, tpi: number) => {
  const coarse: Record<number, number> = { 0.25: 20, 0.3125: 18, 0.375: 16, 0.4375: 14, 0.5: 13 };
  return coarse[inch] === tpi ? 'UNC' : 'UNF';
};
const inch2 = (mm2: number) => mm2 / 645.16;

describe('thread shear areas over one diameter, in²', () => {
  // Table "ANSI inch thread stress and shear areas", Le = one diameter, classes 2A/2B, and 3A/3B of the same page.
  it.each([
    [0.25, 20, '2', '0.092', '0.135'],
    [0.3125, 18, '2', '0.147', '0.213'],
    [0.375, 16, '2', '0.216', '0.310'],
    [0.375, 24, '2', '0.217', '0.299'],
    [0.5, 13, '2', '0.389', '0.562'],
    [0.375, 16, '3', '0.232', '0.322'],
    [0.375, 24, '3', '0.242', '0.314'],
    [0.4375, 14, '3', '0.321', '0.443'],
    [0.5, 13, '3', '0.427', '0.581'],
    [0.5, 20, '3', '0.444', '0.567'],
  ] as const)('%f-%i class %s: bolt %s, nut %s', (d, tpi, grade, bolt, nut) => {
    const found = threadShearAreas({
      stud: threadGeometry(unified(d, tpi, `${grade}A`, series(d, tpi))),
      nut: threadGeometry(unified(d, tpi, `${grade}B`, series(d, tpi))),
      lengthMm: d * 25.4,
    });
    // One unit of the last digit: the page rounds 0.3895 and 0.5819 down.
    expect(Math.abs(inch2(found.studMm2) - Number(bolt))).toBeLessThan(0.001);
    expect(Math.abs(inch2(found.nutMm2) - Number(nut))).toBeLessThan(0.001);
  });

  // Independent second implementation, not published.
  it.each([
    [0.25, 20, 0.092, 0.1347, 0.173],
    [0.3125, 18, 0.1468, 0.2131, 0.2232],
    [0.375, 16, 0.216, 0.3105, 0.2691],
    [0.375, 24, 0.2169, 0.2992, 0.3037],
    [0.5, 13, 0.3895, 0.5617, 0.3643],
  ])('%f-%i 2A/2B to four digits, and the length at which As = 2 At', (d, tpi, bolt, nut, length) => {
    const stud = threadGeometry(unified(d, tpi, '2A', series(d, tpi)));
    const inner = threadGeometry(unified(d, tpi, '2B', series(d, tpi)));
    const found = threadShearAreas({ stud, nut: inner, lengthMm: d * 25.4 });
    expect(inch2(found.studMm2)).toBeCloseTo(bolt, 4);
    expect(inch2(found.nutMm2)).toBeCloseTo(nut, 4);
    const { needed } = neededEngagement({ stud, nut: inner, studTensileMPa: null, nutTensileMPa: null });
    expect(needed.value / 25.4).toBeCloseTo(length, 4);
  });
});

describe('proof loads are proof stress on the stress area', () => {
  // ISO 898-1, coarse, as printed: to three digits, now up, now down (20.12 · 580 = 11 671, printed 11 600), so ± 0.65 %.
  it.each([
    [6, 1, 4520, 11600, 16700],
    [8, 1.25, 8240, 21200, 30400],
    [10, 1.5, 13000, 33700, 48100],
    [12, 1.75, 19000, 48900, 70000],
  ])('M%f × %f, classes 4.6, 8.8, 10.9', (d, P, low, middle, high) => {
    const As = tensileStressArea(metric(d, P, '6g')).value;
    for (const [stress, load] of [
      [225, low],
      [580, middle],
      [830, high],
    ] as const) {
      expect(Math.abs((As * stress) / load - 1)).toBeLessThan(0.0065);
    }
  });

  // SAE J429 proof stresses on At: independent second implementation, not published (lbf).
  it.each([
    [0.375, 16, 85, 6590],
    [0.375, 16, 120, 9300],
    [0.375, 24, 120, 10540],
    [0.4375, 14, 85, 9040],
    [0.4375, 14, 120, 12760],
    [0.5, 13, 85, 12060],
    [0.5, 13, 120, 17030],
  ])('%f-%i at %i ksi: %i lbf', (d, tpi, ksi, lbf) => {
    const At = inch2(tensileStressArea(unified(d, tpi, '2A', series(d, tpi))).value);
    expect(Math.abs(At * ksi * 1000 - lbf)).toBeLessThan(10);
  });
});
