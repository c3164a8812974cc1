import type { ComponentChildren } from 'preact';

/** More rows than this are folded. */
const MOST_ROWS = 12;

export interface TwinProps {
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly ComponentChildren[])[];
  readonly csv: string;
}

/** The figures of a drawing as a table under it, and as CSV. The first column names the row. */
export function TwinTable({ caption, heads, rows, csv }: TwinProps) {
  const table = (
    <section class="scroll" tabindex={0} aria-label={caption}>
      <table class="figures">
        <caption class="unseen">{caption}</caption>
        <thead>
          <tr>
            {heads.map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells]) => (
            <tr>
              <th scope="row">{name}</th>
              {cells.map((cell) => (
                <td>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
  return (
    <>
      {rows.length > MOST_ROWS ? (
        <details class="more-findings">
          <summary>
            {caption}: {rows.length} rows
          </summary>
          {table}
        </details>
      ) : (
        table
      )}
      <p>
        <a href={csv}>{caption} as CSV</a>
      </p>
    </>
  );
}

/** A count as people read it: "12,345". */
export const count = (n: number) => n.toLocaleString('en-US');
