import type { Answer } from '../../../shared/words/answer.ts';
import { turned } from '../../../shared/words/places.ts';
import { printNumber } from '../../../shared/words/print.ts';
import { leastSquaresPlane, type SpacePoint } from '../measure/leastSquaresPlane.ts';

const GRAM_PER_MM3 = 1e-6;
/** A wall more even than this has no heavy side. */
const EVEN_SLOPE = 1e-12;

/**
 * Unbalance of a wall that is thicker on one side.   U = ρ s π (r_o⁴ − r_i⁴)/4
 *
 * ρ density [kg/m³] · s slope of the least-squares plane through the walls left [mm/mm] · r_o, r_i radii of the
 * friction surface [mm]; U in g·mm. It comes from ∫ρ s x² dA over the ring.
 * Valid: three stations not on one line, else null; only the friction surface's ring is counted.
 * Source: first principles (first moment of a wedge on a ring)
 * Example: 0.02 mm over Ø 264, friction surface Ø 214–264, ρ 7870 → 80.78 g·mm (tests/calc/cover/unbalance.test.ts)
 */
export function unbalance({
  walls,
  trackInnerDiameterMm,
  trackOuterDiameterMm,
  densityKgPerM3,
}: {
  /** z is the wall left. */
  readonly walls: readonly SpacePoint[];
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly densityKgPerM3: number;
}): Answer & { readonly heavySideDeg: number | null } {
  const shape = { symbol: 'U', unit: 'g·mm' } as const;
  const plane = leastSquaresPlane(walls);
  if (plane === null) {
    const text = 'At least three stations that are not in one line are needed.';
    return { ...shape, value: null, heavySideDeg: null, how: [], warnings: [{ code: 'no-plane', text }] };
  }
  const slope = Math.hypot(plane.slopeX, plane.slopeY);
  const [ri, ro] = [trackInnerDiameterMm / 2, trackOuterDiameterMm / 2];
  const value = (densityKgPerM3 * GRAM_PER_MM3 * slope * Math.PI * (ro ** 4 - ri ** 4)) / 4;
  const even = slope < EVEN_SLOPE;
  return {
    ...shape,
    value: even ? 0 : value,
    heavySideDeg: even ? null : turned((Math.atan2(plane.slopeY, plane.slopeX) * 180) / Math.PI),
    how: [
      ...plane.how,
      {
        formula: 'U = ρ·s·π·(r_o⁴ − r_i⁴)/4',
        numbers: `U = ${printNumber(densityKgPerM3, 0)} kg/m³ · ${printNumber(slope * 1000, 4)} µm/mm · π · (${printNumber(ro, 1)}⁴ − ${printNumber(ri, 1)}⁴)/4 = ${printNumber(value, 2)} g·mm`,
        source: 'first moment of a wedge on a ring (first principles)',
      },
    ],
    warnings: [],
  };
}
