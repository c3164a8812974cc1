import type { Answer, Warning } from '../../../shared/words/answer.ts';
import type { HeatAnswer, HeatInput, HeatRise } from '../../../shared/words/bending/heat.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { peakTime } from './peakTime.ts';
import { refuseHeat } from './refuseHeat.ts';
import type { Slab } from './slabStep.ts';
import { slipRise } from './slipRise.ts';
import { temperColour } from './temperColour.ts';

const SLAB = 'Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., §3.8';
/** Above this rise the conductivity and specific heat of steel have changed too much. */
const HOT_K = 300;

/**
 * How hot one engagement makes the rubbed face of the cover. Advice.
 *   even rise θ_e = q₀·t_s/(2·ρ·c·L): all heat of the slip, spread through the thickness
 *
 * Valid: heat straight through the thickness, none lost meanwhile.   Source: this program’s own model
 * Throws: a Refusal that names each field no heat can be worked out from (refuseHeat.ts).
 * Example: 5 mm of plain carbon steel (tests/published/heat.test.ts)
 */
export function heatCover(input: HeatInput): HeatAnswer {
  refuseHeat(input);
  const { fluxWPerM2, slipTimeS, thicknessMm, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } =
    input;
  const slab: Slab = {
    thicknessM: thicknessMm / 1000,
    conductivityWPerMK,
    diffusivityM2PerS: conductivityWPerMK / (densityKgPerM3 * specificHeatJPerKgK),
  };
  const peakAtS = peakTime(slab, slipTimeS);
  const rise = (timeS: number) => slipRise({ slab, fluxWPerM2, slipTimeS, timeS });
  const mean: HeatRise = {
    peakRiseK: rise(peakAtS),
    peakAtS,
    endRiseK: rise(slipTimeS),
    evenRiseK: (fluxWPerM2 * slipTimeS) / (2 * densityKgPerM3 * specificHeatJPerKgK * slab.thicknessM),
  };
  const { pressurePeak, startTemperatureC } = input;
  const behindStud = pressurePeak === null ? null : times(mean, pressurePeak);
  const hottestK = (behindStud ?? mean).peakRiseK;
  const peakTemperatureC = startTemperatureC === null ? null : startTemperatureC + hottestK;
  const colour = peakTemperatureC === null ? null : temperColour(peakTemperatureC);
  return {
    ...mean,
    behindStud,
    peakTemperatureC,
    temperColour: colour,
    warnings: worth({ hottestK, behindStud, peakTemperatureC }),
    answers: answersOf(input, slab, mean, behindStud),
  };
}

/** The same rise with the flux multiplied: temperatures grow with it, the time of the peak stays. */
function times(rise: HeatRise, factor: number): HeatRise {
  return {
    peakRiseK: rise.peakRiseK * factor,
    peakAtS: rise.peakAtS,
    endRiseK: rise.endRiseK * factor,
    evenRiseK: rise.evenRiseK * factor,
  };
}

function worth({
  hottestK,
  behindStud,
  peakTemperatureC,
}: {
  readonly hottestK: number;
  readonly behindStud: HeatRise | null;
  readonly peakTemperatureC: number | null;
}): Warning[] {
  const warnings: Warning[] = [
    {
      code: 'advice',
      text: 'Advice, for one engagement on an even face. Heat that goes sideways, into the oil or into marks already there is left out.',
    },
  ];
  if (behindStud !== null) {
    warnings.push({
      code: 'behind-stud',
      text: 'Behind a stud the flux is larger by the pressure peak, as if the slab were as hot all around. Heat that spreads sideways makes it less.',
    });
  }
  if (peakTemperatureC !== null) {
    warnings.push({
      code: 'temper-colour',
      text: 'Temper colors are a rough guide: time at heat, alloy and oil change them.',
    });
  }
  if (hottestK > HOT_K) {
    warnings.push({
      code: 'hot',
      text: `A rise of ${printNumber(hottestK, 0)} K changes the steel’s own conductivity and heat. Read it as very hot, not as a figure.`,
    });
  }
  return warnings;
}

function answersOf(
  input: HeatInput,
  slab: Slab,
  mean: HeatRise,
  behindStud: HeatRise | null,
): Readonly<Record<string, Answer>> {
  const flux = `${printNumber(input.fluxWPerM2 / 1e6, 3)} MW/m²`;
  const step = {
    formula: 'F(t) = αt/(kL) + (L/k)·[1/3 − (2/π²)·Σ e^(−n²π²αt/L²)/n²], α = k/(ρc)',
    numbers: `α = ${printNumber(slab.diffusivityM2PerS * 1e6, 3)} mm²/s, L = ${input.thicknessMm} mm, k = ${input.conductivityWPerMK} W/(m·K)`,
    source: SLAB,
  };
  const at = (timeS: number, value: number) => ({
    formula: 'θ(t) = q₀·[F(t) − (1/t_s)·∫₀ᵗ F dt]',
    numbers: `θ(${printNumber(timeS, 3)} s) = ${printNumber(value, 2)} K, with q₀ = ${flux} and t_s = ${input.slipTimeS} s`,
    source: 'Duhamel’s theorem on the step response; slip speed falling evenly',
  });
  const even = {
    formula: 'θ_e = q₀·t_s/(2·ρ·c·L)',
    numbers: `θ_e = ${flux} · ${input.slipTimeS} s/(2 · ${input.densityKgPerM3} kg/m³ · ${input.specificHeatJPerKgK} J/(kg·K) · ${input.thicknessMm} mm) = ${printNumber(mean.evenRiseK, 2)} K`,
    source: 'all heat of the slip, spread through the thickness',
  };
  const answer = (symbol: string, value: number, unit: Answer['unit'], how: Answer['how']): Answer => ({
    symbol,
    value,
    unit,
    how,
    warnings: [],
  });
  const peak = [step, at(mean.peakAtS, mean.peakRiseK)];
  return {
    peakRiseK: answer('θ_max', mean.peakRiseK, 'K', peak),
    peakAtS: answer('t_max', mean.peakAtS, 's', [
      step,
      {
        formula: 'F′(t_max) = F(t_max)/t_s',
        numbers: `t_max = ${printNumber(mean.peakAtS, 3)} s`,
        source: 'where θ stops rising',
      },
    ]),
    endRiseK: answer('θ_end', mean.endRiseK, 'K', [step, at(input.slipTimeS, mean.endRiseK)]),
    evenRiseK: answer('θ_e', mean.evenRiseK, 'K', [even]),
    ...(behindStud && {
      behindStudPeakRiseK: answer('θ_stud', behindStud.peakRiseK, 'K', [
        ...peak,
        {
          formula: 'θ_stud = (p_max/p_m)·θ_max',
          numbers: `θ_stud = ${input.pressurePeak} · ${printNumber(mean.peakRiseK, 2)} K = ${printNumber(behindStud.peakRiseK, 2)} K`,
          source: 'flux follows the lining’s pressure',
        },
      ]),
    }),
  };
}
