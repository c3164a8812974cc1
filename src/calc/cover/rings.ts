import { RING_WIDTH_MM } from '../../../shared/words/places.ts';

export interface Ring {
  /** Mean radius of its stations. */
  readonly radiusMm: number;
  /** Indexes of its stations, from 0 as sent. */
  readonly stations: readonly number[];
}

/**
 * Stations sorted into rings, the innermost first.   r − r_innermost ≤ 0.5 mm
 *
 * r radius of a station, r_innermost that of the innermost station of its ring [mm].
 * Valid: one station or more. A ring does not grow beyond 0.5 mm by small steps.   Source: common practice, no source
 * Example: radii 110, 128, 110.4 → rings of {0, 2} and {1} (tests/calc/cover/rings.test.ts)
 */
export function rings(stations: readonly { readonly radiusMm: number }[]): readonly Ring[] {
  const inward = stations.map((_, index) => index);
  inward.sort((a, b) => stations[a]!.radiusMm - stations[b]!.radiusMm || a - b);
  const groups: number[][] = [];
  let innermost = Number.NEGATIVE_INFINITY;
  for (const index of inward) {
    const { radiusMm } = stations[index]!;
    if (radiusMm - innermost <= RING_WIDTH_MM + 1e-9) groups.at(-1)!.push(index);
    else {
      groups.push([index]);
      innermost = radiusMm;
    }
  }
  return groups.map((group) => ({
    radiusMm: group.reduce((sum, index) => sum + stations[index]!.radiusMm, 0) / group.length,
    stations: group.toSorted((a, b) => a - b),
  }));
}
