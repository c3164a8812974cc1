import type { ComponentChildren } from 'preact';
import type { Entry, EntryBodies, Family } from '../../../shared/words/catalogue.ts';
import { printDay } from '../../../shared/words/day.ts';
import {
  type Beside,
  DENSITY,
  type LengthUnit,
  LINING_MODULUS,
  lengthFigure,
  MODULUS,
  printNumber,
  STRESS,
  SURFACE_SPEED,
} from '../../../shared/words/print.ts';
import { type CatalogueKind, isCatalogueKind } from '../../../shared/words/terms.ts';
import { CoverSectionSmall } from '../../drawings/coverSection.tsx';
import type { ListColumn, Sort } from '../../parts/listTable.tsx';

/** What the cells of a shelf are made with. */
export interface ShelfWith {
  readonly unit: LengthUnit;
  /** The shop’s minimum for a cover type: its own, or the one for every type. */
  readonly shopMinimumMm: (family: Family) => number | null;
}

/** A column of a shelf: what stands in it, and what the shelf is sorted by. */
interface ShelfColumn<Body> extends ListColumn {
  readonly id: string;
  readonly of: (body: Body, how: ShelfWith) => ComponentChildren;
  readonly by: (body: Body, how: ShelfWith) => string | number | null;
}

const NONE = '—';

/** A length in the reader’s unit, which the head names. */
function length<Body>(
  id: string,
  label: string,
  mm: (body: Body, how: ShelfWith) => number | null | undefined,
  under?: string,
  fineness: 'coarse' | 'fine' = 'coarse',
): ShelfColumn<Body> {
  return {
    id,
    label,
    ...(under !== undefined && { under }),
    figure: true,
    of: (body, how) => {
      const value = mm(body, how);
      return value === null || value === undefined ? NONE : lengthFigure(value, how.unit, fineness);
    },
    by: (body, how) => mm(body, how) ?? null,
  };
}

/** What is no length: with its unit, in the reader’s. */
function measure<Body>(
  id: string,
  label: string,
  beside: typeof STRESS,
  of: (body: Body) => number | null,
): ShelfColumn<Body> {
  const said = (value: number, { per, decimals, unit }: Beside) =>
    `${printNumber(value * per, decimals)} ${unit}`;
  return {
    id,
    label,
    figure: true,
    of: (body, how) => {
      const value = of(body);
      return value === null ? NONE : said(value, beside[how.unit]);
    },
    by: of,
  };
}

function words<Body>(
  id: string,
  label: string,
  of: (body: Body, how: ShelfWith) => string,
): ShelfColumn<Body> {
  return { id, label, of: (body, how) => of(body, how) || NONE, by: of };
}

function count<Body>(
  id: string,
  label: string,
  of: (body: Body) => number | null | undefined,
): ShelfColumn<Body> {
  return { id, label, figure: true, of: (body) => of(body) ?? NONE, by: (body) => of(body) ?? null };
}

const stock = <Body extends { readonly stock?: number | null; readonly shelf?: string }>() => [
  count<Body>('stock', 'In stock', (body) => body.stock),
  words<Body>('shelf', 'Shelf', (body) => body.shelf ?? ''),
];

/** The minimum that counts for a cover type, the larger of the maker’s and the shop’s, and whose it is. */
function minimumOf(
  family: Family,
  { shopMinimumMm }: Pick<ShelfWith, 'shopMinimumMm'>,
): { mm: number | null; whose: string } {
  const maker = family.makerMinimumWallMm;
  const shop = shopMinimumMm(family);
  if (maker === null && shop === null) return { mm: null, whose: 'none: advice only' };
  return maker !== null && (shop === null || maker > shop)
    ? { mm: maker, whose: 'maker' }
    : { mm: shop, whose: 'shop' };
}

type Columns = { readonly [K in CatalogueKind]: readonly ShelfColumn<EntryBodies[K]>[] };

