import { describe, expect, it } from 'vitest';
import { demoStacks } from '../../data/demo/stacks.ts';
import { neededEngagement } from '../../src/calc/stud/engaged/neededEngagement.ts';
import { nutProof } from '../../src/calc/stud/engaged/nutProof.ts';
import { nutClass } from '../../src/calc/stud/thread/nutClass.ts';
import { strengthClass } from '../../src/calc/stud/thread/strengthClass.ts';
import { tensileStressArea } from '../../src/calc/stud/thread/tensileStressArea.ts';
import { threadGeometry } from '../../src/calc/stud/thread/threadGeometry.ts';
import { threadShearAreas } from '../../src/calc/stud/thread/threadShearAreas.ts';
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
  ] as const)('thread %f-%i class %s has shear areas of bolt %s and nut %s', (d, tpi, grade, bolt, nut) => {
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
  ])(
    'thread %f-%i 2A/2B has its shear areas to four digits, and its length at which As = 2 At',
    (d, tpi, bolt, nut, length) => {
      const stud = threadGeometry(unified(d, tpi, '2A', series(d, tpi)));
      const inner = threadGeometry(unified(d, tpi, '2B', series(d, tpi)));
      const found = threadShearAreas({ stud, nut: inner, lengthMm: d * 25.4 });
      expect(inch2(found.studMm2)).toBeCloseTo(bolt, 4);
      expect(inch2(found.nutMm2)).toBeCloseTo(nut, 4);
      const { needed } = neededEngagement({ stud, nut: inner, studTensileMPa: null, nutTensileMPa: null });
      expect(needed.value / 25.4).toBeCloseTo(length, 4);
    },
  );
});

/** A load as printed, to three digits and now up, now down. */
const agrees = (load: number, printed: number, within = 0.0065) =>
  expect(Math.abs(load / printed - 1), `${load.toFixed(0)} N against ${printed}`).toBeLessThan(within);

