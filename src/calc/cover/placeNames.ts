import { turnApart, turned } from '../../../shared/words/places.ts';

/** A station this close to a stud, or to the middle between two, stands for that place: 360°/(8N). */
function reachDeg(studCount: number): number {
  return 360 / (8 * studCount);
}

/** The 2N places every cover is read at, in order round the clock: behind each stud, and between each pair. */
export function namedPlaces(studCount: number): readonly { angleDeg: number; name: string }[] {
  return Array.from({ length: 2 * studCount }, (_, index) => {
    const stud = Math.floor(index / 2) + 1;
    const next = (stud % studCount) + 1;
    return {
      angleDeg: (index * 180) / studCount,
      name: index % 2 === 0 ? `behind stud ${stud}` : `between studs ${stud} and ${next}`,
    };
  });
}

/**
 * Whether a station counts as read at a place.   |θ − θ_place| ≤ 360°/(8N)
 *
 * θ angles clockwise from stud 1 [deg], apart the short way round · N studs.
 * Valid: N ≥ 2.   Source: common practice, no source
 * Example: four studs: 11.25° from behind stud 2 counts, 11.26° does not (tests/calc/cover/coverage.test.ts)
 */
export function isAt(angleDeg: number, placeDeg: number, studCount: number): boolean {
  return turnApart(angleDeg, placeDeg) <= reachDeg(studCount) + 1e-9;
}

/** "behind stud 1", "between studs 1 and 2", else "at 70°, nearest stud 2". */
export function placeName(angleDeg: number, studCount: number): string {
  const found = namedPlaces(studCount).find((place) => isAt(angleDeg, place.angleDeg, studCount));
  if (found) return found.name;
  const turn = turned(angleDeg);
  const nearest = (Math.round((turn * studCount) / 360) % studCount) + 1;
  return `at ${Number(turn.toFixed(1))}°, nearest stud ${nearest}`;
}