/** What tells the entries of a shelf apart, first what is asked for most. */
export const SHELF_COLUMNS: Columns = {
  family: [
    count('studs', 'Studs', (family) => family.studCount),
    length('circle', 'Bolt circle', (family) => family.studCircleDiameterMm),
    length('inside', 'Friction surface', (family) => family.trackInnerDiameterMm, 'inside'),
    length('outside', 'Friction surface', (family) => family.trackOuterDiameterMm, 'outside'),
    length('wall', 'New wall', (family) => family.nominalWallMm),
    {
      ...length<Family>('minimum', 'Minimum wall', (family, how) => minimumOf(family, how).mm),
      of: (family, how) => {
        const { mm } = minimumOf(family, how);
        return mm === null ? NONE : <b>{lengthFigure(mm, how.unit, 'coarse')}</b>;
      },
    },
    words('whose', 'Set by', (family, how) => minimumOf(family, how).whose),
  ],
  stud: [
    words('thread', 'Thread', ({ stud }) => stud.thread.designation),
    length('from', 'Thread from', ({ stud }) => stud.threadStartMm),
    length('to', 'Thread to', ({ stud }) => stud.threadEndMm),
    length('long', 'Length from pad', ({ stud }) => stud.projectionMm),
    ...stock<EntryBodies['stud']>(),
  ],
  stack: [
    words('style', 'Pieces', ({ stack }) => stack.style),
    count('studs', 'Studs', ({ stack }) => stack.holeCount),
    words('thread', 'Nut thread', ({ nut }) => nut?.thread?.designation ?? ''),
    words('layers', 'Layers', ({ stack }) => stack.layers.map(({ name }) => name).join(', ')),
    length('total', 'Thick in all', ({ stack }) =>
      stack.layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    ),
    length('nut', 'Nut height', ({ nut }) => nut?.heightMm),
  ],
  nut: [
    words('thread', 'Thread', ({ nut }) => nut.thread?.designation ?? ''),
    length('height', 'Height', ({ nut }) => nut.heightMm),
    length('face', 'Washer face', ({ nut }) => nut.bearingOuterDiameterMm),
    ...stock<EntryBodies['nut']>(),
  ],
  washer: [
    words('use', 'Use', ({ use }) => use),
    length('inner', 'Hole', ({ innerDiameterMm }) => innerDiameterMm),
    length('outer', 'Outside', ({ outerDiameterMm }) => outerDiameterMm),
    length('thick', 'Thickness', ({ thicknessMm }) => thicknessMm),
    ...stock<EntryBodies['washer']>(),
  ],
  gauge: [
    words('kind', 'Kind', ({ gaugeKind }) => gaugeKind),
    length('steps', 'Resolution', ({ resolutionMm }) => resolutionMm, undefined, 'fine'),
    length('u', 'Uncertainty U', ({ calibrationUMm }) => calibrationUMm, undefined, 'fine'),
    length('repeat', 'Repeatability', ({ repeatabilityMm }) => repeatabilityMm, undefined, 'fine'),
    {
      ...words('due', 'Calibration due', ({ dueOn }) => (dueOn === null ? '' : printDay(dueOn))),
      by: ({ dueOn }) => dueOn,
    },
  ],
  steel: [
    measure('young', 'Young’s modulus', MODULUS, ({ youngMPa }) => youngMPa),
    measure('yield', 'Yield strength', STRESS, ({ yieldMPa }) => yieldMPa),
    measure('density', 'Density', DENSITY, ({ densityKgPerM3 }) => densityKgPerM3),
    words('source', 'Source', ({ source }) => source),
  ],
  lining: [
    measure(
      'modulus',
      'Lining modulus',
      LINING_MODULUS,
      ({ liningModulusMPaPerMm }) => liningModulusMPaPerMm,
    ),
    words('source', 'Source', ({ source }) => source),
    {
      ...words('on', 'Date of the source', ({ sourceOn }) => (sourceOn === null ? '' : printDay(sourceOn))),
      by: ({ sourceOn }) => sourceOn,
    },
  ],
  lathe: [
    count('least', 'Minimum rpm', ({ leastRpm }) => leastRpm),
    count('most', 'Maximum rpm', ({ mostRpm }) => mostRpm),
    measure('speed', 'Cutting speed', SURFACE_SPEED, ({ cuttingSpeedMPerMin }) => cuttingSpeedMPerMin),
    length('rough', 'Deepest roughing pass', ({ roughingLimitMm }) => roughingLimitMm),
    length('finish', 'Finishing pass', ({ finishingCutMm }) => finishingCutMm),
    words('source', 'Source', ({ source }) => source),
  ],
};

/** Small drawings beside the names of a shelf. */
export const SHELF_DRAWING: {
  readonly [K in CatalogueKind]?: (id: string, body: EntryBodies[K]) => ComponentChildren;
} = { family: (id, family) => <CoverSectionSmall id={`section-${id}`} family={family} /> };

/** The entries that have every word, in their name, note or columns; sorted, what is not given last. */
export function shelfShown<K extends CatalogueKind>(
  kind: K,
  entries: readonly Entry<K>[],
  asked: { readonly text: string; readonly sort: Sort | null },
  how: ShelfWith,
): readonly Entry<K>[] {
  const columns: readonly ShelfColumn<EntryBodies[K]>[] = SHELF_COLUMNS[kind];
  const wanted = asked.text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = entries.filter(({ name, body }) => {
    const said = [name, body.note, ...columns.flatMap(({ of, by }) => [of(body, how), by(body, how)])];
    const all = said
      .filter((part) => typeof part === 'string' || typeof part === 'number')
      .join(' ')
      .toLowerCase();
    return wanted.every((word) => all.includes(word));
  });
  const { sort } = asked;
  if (sort === null) return found;
  const column = columns.find(({ id }) => id === sort.by);
  const by = ({ name, body }: Entry<K>) => (column ? column.by(body, how) : name);
  return found.toSorted((a, b) => inOrder(by(a), by(b), sort.down));
}

function inOrder(a: string | number | null, b: string | number | null, down: boolean): number {
  const missing = Number(a === null || a === '') - Number(b === null || b === '');
  if (missing !== 0 || a === null || b === null) return missing;
  const way = down ? -1 : 1;
  if (typeof a === 'number' && typeof b === 'number') return way * (a - b);
  return way * String(a).localeCompare(String(b), 'en', { numeric: true });
}

/** Reads "family.wall", or "-family.wall" for the largest first; null where it names no column of a shelf. */
export function sortAsked(typed: string | undefined): { kind: CatalogueKind; sort: Sort } | null {
  const [, down, kind, by = ''] = /^(-?)(\w+)\.(\w+)$/.exec(typed ?? '') ?? [];
  if (!isCatalogueKind(kind)) return null;
  const known = by === 'name' || SHELF_COLUMNS[kind].some(({ id }) => id === by);
  return known ? { kind, sort: { by, down: down === '-' } } : null;
}
