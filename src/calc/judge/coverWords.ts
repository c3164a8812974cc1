import { type Row, rowNames } from '../../../shared/words/paper.ts';
import { type LengthUnit, MINUS, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { placeName } from '../cover/placeNames.ts';
import { rings } from '../cover/rings.ts';

/** `112 mm`, `112.5 mm`, `4.331 in`: a radius or diameter is a place, not a reading. */
export function printRadius(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${Number(mm.toFixed(1))} mm` : printLength(mm, 'in', 'coarse');
}

/** The row of each station, from the center. */
export function rowsOf(stations: readonly { readonly radiusMm: number }[]): readonly Row[] {
  const found = rings(stations);
  const names = rowNames(found.length);
  return stations.map((_, i) => names[found.findIndex((ring) => ring.stations.includes(i))]!);
}

/** "on the inner row", "on row 4 from the center"; of one row nothing has to be said. */
export function onRow(stations: readonly { readonly radiusMm: number }[], station: number): string {
  const row = rowsOf(stations)[station]!;
  if (row === 'only') return '';
  if (row !== 'of-many') return `on the ${row} row`;
  const nth = rings(stations).findIndex((ring) => ring.stations.includes(station));
  return `on row ${nth + 1} from the center`;
}

/** "behind stud 1 on the inner row": the row only where there is more than one to tell apart. */
export function stationPlace(
  stations: readonly { readonly angleDeg: number; readonly radiusMm: number }[],
  station: number,
  studCount: number,
): string {
  const name = placeName(stations[station]!.angleDeg, studCount);
  return [name, onRow(stations, station)].filter((part) => part !== '').join(' ');
}

/** Places in words, each once: "behind every stud", else "behind stud 1; between studs 2 and 3". */
export function placesInWords(anglesDeg: readonly number[], studCount: number): string {
  const names = [...new Set(anglesDeg.map((angle) => placeName(angle, studCount)))];
  const behind = names.filter((name) => name.startsWith('behind'));
  if (behind.length < studCount) return names.join('; ');
  return ['behind every stud', ...names.filter((name) => !behind.includes(name))].join('; ');
}

/** "the shop’s minimum of 4.300 mm". */
export function theMinimum(numbers: CoverNumbers, unit: LengthUnit): string {
  const { from, mm } = numbers.minimum!;
  return `the ${from}’s minimum of ${printLength(mm, unit)}`;
}

/** "0.200 mm above the shop’s minimum of 4.300 mm", "exactly …": the difference of the two figures as printed. */
export function besideMinimum(wallMm: number, numbers: CoverNumbers, unit: LengthUnit): string {
  const minimumMm = numbers.minimum!.mm;
  const margin = wallMm - minimumMm;
  if (Math.abs(margin) <= 1e-9) return `exactly ${theMinimum(numbers, unit)}`;
  const wall = printAgainst(wallMm, minimumMm, unit);
  const figure = (text: string) => Number.parseFloat(text.replace(MINUS, '-'));
  const decimals = wall.replace(` ${unit}`, '').split('.')[1]?.length ?? 0;
  const apart = Math.abs(figure(wall) - figure(printLength(minimumMm, unit))).toFixed(decimals);
  return `${apart} ${unit} ${margin > 0 ? 'above' : 'below'} ${theMinimum(numbers, unit)}`;
}

/** "4.500 mm at the thinnest station, behind stud 1. That is 0.200 mm above the shop’s minimum of 4.300 mm". */
export function wallInWords(
  wallMm: number,
  station: number | null,
  numbers: CoverNumbers,
  unit: LengthUnit,
): string {
  const wall = numbers.minimum ? printAgainst(wallMm, numbers.minimum.mm, unit) : printLength(wallMm, unit);
  const where =
    station === null
      ? 'at the thinnest station'
      : `at the thinnest station, ${stationPlace(numbers.stations, station, numbers.input.cover.studCount)}`;
  return numbers.minimum
    ? `${wall} ${where}. That is ${besideMinimum(wallMm, numbers, unit)}`
    : `${wall} ${where}`;
}

/** Findings keep their value in this unit; only their sentence is in the person's unit. */
export const MM = 'mm';
