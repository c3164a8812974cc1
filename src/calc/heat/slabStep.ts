/** A slab: heated on one face, the other insulated. */
export interface Slab {
  readonly thicknessM: number;
  readonly conductivityWPerMK: number;
  readonly diffusivityM2PerS: number;
}

/** Below this αt/L² no heat has reached the insulated face yet: the error is under e^(−1/Fo). */
const SHORT_FO = 0.02;

/**
 * Rise of the heated face for a steady flux of one from time 0 on, its rate, and its sum over time.
 *   F(t) = αt/(kL) + (L/k)·[1/3 − (2/π²)·Σ e^(−n²π²αt/L²)/n²]
 *
 * α diffusivity [m²/s] · k conductivity [W/(m·K)] · L thickness [m]; F in K per W/m², F' by time, ∫F over time.
 * At first, αt/L² < 0.02, the slab is as good as endless: F = (2/k)·√(αt/π), to the last digit.
 * Valid: heat straight through the thickness, properties that do not change with temperature.
 * Source: Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., §3.8 eq. 3 and §2.9 (from memory)
 * Example: αt/L² = 0.2 → F·k/L 0.505165 (tests/published/heat.test.ts)
 */
export function slabStep(
  { thicknessM, conductivityWPerMK, diffusivityM2PerS }: Slab,
  timeS: number,
): { readonly rise: number; readonly rate: number; readonly summed: number } {
  const unit = thicknessM / conductivityWPerMK;
  const perFo = thicknessM ** 2 / diffusivityM2PerS;
  const fo = timeS / perFo;
  if (fo < SHORT_FO) {
    const rise = 2 * Math.sqrt(fo / Math.PI) * unit;
    return { rise, rate: rise / (2 * timeS), summed: (2 / 3) * rise * timeS };
  }
  let [ofRise, ofRate, ofSummed] = [0, 0, 0];
  for (let n = 1, fades = 1; fades > 1e-17; n++) {
    const square = (n * Math.PI) ** 2;
    fades = Math.exp(-square * fo);
    ofRise += fades / square;
    ofRate += fades;
    ofSummed += fades / square ** 2;
  }
  return {
    rise: unit * (fo + 1 / 3 - 2 * ofRise),
    rate: (unit / perFo) * (1 + 2 * ofRate),
    // Σ 1/(nπ)⁴ = 1/90 is what the sum of (1 − e^…)/(nπ)⁴ begins from.
    summed: unit * perFo * (fo ** 2 / 2 + fo / 3 - 2 * (1 / 90 - ofSummed)),
  };
}
