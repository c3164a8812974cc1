import { describe, expect, it } from 'vitest';
import { ringTold } from '../../../src/calc/plate/ringTold.ts';

const SIZE = { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6 };
const told = (changes: Partial<Parameters<typeof ringTold>[0]> = {}) =>
  ringTold({ size: SIZE, padThicknessMm: 10, runoutMm: 0.3, balance: null, ...changes });

describe('the ring', () => {
  it('a ring weighs as a plain annulus, is out of balance by half its runout, and clears by what the pads are thicker (first principles)', () => {
    // π/4 · (296² − 236²) · 6 mm³ = 150 419.5 mm³; · 7870 kg/m³ = 1.1838 kg; · 0.15 mm = 177.57 g·mm.
    const { massKg, unbalanceGmm, clearanceMm, permissibleGmm } = told();
    expect(massKg.value).toBeCloseTo(1.1838, 4);
    expect(unbalanceGmm?.value).toBeCloseTo(177.57, 2);
    expect(clearanceMm.value).toBe(4);
    expect(permissibleGmm).toBeNull();
  });

  it('a ring’s unbalance is held against ISO 21940-11 at the shop’s grade and speed: G 6.3, 1 kg, 3000 rpm permits 20.05 g·mm', () => {
    const balance = { gradeMmPerS: 6.3, massKg: 1, speedRpm: 3000 };
    expect(told({ balance }).permissibleGmm?.value).toBeCloseTo(20.05, 2);
  });

  it('a ring has no unbalance where no runout is allowed for, and a clearance below nothing for a ring thicker than the pads', () => {
    expect(told({ runoutMm: null }).unbalanceGmm).toBeNull();
    expect(told({ padThicknessMm: 5 }).clearanceMm.value).toBe(-1);
  });
});
