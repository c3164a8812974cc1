import { isDeepStrictEqual } from 'node:util';
import { readThread } from '../../../../shared/quantity/readThread.ts';
import type { Entry, EntryBodies, TypedInEntry } from '../../../../shared/words/catalogue.ts';
import type { Fault } from '../../../../shared/words/refusal.ts';
import type { CatalogueKind } from '../../../../shared/words/terms.ts';
import { type Fields, TypedForm } from '../../request/typed.ts';
import type { AtHand } from '../chosen.ts';
import { AS_TYPED } from '../entryColumns.ts';
import { askAboutEntry, entryAsTyped, entryBox, readEntry } from '../entryForm.ts';
import { typedOf } from '../typedEntry.ts';
import { boxText, cellText, plainCell, saysTheSame, yesNo } from './cells.ts';
import type { CsvRow } from './csvFile.ts';
import { type ColumnRead, columnLetter, type HeadsRead } from './heads.ts';

/** One thing of a row that cannot be taken, or is asked about. */
export interface RowFault {
  /** "F", and what heads it; null where it is of the row. */
  readonly column: string | null;
  readonly head: string | null;
  readonly sentence: string;
  /** The box that confirms it, and the text confirmed; null where it cannot be taken so. */
  readonly confirms: { readonly box: string; readonly text: string } | null;
}

export type RowRead<K extends CatalogueKind> = { readonly row: number; readonly name: string } & (
  | { readonly is: 'unchanged'; readonly entry: Entry<K> }
  | ({ readonly is: 'added'; readonly id: string | null; readonly entry: null } & RowKept<K>)
  | ({ readonly is: 'changed'; readonly entry: Entry<K> } & RowKept<K>)
  | { readonly is: 'refused'; readonly faults: readonly RowFault[] }
);

interface RowKept<K extends CatalogueKind> {
  readonly body: EntryBodies[K];
  readonly typed: TypedInEntry | null;
  readonly retired: boolean;
}

/** What every row of a file is read against. */
export interface RowsWith<K extends CatalogueKind> {
  readonly kind: K;
  readonly heads: HeadsRead<K>;
  readonly today: string;
  readonly byId: ReadonlyMap<string, Entry<K>>;
  /** What a cover type may name. */
  readonly atHand: AtHand;
  /** Of those in use, by how names are compared. */
  readonly named: (name: string) => Entry<K> | undefined;
}

/** One row against the catalog, by the rules of the form; `confirmed` is what was asked about and is right, by box. */
export function readRow<K extends CatalogueKind>(
  { row, cells }: CsvRow,
  confirmed: Fields,
  { kind, heads, today, byId, atHand, named }: RowsWith<K>,
): RowRead<K> {
  const { columns, at, writing } = heads;
  const faults: RowFault[] = [];
  const cellAt = (index: number | undefined) => {
    const read = cellText(index === undefined ? '' : (cells[index] ?? ''));
    return read.ok ? read.text : '';
  };
  const id = cellAt(at.id);
  const nameColumn = columns.find(({ column }) => column.box === 'name');
  const typedName = cellAt(nameColumn?.index);
  const entry = (id === '' ? undefined : byId.get(id)) ?? (id === '' ? named(typedName) : undefined) ?? null;
  const name = (typedName || entry?.name) ?? '';
  const boxes = boxesOf({ cells, columns, entry, faults, heads });
  const saidRetired = cellAt(at.retired);
  const retired = saidRetired === '' ? (entry?.retired ?? false) : yesNo(saidRetired);
  if (retired === null)
    faults.push(faultAt(at.retired ?? 0, heads, `"${saidRetired.slice(0, 60)}" is neither yes nor no.`));
  if (faults.length > 0) return { row, name, is: 'refused', faults };
  if (entry !== null && boxes.same && retired === entry.retired) return { row, name, is: 'unchanged', entry };

  const shown = entry === null ? {} : entryAsTyped(entry, writing);
  const sure = Object.entries(confirmed).map(([box, text]) => [`ok.${box}`, text]);
  const form = new TypedForm({ ...shown, ...boxes.fields, ...Object.fromEntries(sure) }, writing, shown);
  const body = readEntry(kind, form, atHand, entry?.body ?? null) as EntryBodies[K] | null;
  if (body !== null) askAboutEntry(kind, form, { today, standing: entry?.body ?? null });
  if (body === null || form.faults.length > 0) {
    const told = form.faults.map((fault) => faultOf(fault, form, heads));
    return { row, name, is: 'refused', faults: told };
  }
  const typed = typedOf(form, body, entryBox(kind, form), shown);
  const kept = { body, typed, retired: retired ?? false };
  if (entry === null) return { row, name, is: 'added', id: id === '' ? null : id, entry, ...kept };
  if (retired === entry.retired && sameBody(body, entry.body)) return { row, name, is: 'unchanged', entry };
  const stale = staleRow(cellAt(at.revision), entry);
  if (stale !== null) return { row, name, is: 'refused', faults: [faultAt(at.revision ?? 0, heads, stale)] };
  return { row, name, is: 'changed', entry, ...kept };
}

