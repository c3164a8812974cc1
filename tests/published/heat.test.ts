import { describe, expect, it } from 'vitest';
import { heatCover } from '../../src/calc/heat/heatCover.ts';
import { slabStep } from '../../src/calc/heat/slabStep.ts';

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
  ])('αt/L² %s: k·θ/(q·L) %s', (timeS, printed) => {
    expect(slabStep(ONE, timeS).rise.toFixed(6)).toBe(printed);
  });
  it('grows to αt/L² + 1/3 (from memory)', () => {
    expect(slabStep(ONE, 3).rise).toBeCloseTo(3 + 1 / 3, 9);
  });
});

describe('endless solid: Çengel, Heat Transfer, example 4-7: q 1250 W/m², 20 °C, 1200 s', () => {
  it.each([
    ['wood', 1.26, 1.1e-5, '149'],
    ['aluminium', 237, 9.71e-5, '22'],
  ])('%s', (_, conductivityWPerMK, diffusivityM2PerS, printed) => {
    const { rise } = slabStep({ thicknessM: 100, conductivityWPerMK, diffusivityM2PerS }, 1200);
    expect((20 + 1250 * rise).toFixed(0)).toBe(printed);
  });
});

describe('one engagement: check values 10.4 (independent second implementation, not published)', () => {
  it.each([
    [5, '58.51', '0.301', '42.46'],
    [3.5, '59.63', '0.335', '49.29'],
  ])('L %s mm: peak %s K at %s s, end %s K', (thicknessMm, peak, at, end) => {
    const found = heatCover({
      fluxWPerM2: 2e6,
      slipTimeS: 0.6,
      thicknessMm,
      conductivityWPerMK: 51.9,
      densityKgPerM3: 7870,
      specificHeatJPerKgK: 486,
      pressurePeak: null,
      startTemperatureC: null,
    });
    expect(found.peakRiseK.toFixed(2)).toBe(peak);
    expect(found.peakAtS.toFixed(3)).toBe(at);
    expect(found.endRiseK.toFixed(2)).toBe(end);
  });
});
