import type { Job, Pass, Reading, ReadingKind } from '../../../shared/words/job.ts';
import { type Place, samePlace } from '../../../shared/words/places.ts';
import { placesOf } from './table.ts';

/** The stations to be asked for: all places of the pass, but those where only a mark was put between stations. */
export function stationsOf(job: Job, pass: Pass): Place[] {
  const alone = (place: Place) => {
    const here = job.readings.filter((one) => one.pass === pass && samePlace(one, place));
    return here.length > 0 && here.every((one) => one.kind === 'mark');
  };
  const laidOut = placesOf({ ...job, readings: [] }, pass);
  return placesOf(job, pass).filter((place) => laidOut.some((one) => samePlace(one, place)) || !alone(place));
}

export function standingAt(job: Job, pass: Pass, kind: ReadingKind, place: Place): readonly Reading[] {
  return job.readings.filter((one) => one.pass === pass && one.kind === kind && samePlace(one, place));
}
