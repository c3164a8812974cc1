import type { StandingReading } from '../../../shared/measuring/benchState.ts';
import { writeAsTyped } from '../../../shared/quantity/writeQuantity.ts';
import type { Job, Pass, Reading } from '../../../shared/words/job.ts';
import { type Place, samePlace } from '../../../shared/words/places.ts';
import { placeOn } from '../../shop/jobPlaces.ts';
import type { Writing } from '../request/typed.ts';

/** The readings of one pass that stand, newest last, as the measuring screen lists them. */
export function standingViews(
  job: Job,
  pass: Pass,
  stations: readonly Place[],
  writing: Writing,
): StandingReading[] {
  const cover = job.sections.received?.body.family;
  return job.readings
    .filter((one) => one.pass === pass)
    .map((one) => ({
      id: one.id,
      kind: one.kind,
      angleDeg: one.angleDeg,
      radiusMm: one.radiusMm,
      at: stations.findIndex((place) => samePlace(place, one)),
      place: placeOn(cover, one.angleDeg),
      shown: shownAs(one, writing),
      who: one.who,
      doubtful: one.doubtful,
    }));
}

/** As it was typed where that still reads to the same, else in the person's unit. */
export function shownAs(reading: Reading, writing: Writing): string {
  const { typed, valueMm } = reading;
  if (valueMm === null) return 'withdrawn';
  return writeAsTyped(valueMm, typed, writing.lengthUnit, writing.decimalSign);
}
