import type { Doubt } from '../../shared/quantity/doubt.ts';
import type { Writing } from '../../shared/quantity/fieldText.ts';
import { writeAsTyped } from '../../shared/quantity/writeQuantity.ts';
import type { Job, NewReading, Pass, Reading, ReadingKind } from '../../shared/words/job.ts';
import { type Place, StationIndex } from '../../shared/words/places.ts';
import { printLength } from '../../shared/words/print.ts';
import { READING_WORD } from '../../shared/words/readings.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { jobReadingDoubt } from './doubts/jobReadingDoubt.ts';
import { type PlacesRead, placeOn, placesRead } from './placesOfJob.ts';
import { breathEvery } from './work/breath.ts';

/** What is asked of a reading of JSON, in mm, of which nobody can be asked at once; null where nothing is. */
export function sentDoubt(job: Job, sent: NewReading, beside: readonly NewReading[] = []): Doubt | null {
  const { kind, angleDeg, radiusMm, valueMm, typed, pass } = sent;
  if (valueMm === null) return null;
  const asTyped = typed === '' ? String(valueMm) : typed;
  const reading = { kind, angleDeg, radiusMm, valueMm, typed: asTyped } as const;
  return jobReadingDoubt(
    job,
    pass,
    { ...reading, unit: 'mm', decimalSign: 'point' },
    {
      replaced: [sent, ...beside].flatMap(({ replaces }) => replaces ?? []),
      beside: beside.flatMap((one) =>
        one.id === sent.id || one.pass !== pass || one.valueMm === null
          ? []
          : [{ ...one, valueMm: one.valueMm }],
      ),
    },
  );
}

/** One box of the measuring table, as it was typed: one value of each part. */
export interface Cell {
  readonly name: string;
  readonly kind: ReadingKind;
  readonly place: Place;
  /** Counted from 0 down the table. */
  readonly row: number;
  readonly parts: readonly string[];
  readonly values: readonly number[];
  /** Ids of the readings the box was filled with, parted by commas. */
  readonly was: string;
  /** What the person said is right, as they typed it. */
  readonly confirmed: string;
}

export interface TableSent {
  readonly pass: Pass;
  /** Made with the form: ids of readings follow from it and the cell, so that sending it twice adds nothing. */
  readonly token: string;
  readonly gauge: string;
  readonly writing: Writing;
  readonly cells: readonly Cell[];
}

