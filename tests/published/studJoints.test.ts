import { describe, expect, it } from 'vitest';
import { checkStud } from '../../src/calc/stud/checkStud.ts';
import { clampedResilience } from '../../src/calc/stud/clampedResilience.ts';
import { embeddingLoss } from '../../src/calc/stud/embeddingLoss.ts';
import { fixedFastenerPosition } from '../../src/calc/stud/fixedFastenerPosition.ts';
import { NUT_FACTORS, SCATTERS } from '../../src/calc/stud/jointFigures.ts';
import { preload } from '../../src/calc/stud/preload.ts';
import { slipTorque } from '../../src/calc/stud/slipTorque.ts';
import { EXAMPLE } from '../calc/stud/example.ts';

const N_PER_LBF = 4.4482216;
const NM_PER_LBF_IN = 0.11298483;

describe('T = K d F', () => {
  // Shigley, 9th ed., example 8-3: 3/4-16, K 0.2, 25 kip, T 3750 lbf·in (part b from memory); and the handbook's
  // 10-32 at 980 lbf, 37 lbf·in (37.24 unrounded).
  it.each([
    [3750, 0.75, 25_000],
    [37.24, 0.19, 980],
  ])('%f lbf·in on %f in is %i lbf', (torque, d, lbf) => {
    const found = preload({
      torqueNm: torque * NM_PER_LBF_IN,
      nutFactor: 0.2,
      diameterMm: d * 25.4,
      scatter: 0,
    });
    expect(found.nominalN / N_PER_LBF).toBeCloseTo(lbf, 0);
  });
});

describe('figures to choose from', () => {
  // Shigley, 9th ed., table 8-15.
  it.each([
    ['black', 0.3],
    ['zinc', 0.2],
    ['oiled', 0.18],
    ['cadmium', 0.16],
    ['anti-seize', 0.12],
    ['low-friction', 0.09],
  ])('nut factor, %s: %f', (id, K) => {
    expect(NUT_FACTORS.find((one) => one.id === id)?.value).toBe(K);
  });

  // Shigley, 9th ed., table 8-14: ten lubricated bolts at 90 N·m; printed mean 34.18 kN, s 2.88 kN.
  it('spread of the ten bolts: twice 2.88 of 34.18 is 17 %', () => {
    const kN = [30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5];
    const mean = kN.reduce((sum, one) => sum + one, 0) / kN.length;
    const s = Math.sqrt(kN.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (kN.length - 1));
    expect(mean).toBeCloseTo(34.18, 2);
    expect(s).toBeCloseTo(2.88, 2);
    expect(SCATTERS.find((one) => one.id === 'ten-bolts')?.value).toBeCloseTo((2 * s) / mean, 2);
  });
});

describe('cone of clamped parts', () => {
  // Shigley, 8th ed., problems 8-22 and 8-23: frusta of 30° on a 12 mm bolt, MN/m as printed. Our own cone opens with
  // tan φ 0.6; the formula is the same.
  it.each([
    [20, 18, 207, 4470],
    [2.5, 41.09, 100, 52_230],
    [22.5, 18, 100, 2074],
    [13, 18, 207, 5316],
    [7, 24.9, 207, 15_620],
    [6, 18, 100, 3887],
  ])('t %f, D %f, E %i GPa: %i MN/m', (t, D, gPa, printed) => {
    const found = clampedResilience({
      bearingOuterDiameterMm: D,
      slices: [{ thicknessMm: t, holeDiameterMm: 12 }],
      youngMPa: gPa * 1000,
      tanPhi: 0.5774,
    })!;
    expect(Math.abs(1 / found.mmPerN / 1000 / printed - 1)).toBeLessThan(0.002);
  });
});

describe('embedding', () => {
  // VDI 2230:2003, table 5, Rz 10 to 40, shear: 3 in the thread, 4.5 under the nut, 2.5 for each interface (from memory).
  it.each([
    [1, 10],
    [2, 12.5],
    [4, 17.5],
  ])('%i interfaces settle %f µm', (interfaces, um) => {
    const found = embeddingLoss({ interfaces, studMmPerN: 0.6e-6, clampedMmPerN: 0.4e-6, steps: [] });
    expect(found.value).toBeCloseTo(um * 1000, 6);
  });

  // The same table by roughness, shear (from memory): thread, under the nut, each interface.
  it.each([
    ['rz-under-10', 3 + 3 + 2 * 2],
    ['rz-10-to-40', 3 + 4.5 + 2 * 2.5],
    ['rz-40-to-160', 3 + 6.5 + 2 * 3.5],
  ] as const)('two interfaces, %s: %f µm', (surface, um) => {
    const found = embeddingLoss({
      interfaces: 2,
      surface,
      studMmPerN: 0.6e-6,
      clampedMmPerN: 0.4e-6,
      steps: [],
    });
    expect(found.value).toBeCloseTo(um * 1000, 6);
    const stated = checkStud({ ...EXAMPLE, joint: { ...EXAMPLE.joint!, surface } }).joint!.embeddingLossN!;
    const middle = checkStud(EXAMPLE).joint!.embeddingLossN!;
    const oneInterface = { 'rz-under-10': 8, 'rz-10-to-40': 10, 'rz-40-to-160': 13 };
    expect(stated / middle).toBeCloseTo(oneInterface[surface] / 10, 9);
  });
});

describe('friction joint', () => {
  // EN 1993-1-8 §3.9 (from memory): M20 10.9, Fp,C 171.5 kN, µ 0.5, one face, γ 1.25: 68.6 kN. Independent second
  // implementation, not published. At a radius of 1 m the torque in N·m is the force in N.
  it('one bolt', () => {
    const found = slipTorque({ friction: 0.5, studCount: 1, preloadN: 171_500, radiusMm: 1000 });
    expect(found.value / 1.25).toBeCloseTo(68_600, 6);
  });
});

describe('fixed fastener', () => {
  // ASME Y14.5, Appendix B, worked numbers of the 1994 and 2009 editions, from memory: 3.5 in 3.94: 0.22 each.
  it('T = (H − F)/2', () => {
    const tightest = { name: 'plate', holeMm: 3.94, clearanceMm: 3.94 - 3.5 };
    const found = fixedFastenerPosition({ studMm: 3.5, tightest }, { differenceMm: null }, 'mm');
    expect(found.finding.value).toBeCloseTo(0.22, 9);
  });
});

describe('threads past the nut', () => {
  // FAA AC 43.13-1B ¶7-64(f): after tightening, at least one thread showing past the nut. It is the default criterion.
  it('one thread is enough for the default criterion, and less is not', () => {
    const P = 25.4 / 24;
    const at = (threads: number) =>
      checkStud({
        ...EXAMPLE,
        stud: { ...EXAMPLE.stud, lengthToleranceMm: 0, threadEndMm: 11.5 + threads * P },
        stack: { ...EXAMPLE.stack, layers: [{ ...EXAMPLE.stack.layers[0]!, toleranceMm: 0 }] },
        nut: { ...EXAMPLE.nut!, toleranceMm: 0 },
      }).findings.find((one) => one.id === 'protrusion')!.status;
    expect([at(1), at(0.99)]).toEqual(['pass', 'fail']);
  });
});
