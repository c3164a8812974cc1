import type { DemoCover } from '../../../data/demo/covers.ts';
import { asTyped } from '../../../shared/quantity/fieldText.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { GAUGE_FIGURES } from '../../../shared/words/fields/setup.ts';
import { samePlace } from '../../../shared/words/places.ts';
import { placesOn } from '../../shop/jobPlaces.ts';

/** A demonstration cover as somebody would have typed it on the quick page. */
export function exampleQuery(cover: DemoCover, familyId: string, family: Family): string {
  const layout = placesOn(family);
  const query = new URLSearchParams({ family: familyId, unit: cover.unit, crack: cover.crackTest });
  if (cover.chucking) query.set('chucking', cover.chucking);
  if (cover.plannedCut) query.set('cut', cover.plannedCut.typed);
  for (const [name, typed] of Object.entries(
    asTyped(GAUGE_FIGURES, cover.gauge?.gauge, { lengthUnit: 'mm', decimalSign: 'point' }),
  )) {
    if (typed !== '') query.set(name, `${typed} mm`);
  }
  let free = layout.length;
  for (const station of cover.stations) {
    const laidOut = layout.findIndex((place) => samePlace(place, station));
    const row = laidOut >= 0 ? laidOut : free++;
    if (laidOut < 0) {
      query.set(`a.${row}`, String(station.angleDeg));
      query.set(`r.${row}`, `${station.radiusMm} mm`);
    }
    query.set(`w.${row}`, station.wall.map((reading) => reading.typed).join('; '));
    if (station.face) query.set(`f.${row}`, station.face.typed);
    if (station.mark) query.set(`d.${row}`, station.mark.typed);
  }
  cover.marks.forEach((mark, i) => {
    query.set(`ma.${i}`, String(mark.angleDeg));
    query.set(`mr.${i}`, `${mark.radiusMm} mm`);
    query.set(`md.${i}`, mark.depth.typed);
  });
  return query.toString();
}
