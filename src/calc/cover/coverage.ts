import { isAt, namedPlaces } from './placeNames.ts';
import { rings } from './rings.ts';

export interface Coverage {
  /** Radius of the ring that comes nearest to being complete. */
  readonly ringRadiusMm: number;
  /** A station of it, by its index. */
  readonly ringStation: number;
  /** Places on that ring without a station, in words. */
  readonly missingPlaces: readonly string[];
  readonly secondRing: boolean;
}

/**
 * Whether the stations see enough of the face: one behind every stud and one between every pair, within
 * 360°/(8N), all on one ring, and a second ring somewhere.
 *
 * N studs. Valid: N ≥ 2.
 * Source: common practice, no source: heat marks sit behind the studs, because the wall bends between them
 * Example: eight stations at 45° on Ø 220 and one on Ø 256, four studs → nothing missing (tests/calc/cover/coverage.test.ts)
 */
export function coverage(
  stations: readonly { readonly angleDeg: number; readonly radiusMm: number }[],
  studCount: number,
): Coverage {
  const found = rings(stations);
  const missing = found.map((ring) =>
    namedPlaces(studCount)
      .filter(({ angleDeg }) => !ring.stations.some((i) => isAt(stations[i]!.angleDeg, angleDeg, studCount)))
      .map(({ name }) => name),
  );
  let best = 0;
  for (let i = 1; i < found.length; i++) {
    const gain = missing[best]!.length - missing[i]!.length;
    if (gain > 0 || (gain === 0 && found[i]!.stations.length > found[best]!.stations.length)) best = i;
  }
  return {
    ringRadiusMm: found[best]!.radiusMm,
    ringStation: found[best]!.stations[0]!,
    missingPlaces: missing[best]!,
    secondRing: found.length > 1,
  };
}
