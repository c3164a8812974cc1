import type { DemoCover, TypedReading } from '../../../data/demo/covers.ts';
import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { GAUGE_FIGURES } from '../../../shared/words/fields/setup.ts';
import { samePlace } from '../../../shared/words/places.ts';
import { placesOn } from '../../shop/placesOfJob.ts';

/** A demo cover as somebody would have typed it on the quick page, in the reader’s unit. */
export function exampleQuery(cover: DemoCover, familyId: string, family: Family, writing: Writing): string {
  const { lengthUnit: unit, decimalSign } = writing;
  // An inch reading is no round number of millimeters: told to what a micrometer shows.
  const shown = (mm: number) => (unit === 'mm' ? Number(mm.toFixed(3)) : mm);
  const length = (mm: number) => writeLength(shown(mm), unit, decimalSign);
  const read = ({ mm }: TypedReading) => length(mm);
  const layout = placesOn(family);
  const query = new URLSearchParams({ family: familyId, unit, crack: cover.crackTest });
  if (cover.chucking) query.set('chucking', cover.chucking);
  if (cover.plannedCut) query.set('cut', read(cover.plannedCut));
  for (const [name, typed] of Object.entries(asTyped(GAUGE_FIGURES, cover.gauge?.gauge, writing))) {
    if (typed !== '') query.set(name, typed);
  }
  let free = layout.length;
  for (const station of cover.stations) {
    const laidOut = layout.findIndex((place) => samePlace(place, station));
    const row = laidOut >= 0 ? laidOut : free++;
    if (laidOut < 0) {
      query.set(`a.${row}`, String(station.angleDeg));
      query.set(`r.${row}`, length(station.radiusMm));
    }
    query.set(`w.${row}`, station.wall.map(read).join('; '));
    if (station.face) query.set(`f.${row}`, read(station.face));
    if (station.mark) query.set(`d.${row}`, read(station.mark));
  }
  cover.marks.forEach((mark, i) => {
    query.set(`ma.${i}`, String(mark.angleDeg));
    query.set(`mr.${i}`, length(mark.radiusMm));
    query.set(`md.${i}`, read(mark.depth));
  });
  return query.toString();
}