/** The boxes of the form that do not say what is kept, as this row has them typed. */
function boxesOf<K extends CatalogueKind>(of: {
  readonly cells: readonly string[];
  readonly columns: readonly ColumnRead<K>[];
  readonly entry: Entry<K> | null;
  readonly heads: HeadsRead<K>;
  readonly faults: RowFault[];
}): { fields: Fields; same: boolean } {
  const { cells, columns, entry, heads, faults } = of;
  const fields: Record<string, string> = {};
  const threads = new Map<string, string>();
  let same = true;
  let sameThreads = true;
  for (const { index, column, ownUnit } of columns) {
    const { box } = column;
    if (box === null) continue;
    const cell = cells[index] ?? '';
    const kept = entry === null ? null : column.of(entry.body);
    const plain = plainCell(cell);
    if (entry !== null && ownUnit === null && saysTheSame(plain, kept, heads.writing.decimalSign)) {
      if (isThread(column.label)) threads.set(column.label, plain);
      continue;
    }
    const read = cellText(cell);
    if (!read.ok) {
      faults.push(faultAt(index, heads, read.message));
      continue;
    }
    const text = boxText(read.text, column, kept, ownUnit);
    if (!text.ok) {
      faults.push(faultAt(index, heads, text.message));
      continue;
    }
    same = false;
    if (!isThread(column.label)) fields[box] = text.text;
    else {
      threads.set(column.label, text.text);
      sameThreads = false;
    }
  }
  if (!sameThreads) readThreads(threads, { columns, heads, fields, faults });
  return { fields, same };
}

const isThread = (label: string) => /^(nut )?thread( as typed)?$/.test(label);

/** A thread stands in two columns of which one may be left blank: as typed counts, and the other must say the same. */
function readThreads<K extends CatalogueKind>(
  threads: ReadonlyMap<string, string>,
  {
    columns,
    heads,
    fields,
    faults,
  }: {
    readonly columns: readonly ColumnRead<K>[];
    readonly heads: HeadsRead<K>;
    readonly fields: Record<string, string>;
    readonly faults: RowFault[];
  },
): void {
  for (const { index, column } of columns) {
    const { label, box } = column;
    if (!isThread(label) || box === null) continue;
    const plainLabel = label.replace(AS_TYPED, '');
    const [read, typed] = [threads.get(plainLabel) ?? '', threads.get(`${plainLabel}${AS_TYPED}`) ?? ''];
    fields[box] = typed || read;
    if (label === plainLabel && read !== '' && typed !== '' && !sameThread(read, typed, box))
      faults.push(
        faultAt(
          index,
          heads,
          `"${read}" is not the "${typed}" of the column "${label}${AS_TYPED}". Leave one of them blank.`,
        ),
      );
  }
}

function sameThread(a: string, b: string, box: string): boolean {
  const side = box === 'thread' ? 'external' : 'internal';
  const [one, other] = [readThread(a, side), readThread(b, side)];
  return one.ok && other.ok && one.thread.designation === other.thread.designation;
}

/** A file written before somebody changed the entry would take that change back. */
function staleRow(typed: string, { name, revision, who }: Entry): string | null {
  if (typed === '' || Number(typed) === revision) return null;
  return `The file has revision ${typed.slice(0, 12)} of "${name}"; ${who} has changed it, and it is now revision ${revision}. Download the list again and make the change there.`;
}

/** A field left out, null and an empty text say the same. */
function sameBody(a: object, b: object): boolean {
  return isDeepStrictEqual(bare(a), bare(b));
}

function bare(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(bare);
  if (typeof value !== 'object' || value === null) return value;
  const given = Object.entries(value).filter(
    ([, inner]) => inner !== null && inner !== undefined && inner !== '',
  );
  return Object.fromEntries(given.map(([key, inner]) => [key, bare(inner)]));
}

function faultAt<K extends CatalogueKind>(
  index: number,
  { columns, at }: HeadsRead<K>,
  sentence: string,
): RowFault {
  const head = columns.find((one) => one.index === index)?.head;
  const beside = Object.entries(at).find(([, where]) => where === index)?.[0];
  return { column: columnLetter(index), head: head ?? beside ?? null, sentence, confirms: null };
}

/** A fault of the form, at the column its box came from. */
function faultOf<K extends CatalogueKind>(
  { path, message }: Fault,
  form: TypedForm,
  heads: HeadsRead<K>,
): RowFault {
  const box = path.replace(/^ok\./, '');
  const doubt = form.doubts.find(({ name, says }) => name === box && says !== null);
  const confirmable = path !== box || doubt !== undefined;
  const column = heads.columns.find((one) => one.column.box === box);
  return {
    column: column ? columnLetter(column.index) : null,
    head: column?.head ?? null,
    sentence: message.replace(' Enter it again, or confirm it below.', ''),
    confirms: confirmable ? { box, text: form.text(box) } : null,
  };
}
