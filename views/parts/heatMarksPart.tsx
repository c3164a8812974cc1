import { type HeatMarkRow, heatMarksInWords, MARK_PATTERN_WORD } from '../../shared/words/heatMarks.ts';
import { rowNames } from '../../shared/words/paper.ts';
import {
  briefLength,
  type LengthUnit,
  lengthFigure,
  MINUS,
  printNumber,
  printShare,
} from '../../shared/words/print.ts';

/** What the heat marks say beyond the first sentence, which stands in the row itself, and the figures of each row. */
export function HeatMarksPart({ rows, unit }: { rows: readonly HeatMarkRow[]; unit: LengthUnit }) {
  const [, ...further] = heatMarksInWords(rows, unit);
  return (
    <>
      {further.length > 0 && <p>{further.join(' ')}</p>}
      <section class="table-box" tabindex={0} aria-label="Heat marks by row">
        <table class="figures">
          <caption>Shares of the mean depth: they say something from 40 % on.</caption>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Mean depth, {unit}</th>
              <th scope="col" class="words">
                What it says
              </th>
              <th scope="col">Behind studs (+), between ({MINUS})</th>
              <th scope="col">On one side</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <tr>
                <th scope="row">{rowWord(rows, i, unit)}</th>
                <td>{lengthFigure(row.meanMm, unit)}</td>
                <td class="words">{MARK_PATTERN_WORD[row.pattern]}</td>
                <td>{share(row.studShare)}</td>
                <td>
                  {share(row.oneSidedShare)}
                  {row.oneSidedDeg !== null && ` at ${printNumber(row.oneSidedDeg, 0)}°`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}

function rowWord(rows: readonly HeatMarkRow[], index: number, unit: LengthUnit): string {
  const name = rowNames(rows.length)[index]!;
  if (name === 'only') return 'all stations';
  return name === 'of-many' ? `radius ${briefLength(rows[index]!.radiusMm, unit)}` : name;
}

const share = (value: number | null) =>
  value === null ? '—' : `${value < -0.0049 ? MINUS : ''}${printShare(Math.abs(value), 0)}`;
