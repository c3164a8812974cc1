import type { Job, Pass, Reading, ReadingKind } from '../../shared/words/job.ts';
import type { Place } from '../../shared/words/places.ts';
import { coverage } from '../calc/cover/coverage.ts';
import { placeName } from '../calc/cover/placeNames.ts';
import { rings } from '../calc/cover/rings.ts';
import { stationLayout } from '../calc/cover/stationLayout.ts';
import { readAt, type StationRead, stationsRead, stationsToMeasure } from '../calc/job/jobPlaces.ts';

/** A place of a job with its name, and what was read there in one pass. */
export interface PlaceRead extends StationRead {
  readonly name: string;
}

/** The places of one pass of a job. */
export interface PlacesRead {
  /** In the order they are measured. */
  readonly all: readonly PlaceRead[];
  /** Those to be asked for: all but those where only a mark was put. */
  readonly toMeasure: readonly PlaceRead[];
  /** What was read of one kind at a place, the newest last; none where nothing was. */
  readonly readAt: (kind: ReadingKind, place: Place) => readonly Reading[];
}

export function placesRead(job: Job, pass: Pass): PlacesRead {
  const cover = job.sections.received?.body.family;
  const stations = stationsRead(job, pass);
  const named = (one: StationRead): PlaceRead => ({ ...one, name: placeOn(cover, one.angleDeg) });
  return {
    all: stations.map(named),
    toMeasure: stationsToMeasure(stations).map(named),
    readAt: (kind, place) => readAt(stations, kind, place),
  };
}

/** Places that the coverage asks for, and where no station is laid out. */
export function placesNotLaidOut(job: Job, stations: readonly Place[]): readonly string[] {
  const studCount = job.sections.received?.body.family.studCount;
  if (studCount === undefined || stations.length === 0) return [];
  const { missingPlaces, secondRing } = coverage(stations, studCount);
  return [...missingPlaces, ...(secondRing ? [] : ['on a second row'])];
}

/** While nothing says which cover it is, its places are named as on one with four studs. */
const STUDS_UNSAID = 4;

/** A place by the studs of the cover it is on: "behind stud 1", "between studs 1 and 2". */
export function placeOn(cover: { readonly studCount: number } | undefined, angleDeg: number): string {
  return placeName(angleDeg, cover?.studCount ?? STUDS_UNSAID);
}

/** Where a cover is to be measured, each place with its name. */
export function placesOn(
  cover: Parameters<typeof stationLayout>[0],
): readonly (Place & { readonly name: string })[] {
  return stationLayout(cover).map((place) => ({ ...place, name: placeOn(cover, place.angleDeg) }));
}

/** Whether places have to be told apart by their radius too. */
export function onSeveralRadii(readings: readonly Reading[]): boolean {
  return rings(readings).length > 1;
}
