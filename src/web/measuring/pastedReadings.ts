import { type QuantityRefusal, readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import { type Place, stationAt, turned } from '../../../shared/words/places.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { splitRepeats, type Writing } from '../request/typed.ts';
import { type PastedLine, pastedLines } from './pastedCells.ts';

/** What the columns hold where no heading says it. */
export const PASTED = ['wall', 'all', 'face', 'mark'] as const;
export type Pasted = (typeof PASTED)[number];

/** A cell, or a whole line, that cannot be a reading. */
export interface RefusedCell {
  readonly line: number;
  /** Counted from 1; null for the whole line. */
  readonly column: number | null;
  readonly message: string;
}

export interface PastedReadings {
  /** By the box of the measuring table: `w.3` for the wall of its fourth row, repeats parted by semicolons. */
  readonly boxes: ReadonlyMap<string, string>;
  readonly refused: readonly RefusedCell[];
}

type Column =
  | { readonly is: ReadingKind; readonly unit: string }
  | { readonly is: 'station' | 'angle' | 'radius' | 'other' };

const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'd' };
/** How headings are known, the first that fits. */
const HEADINGS: readonly (readonly [RegExp, Column['is']])[] = [
  [/angle|°|\bdeg/i, 'angle'],
  [/radius|^r$/i, 'radius'],
  [/wall|thick/i, 'wall'],
  [/indicator|run-?out|height|face/i, 'face'],
  [/mark|depth|heat/i, 'mark'],
  [/station|point|place|^(no\.?|nr\.?|#)$/i, 'station'],
];

/** Reads a pasted column or table into the boxes of the measuring table; what cannot be read is told by line and column. */
export function pastedReadings(
  text: string,
  stations: readonly Place[],
  { writing, pasted }: { readonly writing: Writing; readonly pasted: Pasted },
): PastedReadings {
  const lines = pastedLines(text, writing.decimalSign);
  const heading = lines[0] !== undefined && isHeading(lines[0]) ? lines[0] : null;
  const body = heading === null ? lines : lines.slice(1);
  const columns = heading === null ? columnsUnsaid(body, pasted) : heading.cells.map(columnOf);
  const boxes = new Map<string, string>();
  const refused: RefusedCell[] = [];
  for (const [index, one] of body.entries()) {
    const station = stationOf(one, index, columns, stations, writing);
    if (typeof station === 'string') {
      refused.push({ line: one.line, column: null, message: station });
      continue;
    }
    for (const [at, typed] of one.cells.entries()) {
      const column = columns[at] ?? { is: 'other' };
      if (typed === '' || !('unit' in column)) continue;
      for (const part of splitRepeats(typed)) {
        const message = put(boxes, station, column, part, writing);
        if (message !== null) refused.push({ line: one.line, column: at + 1, message });
      }
    }
  }
  return { boxes, refused };
}

/** Puts a value into its box, beside what is there; else says why not. */
function put(
  boxes: Map<string, string>,
  station: number,
  { is: kind, unit }: { readonly is: ReadingKind; readonly unit: string },
  typed: string,
  writing: Writing,
): string | null {
  const label = `${READING_WORD.before[kind]} at station ${station + 1}`;
  const value = unit === '' || /[a-zµ"”″]/i.test(typed) ? typed : `${typed} ${unit}`;
  const { lengthUnit, decimalSign } = writing;
  const read = readQuantity({ field: label, typed: value, kind: 'length', unit: lengthUnit, decimalSign });
  if (!read.ok) return (read as QuantityRefusal).message;
  const box = `${LETTER[kind]}.${station}`;
  const before = boxes.get(box);
  if (before !== undefined && kind !== 'wall') {
    return `${label} is ${before} from a line above already. Leave one of them out.`;
  }
  boxes.set(box, before === undefined ? value : `${before}; ${value}`);
  return null;
}

function isHeading({ cells }: PastedLine): boolean {
  const figures = cells.filter(
    (cell) => /^[+-]?[\d.,/ -]+\s*(?:[a-zµ"”″]{0,5})$/i.test(cell) && /\d/.test(cell),
  );
  return figures.length === 0 && cells.some((cell) => columnOf(cell).is !== 'other');
}

function columnOf(heading: string): Column {
  const is = HEADINGS.find(([known]) => known.test(heading))?.[1] ?? 'other';
  if (is !== 'wall' && is !== 'face' && is !== 'mark') return { is };
  const unit = /[([]\s*(mm|in|inch|thou|µm|um)\s*[)\]]|\b(mm|inch|thou|µm|um)\b|,\s*(in)$/i.exec(heading);
  return { is, unit: (unit?.[1] ?? unit?.[2] ?? unit?.[3] ?? '').toLowerCase() };
}

/** Columns without a heading: a first one that only counts is the station, the others are what was chosen. */
function columnsUnsaid(lines: readonly PastedLine[], pasted: Pasted): readonly Column[] {
  const width = Math.max(0, ...lines.map(({ cells }) => cells.length));
  const counted = lines.map(({ cells }) => stationNumber(cells[0] ?? ''));
  const isStation = width > 1 && counted.every((number) => number !== null);
  const kinds: readonly ReadingKind[] = pasted === 'all' ? ['wall', 'face', 'mark'] : [];
  return Array.from({ length: width }, (_, i): Column => {
    if (isStation && i === 0) return { is: 'station' };
    const nth = isStation ? i - 1 : i;
    const is = pasted === 'all' ? kinds[nth] : pasted;
    return is === undefined ? { is: 'other' } : { is, unit: '' };
  });
}

/** "3", "P3", "Point 3": which station it names; null for anything else. */
function stationNumber(cell: string): number | null {
  const number = /^[a-z.# ]*(\d{1,3})\.?$/i.exec(cell)?.[1];
  return number === undefined ? null : Number(number);
}

/** Which row of the measuring table a line is of, or why none. */
function stationOf(
  { cells }: PastedLine,
  index: number,
  columns: readonly Column[],
  stations: readonly Place[],
  writing: Writing,
): number | string {
  const cellOf = (is: Column['is']) => cells[columns.findIndex((one) => one.is === is)] ?? '';
  const count = `This job has ${stations.length} stations.`;
  if (columns.some((one) => one.is === 'station')) {
    const number = stationNumber(cellOf('station'));
    if (number === null) return `"${cellOf('station')}" is no station number. Enter it as 1, 2, 3.`;
    return number >= 1 && number <= stations.length ? number - 1 : `There is no station ${number}. ${count}`;
  }
  if (!columns.some((one) => one.is === 'angle')) {
    return index < stations.length
      ? index
      : `${count} This line is one more: leave it out, or number the lines.`;
  }
  const { lengthUnit, decimalSign } = writing;
  const angle = readQuantity({
    field: 'Angle',
    typed: cellOf('angle'),
    kind: 'angle',
    unit: 'deg',
    decimalSign,
  });
  const radius = readQuantity({
    field: 'Radius',
    typed: cellOf('radius'),
    kind: 'length',
    unit: lengthUnit,
    decimalSign,
  });
  if (!angle.ok) return angle.message;
  if (!radius.ok) return radius.message;
  const station = stationAt(stations, { angleDeg: turned(angle.value), radiusMm: radius.value });
  return station === undefined
    ? `No station is at ${cellOf('angle')}°, r ${cellOf('radius')}. Enter it in the table of the job.`
    : stations.indexOf(station);
}
