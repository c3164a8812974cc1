import { printNumber } from '../../shared/words/print.ts';

export interface CheckedFigure {
  readonly what: string;
  readonly found: number;
  readonly checked: number;
  readonly decimals: number;
  readonly unit: string;
}

/** Figures worked out here, beside those of an independent implementation. */
export function BesideChecked({ given, rows }: { given: string; rows: readonly CheckedFigure[] }) {
  return (
    <>
      <h2>An example, compared with independent values</h2>
      <p>{given}</p>
      <div class="table-box" tabindex={0}>
        <table class="figures beside-checked">
          <caption>Compared with an independent second implementation, not published</caption>
          <thead>
            <tr>
              <th scope="col">quantity</th>
              <th scope="col">here</th>
              <th scope="col">there</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ what, found, checked, decimals, unit }) => (
              <tr>
                <th scope="row">
                  {what} {unit !== '' && <span class="unit-in-head">{unit}</span>}
                </th>
                <td>{printNumber(found, decimals)}</td>
                <td>{printNumber(checked, decimals)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}
