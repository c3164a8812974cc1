/** Where on the face: clockwise from stud 1 looking at the clutch side, and from the crank axis. */
export interface Place {
  readonly angleDeg: number;
  readonly radiusMm: number;
}

/** Radii this close belong to one ring of stations (common practice, no source). */
export const RING_WIDTH_MM = 0.5;
/** Angles are typed or laid out, never measured: what is closer is float dust, such as 359.9999999° for 0°. */
const SAME_ANGLE_DEG = 1e-6;
const FLOAT_DUST_MM = 1e-9;

/** An angle brought to 0 up to 360. */
export function turned(angleDeg: number): number {
  const turn = ((angleDeg % 360) + 360) % 360;
  return turn === 360 ? 0 : turn;
}

/** Degrees between two angles, the short way round. */
export function turnApart(a: number, b: number): number {
  const turn = turned(a - b);
  return Math.min(turn, 360 - turn);
}

/**
 * Whether two readings are of one place: one angle, on one ring. Nobody sets a micrometer to a radius closer than a
 * ring is wide, and an inch radius times 25.4 is off by float dust; so they are repeats of one wall.
 */
export function samePlace(a: Place, b: Place): boolean {
  return (
    turnApart(a.angleDeg, b.angleDeg) <= SAME_ANGLE_DEG &&
    Math.abs(a.radiusMm - b.radiusMm) <= RING_WIDTH_MM + FLOAT_DUST_MM
  );
}

/** The station a place belongs to: the first that is the same place. */
export function stationAt<P extends Place>(stations: readonly P[], place: Place): P | undefined {
  return stations.find((station) => samePlace(station, place));
}

/** The stations of places in the order they come: the first of those that are the same place stands for all. */
export function stationsOf(places: readonly Place[]): Place[] {
  const stations = new StationIndex<Place>();
  for (const { angleDeg, radiusMm } of places) {
    const place = { angleDeg, radiusMm };
    if (stations.at(place) === undefined) stations.add(place);
  }
  return [...stations.all];
}

/** Stations by their angle, so that thousands of readings each find theirs at once: `at` answers as `stationAt` does. */
export class StationIndex<P extends Place> {
  readonly all: P[] = [];
  readonly #byAngle = new Map<number, { readonly order: number; readonly station: P }[]>();
  /** By the very angle and radius: whoever was found stays the first, for others come after. */
  readonly #found = new Map<number, Map<number, P>>();

  constructor(stations: readonly P[] = []) {
    for (const station of stations) this.add(station);
  }

  add(station: P): void {
    const angle = wholeDegree(station.angleDeg);
    const here = this.#byAngle.get(angle);
    const one = { order: this.all.length, station };
    if (here) here.push(one);
    else this.#byAngle.set(angle, [one]);
    this.all.push(station);
  }

  at(place: Place): P | undefined {
    const { angleDeg, radiusMm } = place;
    const known = this.#found.get(angleDeg)?.get(radiusMm);
    if (known !== undefined) return known;
    const found = this.#search(place);
    if (found === undefined) return undefined;
    const there = this.#found.get(angleDeg);
    if (there) there.set(radiusMm, found);
    else this.#found.set(angleDeg, new Map([[radiusMm, found]]));
    return found;
  }

  #search(place: Place): P | undefined {
    const angle = wholeDegree(place.angleDeg);
    let first: { readonly order: number; readonly station: P } | undefined;
    for (const near of [angle, (angle + 1) % 360, (angle + 359) % 360]) {
      for (const one of this.#byAngle.get(near) ?? []) {
        if (first !== undefined && first.order < one.order) break;
        if (samePlace(one.station, place)) {
          first = one;
          break;
        }
      }
    }
    return first?.station;
  }
}

function wholeDegree(angleDeg: number): number {
  return Math.round(turned(angleDeg)) % 360;
}

/** A place as a form or an address carries it: 45/110. */
export function writePlace({ angleDeg, radiusMm }: Place): string {
  return `${angleDeg}/${radiusMm}`;
}

/** The place that `writePlace` wrote; null for anything else. */
export function readPlace(text: string): Place | null {
  const found = /^(-?[\d.]{1,25}(?:e-\d{1,3})?)\/([\d.]{1,25})$/.exec(text);
  const [angleDeg, radiusMm] = [Number(found?.[1]), Number(found?.[2])];
  return Number.isFinite(angleDeg) && Number.isFinite(radiusMm) ? { angleDeg, radiusMm } : null;
}
