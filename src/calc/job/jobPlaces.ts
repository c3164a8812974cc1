import type { Job, Pass, Reading, ReadingKind } from '../../../shared/words/job.ts';
import { type Place, StationIndex, stationAt, stationsOf } from '../../../shared/words/places.ts';
import { stationLayout } from '../cover/stationLayout.ts';

/** A station of a job, with what was read at it in one pass. */
export interface StationRead extends Place {
  readonly laidOut: boolean;
  readonly readings: readonly Reading[];
}

/**
 * The stations of one pass in the order they are measured, each with its readings: those laid out, then any other in
 * the order it was first read, before the cut or after it. A reading belongs to the first station that is its place.
 *
 * Valid: any job; with no layout and no readings there are none.   Source: this program's own rule, `samePlace`
 * Example: a wall read at r 110.0000000000001 stands at the station at r 110 (tests/calc/job/jobPlaces.test.ts)
 */
export function stationsRead(job: Pick<Job, 'sections' | 'readings'>, pass: Pass): readonly StationRead[] {
  const laidOut = stationsOf(layoutOf(job));
  const read = new Map<Place, Reading[]>();
  const stations = eachReading(job, laidOut, (station, reading) => {
    if (reading.pass !== pass) return;
    const there = read.get(station);
    if (there) there.push(reading);
    else read.set(station, [reading]);
  });
  return stations.flatMap((station, i) => {
    const readings = read.get(station) ?? [];
    const isLaidOut = i < laidOut.length;
    return isLaidOut || readings.length > 0 ? [{ ...station, laidOut: isLaidOut, readings }] : [];
  });
}

/** The mean wall of each station where one was read, in one pass. */
export function meanWalls(job: Pick<Job, 'sections' | 'readings'>, pass: Pass): readonly number[] {
  const walls = new Map<Place, { sumMm: number; count: number }>();
  eachReading(job, stationsOf(layoutOf(job)), (station, reading) => {
    if (reading.pass !== pass || reading.kind !== 'wall' || reading.valueMm === null) return;
    const here = walls.get(station) ?? { sumMm: 0, count: 0 };
    here.sumMm += reading.valueMm;
    here.count += 1;
    walls.set(station, here);
  });
  return [...walls.values()].map(({ sumMm, count }) => sumMm / count);
}

/** Shows each reading with its station; the stations: those laid out, then one where the first reading beside them was. */
function eachReading(
  { readings }: Pick<Job, 'readings'>,
  laidOut: readonly Place[],
  show: (station: Place, reading: Reading) => void,
): readonly Place[] {
  const index = new StationIndex(laidOut);
  for (const reading of readings) {
    let station = index.at(reading);
    if (station === undefined) {
      station = { angleDeg: reading.angleDeg, radiusMm: reading.radiusMm };
      index.add(station);
    }
    show(station, reading);
  }
  return index.all;
}

/** As the job says, else as the cover’s family is measured. */
function layoutOf({ sections }: Pick<Job, 'sections'>): readonly Place[] {
  const chosen = sections.setup?.body.stations ?? [];
  const family = sections.received?.body.family;
  return chosen.length > 0 ? chosen : family ? stationLayout(family) : [];
}

/** What was read of one kind at a place; none where nothing was. */
export function readAt(
  stations: readonly StationRead[],
  kind: ReadingKind,
  place: Place,
): readonly Reading[] {
  return stationAt(stations, place)?.readings.filter((one) => one.kind === kind) ?? [];
}

/** Those to be asked for: all but those where only a mark was put between stations. */
export function stationsToMeasure(stations: readonly StationRead[]): readonly StationRead[] {
  return stations.filter(({ laidOut, readings }) => laidOut || readings.some(({ kind }) => kind !== 'mark'));
}
