import type { Entry, EntryBodies } from '../../../shared/words/catalogue.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { lowerFirst } from '../../../shared/words/fields/field.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import { LINING } from '../../../shared/words/fields/lining.ts';
import { STEEL } from '../../../shared/words/fields/steel.ts';
import {
  CATALOGUE_NUT,
  CATALOGUE_STACK,
  CATALOGUE_STUD,
  CATALOGUE_WASHER,
  LAYER,
} from '../../../shared/words/fields/stud.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { CatalogueKind } from '../../../shared/words/terms.ts';
import { type BodyColumn, columnsOf, headed } from '../request/bodyColumns.ts';
import type { Column } from '../request/csv.ts';
import { MOST_LAYERS } from '../stud/stackForm.ts';
import { type NamedKind, namedText } from './chosen.ts';

type Columns<K extends CatalogueKind> = readonly BodyColumn<EntryBodies[K]>[];

/** The columns of each shelf’s list: written by one and read by the other, so that a list comes in again as it went out. */
const COLUMNS: { readonly [K in CatalogueKind]: (unit: LengthUnit, layers: number) => Columns<K> } = {
  family: (unit) => {
    const column = (kind: NamedKind): Columns<'family'> => {
      const { label, box } = FAMILY[kind];
      const field = { label, box, kind: 'text', most: 120 } as const;
      return [{ ...headed(lowerFirst(label)), of: (body) => namedText(kind, body), box, field }];
    };
    return columnsOf(FAMILY, (body: EntryBodies['family']) => body, unit, {
      steel: column('steel'),
      lining: column('lining'),
    });
  },
  steel: (unit) => columnsOf(STEEL, (body: EntryBodies['steel']) => body, unit),
  lining: (unit) => columnsOf(LINING, (body: EntryBodies['lining']) => body, unit),
  lathe: (unit) => columnsOf(CATALOGUE_LATHE, (body: EntryBodies['lathe']) => body, unit),
  stud: (unit) => {
    const { name, stud, threadTyped, ...rest } = CATALOGUE_STUD;
    const whole = (body: EntryBodies['stud']) => body;
    return [
      ...columnsOf({ name }, whole, unit),
      ...columnsOf(stud.fields, (body: EntryBodies['stud']) => body.stud, unit, {
        thread: threadColumns(
          threadTyped,
          (body) => body.stud.thread.designation,
          (body) => body.threadTyped,
          'thread',
        ),
      }),
      ...columnsOf(rest, whole, unit),
    ];
  },
  nut: (unit) => {
    const { name, nut, threadTyped, ...rest } = CATALOGUE_NUT;
    const whole = (body: EntryBodies['nut']) => body;
    return [
      ...columnsOf({ name }, whole, unit),
      ...columnsOf(nut.fields, (body: EntryBodies['nut']) => body.nut, unit, {
        thread: threadColumns(
          threadTyped,
          (body) => body.nut.thread?.designation ?? null,
          (body) => body.threadTyped,
          'thread',
        ),
      }),
      ...columnsOf(rest, whole, unit),
    ];
  },
  washer: (unit) => columnsOf(CATALOGUE_WASHER, (body: EntryBodies['washer']) => body, unit),
  gauge: (unit) => columnsOf(GAUGE, (body: EntryBodies['gauge']) => body, unit),
  stack: (unit, most) => {
    const { name, stack, nut, nutThreadTyped, ...rest } = CATALOGUE_STACK;
    const whole = (body: EntryBodies['stack']) => body;
    return [
      ...columnsOf({ name }, whole, unit),
      ...columnsOf(stack.fields, (body: EntryBodies['stack']) => body.stack, unit, {
        layers: Array.from({ length: most }, (_, row) => layerColumns(unit, row)).flat(),
      }),
      ...columnsOf(nut.fields, (body: EntryBodies['stack']) => body.nut, unit, {
        thread: threadColumns(
          nutThreadTyped,
          (body) => body.nut?.thread?.designation ?? null,
          (body) => body.nutThreadTyped,
          'nut thread',
        ),
      }),
      ...columnsOf(rest, whole, unit),
    ];
  },
};

export const AS_TYPED = ' as typed';

/** A thread as it was read, and as it was typed, which fill one box. */
function threadColumns<Row>(
  field: BodyColumn<Row>['field'],
  read: Column<Row>['of'],
  typed: Column<Row>['of'],
  label: string,
): BodyColumn<Row>[] {
  const box = field.box ?? null;
  return [
    { ...headed(label), of: read, box, field },
    { ...headed(`${label}${AS_TYPED}`), of: typed, box, field },
  ];
}

function layerColumns(unit: LengthUnit, row: number): BodyColumn<EntryBodies['stack']>[] {
  const of = (body: EntryBodies['stack']) => body.stack.layers[row];
  return columnsOf(LAYER, of, unit, {}, { row }).map((column, i) => ({
    ...column,
    ...headed(i === 0 ? `layer ${row + 1}` : `layer ${row + 1} ${column.label}`, column.unit),
  }));
}

/** Every column a file of one kind may have. */
export function bodyColumns<K extends CatalogueKind>(kind: K, unit: LengthUnit): Columns<K> {
  return COLUMNS[kind](unit, MOST_LAYERS);
}

/** The columns of an entry beside its body, which come before and after those. */
export const ENTRY_HEADS = {
  id: 'id',
  revision: 'revision',
  retired: 'retired',
  who: 'changed by',
  at: 'changed at (UTC)',
  why: 'why',
} as const;

/** A shelf as a list: as many layers as the thickest stack has. */
export function listColumns<K extends CatalogueKind>(
  kind: K,
  unit: LengthUnit,
  entries: readonly Entry<K>[],
): readonly Column<Entry<K>>[] {
  const layers = entries.map(({ body }) => ('stack' in body ? body.stack.layers.length : 0));
  const [name, ...rest] = COLUMNS[kind](unit, Math.max(1, ...layers));
  const ofBody = ({ name, of }: BodyColumn<EntryBodies[K]>) => ({
    name,
    of: (entry: Entry<K>) => of(entry.body),
  });
  return [
    { name: ENTRY_HEADS.id, of: (entry) => entry.id },
    ...(name === undefined ? [] : [ofBody(name)]),
    { name: ENTRY_HEADS.revision, of: (entry) => entry.revision },
    { name: ENTRY_HEADS.retired, of: (entry) => entry.retired },
    ...rest.map(ofBody),
    { name: ENTRY_HEADS.who, of: (entry) => entry.who },
    { name: ENTRY_HEADS.at, of: (entry) => entry.at },
    { name: ENTRY_HEADS.why, of: (entry) => entry.why },
  ];
}
