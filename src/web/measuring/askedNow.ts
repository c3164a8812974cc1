import {
  nextStep,
  type Order,
  readStep,
  type Step,
  stepsOf,
  writeStep,
} from '../../../shared/measuring/steps.ts';
import type { Job } from '../../../shared/words/job.ts';
import { type Place, stationAt, turned } from '../../../shared/words/places.ts';
import { briefLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { AskedHere } from '../../../views/pages/measuring/measuringProps.ts';
import { type PlaceRead, type PlacesRead, placeOn } from '../../shop/placesOfJob.ts';
import { type Fields, TypedForm, type Writing } from '../request/typed.ts';
import { shownAs } from './view.ts';

/** Whether a step has its reading. */
export function isMeasured(stations: readonly PlaceRead[], { kind, at, nth }: Step): boolean {
  return stations[at]!.readings.filter((one) => one.kind === kind).length > nth;
}

/** Steps that were passed over and still have no reading. */
export function skippedSteps(fields: Fields, stations: readonly PlaceRead[], steps: readonly Step[]): Step[] {
  const named = new Set((fields.skipped ?? '').split(','));
  return steps.filter((step) => named.has(writeStep(step)) && !isMeasured(stations, step));
}

/** What the box is for: the place and kind asked in the address, else the first that has no reading. */
export function askedNow(
  job: Job,
  read: PlacesRead,
  order: Order,
  fields: Fields,
  writing: Writing,
  faults: Fault[],
): AskedHere | null {
  const stations = read.toMeasure;
  const marked = markPlace(fields, writing, faults);
  if (marked !== null && stationAt(stations, marked) === undefined) {
    return markAsked(job, read, marked, writing);
  }
  const steps = stepsOf(stations, order);
  const skipped = skippedSteps(fields, stations, steps);
  const step =
    readStep(fields.at, stations) ??
    nextStep(
      steps,
      readStep(fields.after, stations),
      (one) => isMeasured(stations, one) || skipped.includes(one),
    );
  if (step === null) return null;
  const { angleDeg, radiusMm, name: place } = stations[step.at]!;
  const index = steps.findIndex((one) => writeStep(one) === writeStep(step));
  const back = steps[index - 1] ?? null;
  const again = fields.again === '1';
  const here = read.readAt(step.kind, stations[step.at]!);
  const was = again ? null : (here[step.nth] ?? null);
  return {
    ...step,
    nth: again ? here.length : step.nth,
    angleDeg,
    radiusMm,
    place,
    replaces: was && { id: was.id, shown: shownAs(was, writing) },
    again,
    step: writeStep(step),
    back: back && writeStep(back),
  };
}

/** A heat mark between stations: a new one, or a correction of the one that is there. */
function markAsked(job: Job, read: PlacesRead, place: Place, writing: Writing): AskedHere {
  const was = read.readAt('mark', place).at(-1) ?? null;
  return {
    kind: 'mark',
    at: null,
    nth: 0,
    ...place,
    place: placeOn(job.sections.received?.body.family, place.angleDeg),
    replaces: was && { id: was.id, shown: shownAs(was, writing) },
    again: false,
    step: null,
    back: null,
  };
}

/** Where a mark between stations lies, as typed or as touched. */
function markPlace(fields: Fields, writing: Writing, faults: Fault[]): Place | null {
  if ((fields.ma ?? '') === '' && (fields.mr ?? '') === '') return null;
  const form = new TypedForm(fields, writing);
  const angleDeg = form.angle('ma', 'Angle of the heat mark');
  const radiusMm = form.length('mr', 'Radius of the heat mark');
  form.needed(angleDeg, 'ma', 'Angle of the heat mark');
  form.needed(radiusMm, 'mr', 'Radius of the heat mark');
  if (radiusMm !== null && !(radiusMm > 0 && radiusMm < 10_000)) {
    form.fault(
      'mr',
      `Radius of the heat mark is ${briefLength(radiusMm, form.writing.lengthUnit)}; it must be more than 0. Measure it from the crank axis.`,
    );
  }
  faults.push(...form.faults);
  if (form.faults.length > 0 || angleDeg === null || radiusMm === null) return null;
  return { angleDeg: turned(angleDeg), radiusMm };
}
