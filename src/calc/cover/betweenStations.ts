import { turned } from '../../../shared/words/places.ts';
import type { MeasuredStation } from './measuredStations.ts';
import { rings } from './rings.ts';

/**
 * Wall and indicator reading at a place between stations: straight-line in angle, round the nearest ring.
 *   t = t₁ + (t₂ − t₁)·(θ − θ₁)/(θ₂ − θ₁), the same for z
 *
 * θ angle from stud 1 [deg] · t wall [mm] · z indicator reading [mm]; 1 and 2 the ring's stations on either side.
 * Valid: any place; a ring of one station gives that station's values. Of two rings equally near, the inner.
 * Source: linear interpolation (first principles)
 * Example: halfway between 4.92 and 4.90 → 4.91 (tests/calc/cover/betweenStations.test.ts)
 */
export function betweenStations(
  place: { readonly angleDeg: number; readonly radiusMm: number },
  stations: readonly MeasuredStation[],
): { wallMm: number; faceMm: number | null } {
  const distance = (radiusMm: number) => Math.abs(radiusMm - place.radiusMm);
  const ring = rings(stations).reduce((best, next) =>
    distance(next.radiusMm) < distance(best.radiusMm) - 1e-9 ? next : best,
  );
  // Angles counted on from the place, so that "before" and "after" need no care at 0°.
  const ahead = (station: MeasuredStation) => turned(station.angleDeg - place.angleDeg);
  const round = ring.stations.map((index) => stations[index]!).sort((a, b) => ahead(a) - ahead(b));
  const [after, before] = [round[0]!, round.at(-1)!];
  if (after === before || ahead(after) === 0) return { wallMm: after.wallMm, faceMm: after.faceMm };
  const gap = turned(after.angleDeg - before.angleDeg);
  const share = turned(place.angleDeg - before.angleDeg) / gap;
  const blend = (from: number, to: number) => from + (to - from) * share;
  return {
    wallMm: blend(before.wallMm, after.wallMm),
    faceMm: before.faceMm === null || after.faceMm === null ? null : blend(before.faceMm, after.faceMm),
  };
}
