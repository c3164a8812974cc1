import type { HeatInput } from '../../shared/words/bending/heat.ts';
import { heatCover } from '../../src/calc/heat/heatCover.ts';
import { peakTime } from '../../src/calc/heat/peakTime.ts';
import { slabStep } from '../../src/calc/heat/slabStep.ts';
import { slipFlux } from '../../src/calc/heat/slipFlux.ts';
import { slipRise } from '../../src/calc/heat/slipRise.ts';
import { temperColour } from '../../src/calc/heat/temperColour.ts';
import { type Example, worked } from './worked.ts';

/** One engagement on 5 mm of plain carbon steel; an independent second implementation (not published) did it too. */
export const ENGAGEMENT: HeatInput = {
  fluxWPerM2: 2e6,
  slipTimeS: 0.6,
  thicknessMm: 5,
  conductivityWPerMK: 51.9,
  densityKgPerM3: 7870,
  specificHeatJPerKgK: 486,
  pressurePeak: null,
  startTemperatureC: null,
};
const SLAB = { thicknessM: 0.005, conductivityWPerMK: 51.9, diffusivityM2PerS: 51.9 / (7870 * 486) };
const SAID = '2.0 MW/m² over 0.6 s on 5.0 mm of steel of 51.9 W/(m·K), 7870 kg/m³, 486 J/(kg·K)';

/** By the file each belongs to. */
export const heatExamples: Readonly<Record<string, Example>> = {
  heatCover: worked(
    heatCover,
    [{ ...ENGAGEMENT, pressurePeak: 1.28 }],
    `${SAID}; pressure peak 1.28 times the mean`,
  ),
  peakTime: worked(
    (slab: typeof SLAB, timeS: number) => ({ timeS: peakTime(slab, timeS) }),
    [SLAB, 0.6],
    SAID,
  ),
  slabStep: worked(
    slabStep,
    [{ thicknessM: 1, conductivityWPerMK: 1, diffusivityM2PerS: 1 }, 0.2],
    'αt/L² 0.2, with L/k 1',
  ),
  slipFlux: worked(
    (given: Parameters<typeof slipFlux>[0]) => ({ fluxWPerM2: slipFlux(given) }),
    [{ share: 0.5, torqueNm: 300, slipRpm: 1000, trackInnerDiameterMm: 214, trackOuterDiameterMm: 264 }],
  ),
  slipRise: worked(
    (timeS: number) => ({ riseInKelvin: slipRise({ slab: SLAB, fluxWPerM2: 2e6, slipTimeS: 0.6, timeS }) }),
    [0.6],
    `${SAID}; when the slip ends`,
  ),
  temperColour: worked(temperColour, [250], '250 °C'),
};

/** What an independent second implementation (not published) finds for it, by thickness. */
export const CHECKED_HEAT = [
  { thicknessMm: 5, peakRiseK: 58.51, peakAtS: 0.301, endRiseK: 42.46 },
  { thicknessMm: 3.5, peakRiseK: 59.63, peakAtS: 0.335, endRiseK: 49.29 },
] as const;
