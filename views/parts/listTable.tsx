import type { ComponentChildren } from 'preact';

export interface ListColumn {
  /** Names the column in the address when the list is sorted by it; missing where that says nothing. */
  readonly id?: string;
  readonly label: string;
  /** Stands under the label: the unit, or which of two. */
  readonly under?: string;
  /** Figures stand right-aligned under each other. */
  readonly figure?: boolean;
  /** What comes first, and from the other end; of text "A to Z", of figures "least first". */
  readonly order?: readonly [up: string, down: string];
  /** Says what it is without its head: no head beside it on a phone. */
  readonly plain?: boolean;
}

export interface ListRow {
  readonly id?: string;
  readonly href: string;
  /** The cell that leads on; the whole row may be pressed. */
  readonly name: string;
  /** Stands after the name: "retired". */
  readonly state?: string;
  /** Before the name: a small drawing, which says nothing to a listener. */
  readonly drawing?: ComponentChildren;
  readonly cells: readonly ComponentChildren[];
}

export interface Sort {
  readonly by: string;
  readonly down: boolean;
}

/** As in the address: "-received" for the newest first. */
export function sortTyped({ by, down }: Sort): string {
  return `${down ? '-' : ''}${by}`;
}

export interface ListTableProps {
  readonly caption: string;
  /** The first column is that of the names. */
  readonly columns: readonly ListColumn[];
  readonly rows: readonly ListRow[];
  readonly sort?: Sort;
  /** The address of the same list sorted so. */
  readonly hrefSorted?: (sort: Sort) => string;
  /** The form the list is found by, and what it sends for a sorting: the order is also chosen from a list, as on a phone. */
  readonly sortedIn?: { readonly form: string; readonly value: (sort: Sort) => string };
}

/** The list alone comes anew, and the focus stays on the head that was pressed. */
const IN_PLACE = {
  'hx-target': '#found',
  'hx-select': '#found',
  'hx-swap': 'outerHTML',
  'hx-push-url': 'true',
} as const;

/** Rows that lead somewhere, as a table; on a phone each is a card with the heads beside its figures. */
export function ListTable(props: ListTableProps) {
  const { caption, columns, rows, sort, hrefSorted, sortedIn } = props;
  const drawn = rows.some(({ drawing }) => drawing !== undefined);
  return (
    <>
      {hrefSorted && sortedIn && <SortedBy {...props} sortedIn={sortedIn} hrefSorted={hrefSorted} />}
      <table class={columns.some(({ figure }) => figure) ? 'list' : 'list in-words'}>
        <caption class="unseen" data-tell>
          {caption}: {rows.length}
          {sort && sortedInWords(columns, sort)}
        </caption>
        <thead>
          <tr>
            {drawn && <td class="list-drawing" />}
            {columns.map((column) => (
              <Head {...{ column, sort, hrefSorted, sortedIn }} />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, href, name, state, drawing, cells }) => (
            <tr id={id}>
              {drawn && (
                <td class="list-drawing" aria-hidden="true">
                  {drawing}
                </td>
              )}
              <th scope="row">
                <a href={href}>{name}</a>
                {state !== undefined && <small>{state}</small>}
              </th>
              {cells.map((cell, index) => {
                const column = columns[index + 1];
                return (
                  <td
                    class={column?.figure ? 'num' : undefined}
                    data-head={isNothing(cell) || column?.plain ? undefined : headOf(column)}
                  >
                    {cell}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

/** On a phone the heads of the columns are not seen: the order is chosen here. */
function SortedBy({
  columns,
  sort,
  hrefSorted,
  sortedIn: { form, value },
}: ListTableProps & Required<Pick<ListTableProps, 'hrefSorted' | 'sortedIn'>>) {
  const chosen = sort && value(sort);
  return (
    <p class="sorted-by">
      <label for={`${form}-sort`}>Sorted by</label>{' '}
      <select
        id={`${form}-sort`}
        name="sort"
        form={form}
        hx-get={hrefSorted({ by: '', down: false }).split('?')[0]}
        hx-include={`#${form}`}
        hx-trigger="change"
        {...IN_PLACE}
      >
        {!sort && <option value="">as listed</option>}
        {columns.flatMap((column) => {
          const { id } = column;
          if (id === undefined) return [];
          return [false, true].map((down) => (
            <option value={value({ by: id, down })} selected={chosen === value({ by: id, down })}>
              {headOf(column)}: {orderInWords(column, down)}
            </option>
          ));
        })}
      </select>
    </p>
  );
}

const isNothing = (cell: ComponentChildren) =>
  cell === null || cell === undefined || cell === false || cell === '';

/** Which end comes first. */
function orderInWords({ order, figure }: ListColumn, down: boolean): string {
  return (order ?? (figure ? ['least first', 'most first'] : ['A to Z', 'Z to A']))[Number(down)]!;
}

/** What whoever hears the list is told of its order. */
function sortedInWords(columns: readonly ListColumn[], { by, down }: Sort): string {
  const column = columns.find(({ id }) => id === by);
  return column ? `, by ${headOf(column)}, ${orderInWords(column, down)}` : '';
}

const headOf = (column: ListColumn | undefined) =>
  column && [column.label, column.under].filter((part) => part).join(', ');

function Head(props: Pick<ListTableProps, 'sort' | 'hrefSorted' | 'sortedIn'> & { column: ListColumn }) {
  const { column, sort, hrefSorted, sortedIn } = props;
  const { id, label, under, figure } = column;
  const sorted = sort !== undefined && sort.by === id ? sort : null;
  const words = (
    <>
      {label}
      {under && <small>{under}</small>}
    </>
  );
  return (
    <th
      scope="col"
      class={figure ? 'num' : undefined}
      aria-sort={sorted ? (sorted.down ? 'descending' : 'ascending') : undefined}
    >
      {id !== undefined && hrefSorted ? (
        <a
          href={hrefSorted({ by: id, down: sorted !== null && !sorted.down })}
          {...(sortedIn && {
            id: `${sortedIn.form}-by-${id}`,
            'hx-get': hrefSorted({ by: id, down: sorted !== null && !sorted.down }),
            ...IN_PLACE,
          })}
        >
          {words}
          {sorted && (
            <span class="sorted" aria-hidden="true">
              {sorted.down ? '▼' : '▲'}
            </span>
          )}
        </a>
      ) : (
        words
      )}
    </th>
  );
}
