import { type Slab, slabStep } from './slabStep.ts';

/**
 * Rise of the rubbed face while the slip dies away, at a time within it.   θ(t) = q₀·[F(t) − (1/t_s)·∫₀ᵗ F dt]
 *
 * q₀ flux at the start [W/m²] · t_s slip time [s] · F step response of the slab.
 * Valid: 0 ≤ t ≤ t_s, flux falling evenly to nothing, as slip speed does under a steady torque.
 * Source: Duhamel's theorem: Carslaw & Jaeger, 2nd ed., §1.14 (from memory)
 * Example: 2.0 MW/m² over 0.6 s on 5.0 mm of steel ends at 42.46 K (tests/published/heat.test.ts)
 */
export function slipRise({
  slab,
  fluxWPerM2,
  slipTimeS,
  timeS,
}: {
  readonly slab: Slab;
  readonly fluxWPerM2: number;
  readonly slipTimeS: number;
  readonly timeS: number;
}): number {
  if (timeS <= 0) return 0;
  const { rise, summed } = slabStep(slab, timeS);
  return fluxWPerM2 * (rise - summed / slipTimeS);
}