describe('proof loads are proof stress on the stress area', () => {
  // ISO 898-1, coarse, N as printed: to three digits, now up, now down (20.12 · 580 = 11 671, printed 11 600).
  const CLASSES = ['4.6', '4.8', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'];
  it.each([
    [6, 1, [4520, 6230, 7640, 8840, 11600, 13100, 16700, 19500]],
    [8, 1.25, [8240, 11400, 13900, 16100, 21200, 23800, 30400, 35500]],
    [10, 1.5, [13000, 18000, 22000, 25500, 33700, 37700, 48100, 56300]],
    [12, 1.75, [19000, 26100, 32000, 37100, 48900, 54800, 70000, 81800]],
  ])('M%f × %f has the printed proof loads in eight classes', (d, P, loads) => {
    const As = tensileStressArea(metric(d, P, '6g')).value;
    for (const [i, load] of loads.entries())
      agrees(As * strengthClass({ name: CLASSES[i]!, diameterMm: d })!.proofMPa, load);
  });

  // ISO 898-1, fine pitch, N, from memory.
  it.each([
    [8, 1, 22700, 32500],
    [10, 1.25, 35500, 50800],
    [10, 1, 37400, 53500],
    [12, 1.5, 51100, 73100],
    [12, 1.25, 53400, 76400],
  ])('M%f × %f has the printed proof loads in 8.8 and 10.9', (d, P, middle, high) => {
    const As = tensileStressArea(metric(d, P, '6g')).value;
    agrees(As * strengthClass({ name: '8.8', diameterMm: d })!.proofMPa, middle);
    agrees(As * strengthClass({ name: '10.9', diameterMm: d })!.proofMPa, high);
  });

  // ISO 898-1, least breaking loads, N as printed.
  it.each([
    [6, 1, 16100, 20900, 24500],
    [8, 1.25, 29200, 38100, 44600],
    [10, 1.5, 46400, 60300, 70800],
    [12, 1.75, 67400, 87700, 103000],
    [16, 2, 125000, 163000, 192000],
  ])('M%f × %f has the printed breaking loads in 8.8, 10.9 and 12.9', (d, P, ...loads) => {
    const As = tensileStressArea(metric(d, P, '6g')).value;
    for (const [i, name] of ['8.8', '10.9', '12.9'].entries())
      agrees(As * strengthClass({ name, diameterMm: d })!.tensileMPa, loads[i]!);
  });

  // ISO 898-2 (DIN EN 20898-2), style 1, N as printed: classes 8, 10, 12. The proof stress of a nut is that load on the
  // stress area of its bolt, which is how a nut's proof stress is used here.
  it.each([
    [6, 1, 17200, 20900, 23100],
    [8, 1.25, 31800, 38100, 42500],
    [10, 1.5, 50500, 60300, 67300],
    [12, 1.75, 74200, 88500, 100300],
    [16, 2, 138200, 164900, 186800],
  ])('a nut M%f × %f carries just its own proof load', (d, P, ...loads) => {
    const areaMm2 = tensileStressArea(metric(d, P, '6g')).value;
    for (const [i, name] of (['8', '10', '12'] as const).entries()) {
      const nutProofMPa = nutClass({ name, diameterMm: d })!.proofMPa;
      agrees(nutProofMPa * areaMm2, loads[i]!);
      expect(nutProof({ mostN: nutProofMPa * areaMm2, nutProofMPa, areaMm2 }, 'mm').finding.status).toBe(
        'pass',
      );
      expect(nutProof({ mostN: nutProofMPa * areaMm2 + 1, nutProofMPa, areaMm2 }, 'mm').finding.status).toBe(
        'caution',
      );
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
  ])('thread %f-%i at %i ksi carries %i lbf', (d, tpi, ksi, lbf) => {
    const At = inch2(tensileStressArea(unified(d, tpi, '2A', series(d, tpi))).value);
    expect(Math.abs(At * ksi * 1000 - lbf)).toBeLessThan(10);
  });
});

describe('engagement against the pull-out of a tapped hole', () => {
  // NASA RP-1228 (Barrett, 1990): P = π d_m F_s L/3, the third empirical, a half were the threads matched perfectly. Over
  // one diameter at the pitch diameter our stud's thread lies between them, and a little above for tolerances of the nut.
  it.each([
    [0.375, 24],
    [0.4375, 20],
    [0.5, 13],
  ])('thread %f-%i has a shear area between a third of the cylinder and just over a half of it', (d, tpi) => {
    const stud = threadGeometry(unified(d, tpi, '2A', series(d, tpi)));
    const nut = threadGeometry(unified(d, tpi, '2B', series(d, tpi)));
    const { studMm2 } = threadShearAreas({ stud, nut, lengthMm: d * 25.4 });
    const cylinder = Math.PI * stud.pitchDiameterMm.basic * d * 25.4;
    expect(studMm2 / cylinder).toBeGreaterThan(1 / 3);
    expect(studMm2 / cylinder).toBeLessThan(0.6);
  });
});

describe('heights of nuts the demonstration uses: the middle of the standard and half its range', () => {
  // ISO 4032: m max/min and least bearing diameter, mm. ASME B18.2.2 hex nuts: H max/min, in.
  const IN = 25.4;
  it.each([
    ['M8', 6.8, 6.44],
    ['M10', 8.4, 8.04],
    ['M12', 10.8, 10.37],
    ['5/16', 0.273 * IN, 0.258 * IN],
    ['3/8', 0.337 * IN, 0.32 * IN],
    ['7/16', 0.385 * IN, 0.365 * IN],
  ])('the demo nut %s has a height within its standard', (size, most, least) => {
    const nuts = demoStacks.flatMap(({ entry }) =>
      entry.nut && entry.nutThreadTyped?.startsWith(size) ? [entry.nut] : [],
    );
    expect(nuts.length).toBeGreaterThan(0);
    for (const { heightMm, toleranceMm } of nuts) {
      expect(heightMm + toleranceMm).toBeCloseTo(most, 2);
      expect(heightMm - toleranceMm).toBeCloseTo(least, 2);
    }
  });

  it.each([
    ['M8', 11.6],
    ['M10', 14.6],
    ['M12', 16.6],
  ])('%s bears on Ø %f at least', (size, dw) => {
    const nuts = demoStacks.flatMap(({ entry }) =>
      entry.nut && entry.nutThreadTyped?.startsWith(size) ? [entry.nut] : [],
    );
    for (const nut of nuts) expect(nut.bearingOuterDiameterMm).toBe(dw);
  });
});
