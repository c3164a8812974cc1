import type { Entry } from '../../../shared/words/catalogue.ts';
import { CATALOGUE_KINDS, type CatalogueKind, ENTRY_WORD } from '../../../shared/words/terms.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { Field } from '../../parts/form/fieldBox.tsx';
import { ListTable, type Sort } from '../../parts/listTable.tsx';
import { SHELF_COLUMNS, SHELF_DRAWING, type ShelfWith, shelfShown } from './shelves.tsx';

export interface CatalogueProps {
  readonly frame: Frame;
  readonly shelves: { readonly [K in CatalogueKind]: readonly Entry<K>[] };
  /** The shelf that is shown; words searched for are looked for on every shelf. */
  readonly shelf: CatalogueKind;
  readonly text: string;
  readonly sorted: { readonly kind: CatalogueKind; readonly sort: Sort } | null;
  /** The shop’s minimum for every cover type without one of its own. */
  readonly shopMinimumMm: ShelfWith['shopMinimumMm'];
}

/** What the shop keeps of covers, studs and flexplate stacks. */
export function CataloguePage(props: CatalogueProps) {
  const { frame, shelves, shelf, text } = props;
  const how: ShelfWith = { unit: frame.lengthUnit, shopMinimumMm: props.shopMinimumMm };
  const shown =
    text.trim() === ''
      ? [shelf]
      : CATALOGUE_KINDS.filter(
          (kind) => shelfShown(kind, shelves[kind], { text, sort: null }, how).length > 0,
        );
  return (
    <Layout title="Catalog" here="catalogue" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>Catalog</h1>
      <nav class="shelves" aria-label="Shelves of the catalog">
        {CATALOGUE_KINDS.map((kind) => (
          <a href={`/catalogue?shelf=${kind}`} aria-current={shown.includes(kind) ? 'true' : undefined}>
            {ENTRY_WORD[kind].many} <small>{shelves[kind].length}</small>
          </a>
        ))}
        <a href="/inspection" id="to-inspection-lists">
          Inspection lists
        </a>
      </nav>
      <form
        method="get"
        action="/catalogue"
        class="finder"
        id="catalog-finder"
        hx-get="/catalogue"
        hx-target="#found"
        hx-select="#found"
        hx-swap="outerHTML"
        hx-trigger="input delay:200ms"
        hx-push-url="true"
      >
        <div class="fields">
          <Field label="Any word or figure" name="text" type="search" value={text} />
          <button class="button" type="submit" id="find">
            Find
          </button>
        </div>
      </form>
      <div id="found">
        {shown.length === 0 && (
          <EmptyState
            title="Nothing found"
            actions={[{ label: 'Show the whole catalog', href: '/catalogue' }]}
          >
            Nothing in the catalog has these words. Try fewer of them.
          </EmptyState>
        )}
        {shown.map((kind) => (
          <Shelf kind={kind} how={how} alone={shown.length === 1} {...props} />
        ))}
      </div>
    </Layout>
  );
}

/** What an empty list keeps people from. */
const NEEDED_FOR: Readonly<Record<CatalogueKind, string>> = {
  family: 'A job is received by its cover type. Add the first one, or bring in a list.',
  stud: 'Studs added here are found for a flexplate, best first.',
  stack: 'Add a flexplate with its layers and nut; then the right stud is found for it.',
  nut: 'Nuts added here are told with the stud they go on.',
  washer: 'Washers and shims added here are told with the stud, and chosen for a gap.',
  gauge: 'Add a gauge; what it measures then says how sure it is.',
  lining: 'Add a lining, and name it in a cover type: bending is then worked out with its modulus.',
  lathe: 'Add a lathe, and choose it in a job: the passes are then planned with its figures.',
  steel: 'Add a steel, and name it in a cover type: bending and heat are then worked out with its figures.',
};

/** Shelves whose figures each say their unit. */
const NO_LENGTHS: ReadonlySet<CatalogueKind> = new Set(['steel', 'lining']);

function Shelf<K extends CatalogueKind>(props: CatalogueProps & { kind: K; how: ShelfWith; alone: boolean }) {
  const { kind, how, alone, frame, shelves, text, sorted } = props;
  const sort = sorted?.kind === kind ? sorted.sort : null;
  const all: readonly Entry<K>[] = shelves[kind];
  const entries = shelfShown(kind, all, { text, sort }, how);
  const columns = SHELF_COLUMNS[kind];
  const drawing = SHELF_DRAWING[kind];
  const word = ENTRY_WORD[kind];
  return (
    <section id={kind}>
      <h2>
        {word.many}
        {entries.length > 0 && !NO_LENGTHS.has(kind) && (
          <small class="unit-of-list">lengths in {frame.lengthUnit === 'in' ? 'inches' : 'mm'}</small>
        )}
      </h2>
      {entries.length === 0 ? (
        <EmptyState title={`No ${word.one} yet`}>{NEEDED_FOR[kind]}</EmptyState>
      ) : (
        <ListTable
          caption={word.many}
          columns={[{ id: 'name', label: 'Name' }, ...columns]}
          {...(sort !== null && { sort })}
          hrefSorted={({ by, down }) =>
            `/catalogue?${new URLSearchParams({ shelf: kind, ...(text !== '' && { text }), sort: `${down ? '-' : ''}${kind}.${by}` })}`
          }
          {...(alone && {
            sortedIn: {
              form: 'catalog-finder',
              value: ({ by, down }) => `${down ? '-' : ''}${kind}.${by}`,
            },
          })}
          rows={entries.map(({ id, name, body, retired }) => ({
            href: `/catalogue/${kind}/${encodeURIComponent(id)}`,
            name,
            ...(retired && { state: 'retired' }),
            ...(drawing && { drawing: drawing(id, body) }),
            cells: columns.map(({ of }) => of(body, how)),
          }))}
        />
      )}
      <div class="actions">
        {may(frame, 'keeper') && (
          <a class="button" href={`/catalogue/${kind}/new`} id={`add-${kind}`}>
            Add a {word.one}
          </a>
        )}
        {may(frame, 'keeper') && (
          <a class="button" href={`/import/${kind}`} id={`import-${kind}`}>
            Add or change from CSV
          </a>
        )}
        <a class="button" href={`/catalogue/${kind}.csv`} id={`${kind}-csv`}>
          Download as CSV
        </a>
      </div>
    </section>
  );
}