/** A cell that somebody else changed meanwhile: theirs, and what was typed here. */
export interface CellConflict {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

export interface CellDoubt {
  readonly name: string;
  readonly question: string;
  readonly typed: string;
  /** The words that confirm it. */
  readonly says: string;
  /** What the box would hold if the value probably meant was. */
  readonly meant: readonly string[];
}

export interface ReadingsChanged {
  readonly readings: readonly NewReading[];
  readonly faults: readonly Fault[];
  readonly doubts: readonly CellDoubt[];
  readonly conflicts: readonly CellConflict[];
  /** The newest reading among theirs; null where they only withdrew. */
  readonly newest: Reading | null;
}

interface CellChanged {
  readonly readings?: readonly NewReading[];
  readonly faults?: readonly Fault[];
  readonly doubts?: readonly CellDoubt[];
  readonly conflict?: CellConflict;
  readonly theirs?: readonly Reading[];
}

/**
 * What changed in the measuring table since it was shown. A cell left as it was adds nothing; a changed one adds a
 * reading that replaces the one shown; an emptied one withdraws it.
 */
export async function readingsChanged(job: Job, sent: TableSent): Promise<ReadingsChanged> {
  const table = { job, sent, read: placesRead(job, sent.pass), shown: idsShown(job, sent) };
  const changes: CellChanged[] = [];
  for (const [i, cell] of sent.cells.entries()) {
    changes.push(cellChanged(table, cell));
    await breathEvery(i);
  }
  const theirs = changes.flatMap((one) => one.theirs ?? []);
  return {
    readings: changes.flatMap((one) => one.readings ?? []),
    faults: changes.flatMap((one) => one.faults ?? []),
    doubts: changes.flatMap((one) => one.doubts ?? []),
    conflicts: changes.flatMap((one) => (one.conflict ? [one.conflict] : [])),
    newest: theirs.reduce<Reading | null>((a, b) => (a === null || b.revision > a.revision ? b : a), null),
  };
}

/** The table with what it was shown from. */
interface Table {
  readonly job: Job;
  readonly sent: TableSent;
  readonly read: PlacesRead;
  /** Ids of the readings that stood in it. */
  readonly shown: readonly string[];
}

function cellChanged({ job, sent, read, shown }: Table, cell: Cell): CellChanged {
  const { kind, place, row, parts, values, was, name } = cell;
  const standing = read.readAt(kind, place);
  if (values.length !== parts.length) return {};
  if (values.length === standing.length && values.every((mm, i) => mm === standing[i]?.valueMm)) return {};
  const where = `station ${row + 1} (${placeOn(job.sections.received?.body.family, place.angleDeg)})`;
  const label = `${READING_WORD[sent.pass][kind]} at ${where}`;
  if (was !== standing.map((one) => one.id).join(',')) {
    const theirs = standing.map((one) => `${cellText(one, sent.writing)} by ${one.who}`).join('; ');
    const conflict = { label, before: theirs || 'withdrawn', after: parts.join('; ') || 'emptied' };
    return { conflict, theirs: standing };
  }
  const fault = unfit(kind, label, cell, sent.writing);
  if (fault !== null) return { faults: [{ path: name, message: fault }] };
  const asTyped = parts.join('; ');
  const asked = values.flatMap((valueMm, i) => {
    if (valueMm === standing[i]?.valueMm) return [];
    const { lengthUnit: unit, decimalSign } = sent.writing;
    const reading = { kind, ...place, valueMm, typed: parts[i]!, unit, decimalSign };
    const doubt = jobReadingDoubt(job, sent.pass, reading, against(shown, sent, cell, i));
    return doubt === null ? [] : [{ at: i, doubt }];
  });
  return {
    readings: readingsOf(sent, cell, standing, new Set(asked.map(({ at }) => at))),
    doubts:
      cell.confirmed === asTyped
        ? []
        : asked.map(({ at, doubt: { question, meantTyped } }) => ({
            name,
            question: `${label}: ${question}`,
            typed: asTyped,
            says: `${label}: ${asTyped} is right`,
            meant:
              meantTyped === null ? [] : [parts.map((part, i) => (i === at ? meantTyped : part)).join('; ')],
          })),
  };
}

/** The table was shown with all readings in it, so what it now says is what this one is held against. */
function against(replaced: readonly string[], sent: TableSent, own: Cell, index: number) {
  const inCells = sent.cells.flatMap(({ kind, place, values, name }) =>
    values.flatMap((valueMm, i) => (name === own.name && i >= index ? [] : [{ kind, ...place, valueMm }])),
  );
  return { replaced, beside: inCells };
}

function idsShown(job: Job, { cells }: TableSent): readonly string[] {
  const places = new Map(
    (['wall', 'face', 'mark'] as const).map((kind) => [
      kind,
      new StationIndex(cells.filter((cell) => cell.kind === kind).map(({ place }) => place)),
    ]),
  );
  return job.readings.flatMap((one) => (places.get(one.kind)?.at(one) ? [one.id] : []));
}

/** Why what stands in a cell cannot be a reading; null where it can. */
function unfit(kind: ReadingKind, label: string, { parts, values }: Cell, writing: Writing): string | null {
  if (kind !== 'wall' && parts.length > 1) {
    return `${label}: "${parts.join('; ')}" is ${parts.length} readings. Enter one.`;
  }
  const bad = values.find((mm) => (kind === 'wall' && mm <= 0) || (kind === 'mark' && mm < 0));
  if (bad === undefined) return null;
  const least = kind === 'wall' ? 'more than 0' : 'at least 0';
  return `${label} is ${printLength(bad, writing.lengthUnit)}; it must be ${least}. Measure it again.`;
}

function readingsOf(
  { pass, token, gauge }: TableSent,
  { kind, place, row, parts, values }: Cell,
  standing: readonly Reading[],
  confirmed: ReadonlySet<number>,
): NewReading[] {
  const letter = { wall: 'w', face: 'f', mark: 'd' }[kind];
  const count = Math.max(parts.length, standing.length);
  return Array.from({ length: count }, (_, i): NewReading | null => {
    const was = standing[i];
    const valueMm = values[i] ?? null;
    if (was !== undefined && valueMm === was.valueMm) return null;
    return {
      id: `${token}-${pass[0]}${letter}${row}-${i}`,
      pass,
      kind,
      ...place,
      valueMm,
      typed: parts[i] ?? '',
      gauge,
      doubtful: false,
      confirmed: confirmed.has(i),
      replaces: was?.id ?? null,
    };
  }).filter((one) => one !== null);
}

/** A reading as its box would have it typed. */
export function cellText({ typed, valueMm }: Reading, { lengthUnit, decimalSign }: Writing): string {
  return valueMm === null ? '' : writeAsTyped(valueMm, typed, lengthUnit, decimalSign);
}
