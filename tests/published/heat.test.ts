import { describe, expect, it } from 'vitest';
import { CHECKED_HEAT, ENGAGEMENT } from '../../data/examples/heatExamples.ts';
import { heatCover } from '../../src/calc/heat/heatCover.ts';
import { slabStep } from '../../src/calc/heat/slabStep.ts';
import { slipFlux } from '../../src/calc/heat/slipFlux.ts';

const ONE = { thicknessM: 1, conductivityWPerMK: 1, diffusivityM2PerS: 1 };

describe('slab heated on one face, the other insulated: Carslaw & Jaeger, 2nd ed., §3.8 eq. 3 (values: independent second implementation, not published)', () => {
  it.each([
    [0.01, '0.112838'],
    [0.05, '0.252313'],
    [0.1, '0.356826'],
    [0.2, '0.505165'],
    [0.3, '0.622842'],
    [0.5, '0.831876'],
    [1, '1.333323'],
  ])('the slab at αt/L² %s has k·θ/(q·L) %s', (timeS, printed) => {
    expect(slabStep(ONE, timeS).rise.toFixed(6)).toBe(printed);
  });
  it('the slab’s rise nears αt/L² + 1/3', () => {
    expect(slabStep(ONE, 3).rise).toBeCloseTo(3 + 1 / 3, 9);
  });
});

describe('endless solid: Çengel, Heat Transfer, example 4-7: q 1250 W/m², 20 °C, 1200 s', () => {
  it.each([
    ['wood', 1.26, 1.1e-5, '149'],
    ['aluminium', 237, 9.71e-5, '22'],
  ])(
    'the endless solid of Çengel, example 4-7, of %s',
    (_, conductivityWPerMK, diffusivityM2PerS, printed) => {
      const { rise } = slabStep({ thicknessM: 100, conductivityWPerMK, diffusivityM2PerS }, 1200);
      expect((20 + 1250 * rise).toFixed(0)).toBe(printed);
    },
  );
});

/**
 * Of the clutch-energy rows, what slipFlux and heatCover compute: the energy lost in slip, and the rise once it has
 * spread. They do not compute how long a slip takes or the insulated face, so those rows have no test; how a brake cools
 * between stops is Shigley's, the rise of each stop ours.
 */
describe('energy of a slip', () => {
  it('the cone clutch of Khurmi & Gupta, 7.824 N·m for 4.066 s from 1000 rpm, loses 1665 N·m', () => {
    const [trackInnerDiameterMm, trackOuterDiameterMm] = [100, 150];
    const q0 = slipFlux({
      share: 1,
      torqueNm: 7.824,
      slipRpm: 1000,
      trackInnerDiameterMm,
      trackOuterDiameterMm,
    });
    const areaM2 = (Math.PI / 4) * (0.15 ** 2 - 0.1 ** 2);
    // Slip speed falls evenly: half the first power, for so long.
    const lostJ = (q0 * areaM2 * 4.066) / 2;
    expect(Math.abs(lostJ / 1665 - 1)).toBeLessThan(0.001);
    expect(Math.abs(lostJ / (0.5 * 13.5 * 0.15 ** 2 * ((1000 * Math.PI) / 30) ** 2) - 1)).toBeLessThan(0.001);
  });

  describe('the caliper brake of Shigley, 9th ed., example 16-5 (from memory, recomputed)', () => {
    const [btuJ, poundKg, inchM] = [1055.056, 0.45359237, 0.0254];
    const energyJ = ((289 * ((250 * Math.PI) / 30) ** 2) / (2 * 9336)) * btuJ;
    // A disk of 6 in by 1/4 in, 0.282 lbm/in³, 0.108 Btu/(lbm·°F), as a slab.
    const areaM2 = (Math.PI / 4) * (6 * inchM) ** 2;
    const thicknessM = inchM / 4;
    const densityKgPerM3 = (0.282 * poundKg) / inchM ** 3;
    const massLb = (densityKgPerM3 * areaM2 * thicknessM) / poundKg;
    const { evenRiseK } = heatCover({
      fluxWPerM2: (2 * energyJ) / areaM2,
      slipTimeS: 1,
      thicknessMm: 1000 * thicknessM,
      conductivityWPerMK: 50,
      densityKgPerM3,
      specificHeatJPerKgK: (0.108 * btuJ) / poundKg / (5 / 9),
      pressurePeak: null,
      startTemperatureC: null,
    });

    it('takes up 10.6 Btu in 1.99 lbm and warms by 49.3 °F', () => {
      expect((energyJ / btuJ).toFixed(1)).toBe('10.6');
      expect(massLb.toFixed(2)).toBe('1.99');
      expect((evenRiseK * 1.8).toFixed(1)).toBe('49.3');
    });

    // h_r 3.0, h_c 2.0 and f_v 4.8 are read from its charts; 24 stops an hour, air of 70 °F.
    it('stopping every 150 s comes to stand between 160 and 209 °F', () => {
      const perInch2SF = (3.0 + 4.8 * 2.0) * 1e-6;
      expect(perInch2SF * 1e6).toBeCloseTo(12.6, 9);
      const perS = (perInch2SF * 50) / (massLb * 0.108);
      expect(perS * 1000).toBeCloseTo(2.93, 2);
      let overAirF = 0;
      let beforeF = 0;
      for (let stop = 0; stop < 200; stop += 1) {
        beforeF = overAirF * Math.exp(-perS * 150);
        overAirF = beforeF + evenRiseK * 1.8;
      }
      expect(Math.abs(70 + overAirF - 209)).toBeLessThan(0.5);
      expect(Math.abs(70 + beforeF - 160)).toBeLessThan(1);
    });
  });
});

describe('one engagement: check values 10.4 (independent second implementation, not published)', () => {
  it.each(CHECKED_HEAT)(
    'one engagement on $thicknessMm mm peaks at $peakRiseK K after $peakAtS s and ends at $endRiseK K',
    (row) => {
      const found = heatCover({ ...ENGAGEMENT, thicknessMm: row.thicknessMm });
      expect(Number(found.peakRiseK.toFixed(2))).toBe(row.peakRiseK);
      expect(Number(found.peakAtS.toFixed(3))).toBe(row.peakAtS);
      expect(Number(found.endRiseK.toFixed(2))).toBe(row.endRiseK);
    },
  );
});
