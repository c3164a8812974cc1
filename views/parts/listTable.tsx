import type { ComponentChildren } from 'preact';

export interface ListColumn {
  /** Names the column in the address when the list is sorted by it; missing where that says nothing. */
  readonly id?: string;
  readonly label: string;
  /** Stands under the label: the unit, or which of two. */
  readonly under?: string;
  /** Figures stand right-aligned under each other. */
  readonly figure?: boolean;
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

export interface ListTableProps {
  readonly caption: string;
  /** The first column is that of the names. */
  readonly columns: readonly ListColumn[];
  readonly rows: readonly ListRow[];
  readonly sort?: Sort;
  /** The address of the same list sorted so. */
  readonly hrefSorted?: (sort: Sort) => string;
}

/** Rows that lead somewhere, as a table; on a phone each is a card with the heads beside its figures. */
export function ListTable({ caption, columns, rows, sort, hrefSorted }: ListTableProps) {
  const drawn = rows.some(({ drawing }) => drawing !== undefined);
  return (
    <table class={columns.some(({ figure }) => figure) ? 'list' : 'list in-words'}>
      <caption class="unseen">{caption}</caption>
      <thead>
        <tr>
          {drawn && <td class="list-drawing" />}
          {columns.map((column) => (
            <Head {...{ column, sort, hrefSorted }} />
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
  );
}

const isNothing = (cell: ComponentChildren) =>
  cell === null || cell === undefined || cell === false || cell === '';

const headOf = (column: ListColumn | undefined) =>
  column && [column.label, column.under].filter((part) => part).join(', ');

function Head(props: Pick<ListTableProps, 'sort' | 'hrefSorted'> & { column: ListColumn }) {
  const { column, sort, hrefSorted } = props;
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
        <a href={hrefSorted({ by: id, down: sorted !== null && !sorted.down })}>
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
