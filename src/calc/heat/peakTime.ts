import { type Slab, slabStep } from './slabStep.ts';

const HALVINGS = 60;

/**
 * When the rubbed face is hottest: where θ' = q₀·[F'(t) − F(t)/t_s] passes through nothing.
 *
 * F' falls and F rises, so there is one such time; it lies within the slip, because F(t) is never less than t·F'(t).
 * Valid: 0 ≤ t ≤ t_s.   Source: derivative of slipRise set to nothing, by halving (first principles)
 * Example: 0.301 s of 0.6 s on 5.0 mm of steel (tests/published/heat.test.ts)
 */
export function peakTime(slab: Slab, slipTimeS: number): number {
  let [before, after] = [0, slipTimeS];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (before + after) / 2;
    const { rise, rate } = slabStep(slab, middle);
    if (rate * slipTimeS > rise) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
}
