import { conformanceProbability } from '../../measure/conformanceProbability.ts';
import type { FaceCut } from '../face/faceCut.ts';

/**
 * The deepest cut that still keeps the minimum at every station, and the deepest we can be sure of.
 *   plain: min(tᵢ − t_min + hᵢ);  sure: the largest p with P(tᵢ − max(0, p − hᵢ) ≥ t_min for all i) ≥ confidence
 *
 * t wall, t_min minimum wall, hᵢ how far station i stands below the highest, p depth of cut [mm].
 * Valid: the walls before the cut are at or above the minimum; otherwise no cut will do and the plain one is below
 * what any station needs. `sureMm` null when nothing is known of the gauge, or no cut is sure.
 * Source: geometry of facing, on conformanceProbability
 * Example: design set one, minimum 4.3 → plain 0.62 (tests/calc/cover/checkCover.test.ts)
 */
export function deepestCut({
  wallsMm,
  ways,
  minimumMm,
  uncertainty,
  confidence,
}: {
  readonly wallsMm: readonly number[];
  readonly ways: readonly FaceCut[];
  readonly minimumMm: number;
  readonly uncertainty: { readonly commonMm: number; readonly ownMm: readonly number[] } | null;
  readonly confidence: number;
}): { readonly plainMm: number; readonly sureMm: number | null } {
  const down = wallsMm.map((_, i) => Math.min(...ways.map((way) => way.downMm[i]!)));
  const plainMm = Math.min(...wallsMm.map((wall, i) => wall - minimumMm + down[i]!));
  if (uncertainty === null) return { plainMm, sureMm: null };
  const sure = (cutMm: number) =>
    conformanceProbability({
      marginsMm: wallsMm.map((wall, i) => wall - Math.max(0, cutMm - down[i]!) - minimumMm),
      ...uncertainty,
    }) >= confidence;
  if (!sure(0)) return { plainMm, sureMm: null };
  let [low, high] = [0, plainMm];
  if (sure(high)) return { plainMm, sureMm: high };
  while (high - low > 1e-5) {
    const middle = (low + high) / 2;
    if (sure(middle)) low = middle;
    else high = middle;
  }
  return { plainMm, sureMm: low };
}
