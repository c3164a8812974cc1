import type { StandingReading } from '../../../shared/measuring/benchState.ts';
import { withSign } from '../../../shared/quantity/plainNumber.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { Job, Pass, Reading } from '../../../shared/words/job.ts';
import { type Place, samePlace } from '../../../shared/words/places.ts';
import { lengthFigure, MINUS } from '../../../shared/words/print.ts';
import { placeOn } from '../../shop/placesOfJob.ts';
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
      valueMm: one.valueMm ?? 0,
      who: one.who,
      doubtful: one.doubtful,
      confirmed: one.confirmed === true,
    }));
}

/** As it was typed where that reads to the same in the person's unit, else printed in that unit. */
export function shownAs({ typed, valueMm }: Reading, { lengthUnit: unit, decimalSign }: Writing): string {
  if (valueMm === null) return 'withdrawn';
  const read = readQuantity({ field: '', typed, kind: 'length', unit, decimalSign });
  if (read.ok && read.value === valueMm && read.unit === unit) return typed.replace(/^-/, MINUS);
  return withSign(lengthFigure(valueMm, unit), decimalSign);
}
