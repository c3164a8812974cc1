import type { PaperWalls, Row } from '../../../../shared/words/paper.ts';
import { briefLength, type LengthUnit, lengthFigure } from '../../../../shared/words/print.ts';

const ROW_WORD: Readonly<Record<Row, string>> = {
  only: 'one row',
  inner: 'inner',
  middle: 'middle',
  outer: 'outer',
  'of-many': '',
};

/** "Inner row at radius 4.331 in, outer row at 5.039 in." Said once, where the table names the rows. */
export function rowsInWords({ stations }: PaperWalls, unit: LengthUnit): string {
  const rows = new Map(
    stations.filter(({ row }) => row !== 'of-many').map(({ row, radiusMm }) => [row, radiusMm] as const),
  );
  const named = (['only', 'inner', 'middle', 'outer'] as const).flatMap((row) => {
    const radiusMm = rows.get(row);
    if (radiusMm === undefined) return [];
    return [`${row === 'only' ? 'all stations' : `${row} row`} at radius ${briefLength(radiusMm, unit)}`];
  });
  if (named.length === 0) return '';
  const said = named.join(', ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
}

/** Stations, each with what was read there before the cut and the wall after it. The only table of lengths on a sheet. */
export function StationTable(props: { walls: PaperWalls; from: number; to: number; unit: LengthUnit }) {
  const { walls, from, to, unit } = props;
  const { stations, after, thinnest } = walls;
  const figure = (mm: number | null) => (mm === null ? '—' : lengthFigure(mm, unit));
  const signed = (mm: number | null) => (mm !== null && mm > 0 ? `+${figure(mm)}` : figure(mm));
  const many = stations.some(({ row }) => row === 'of-many');
  const indicated = stations.some(({ faceMm }) => faceMm !== null);
  const unitWord = <span>, {unit}</span>;
  return (
    <table class="stations">
      <thead>
        <tr>
          <th scope="col">Station</th>
          <th scope="col">
            Angle from stud 1<span>, °</span>
          </th>
          <th scope="col" class={many ? undefined : 'word'}>
            {many ? <>Radius{unitWord}</> : 'Row'}
          </th>
          <th scope="col">
            Wall{after !== 'none' && ' before'}
            {unitWord}
          </th>
          {indicated && <th scope="col">Indicator reading{unitWord}</th>}
          <th scope="col">Heat mark{unitWord}</th>
          {after !== 'none' && (
            <th scope="col">
              Wall after{after === 'predicted' && ', predicted'}
              {unitWord}
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {stations.slice(from, to).map((one, i) => (
          <tr class={from + i === thinnest ? 'thinnest' : undefined}>
            <th scope="row">{from + i + 1}</th>
            <td>{Math.round(one.angleDeg * 10) / 10}</td>
            <td class={many ? undefined : 'word'}>
              {many ? briefLength(one.radiusMm, unit).replace(` ${unit}`, '') : ROW_WORD[one.row]}
            </td>
            <td>
              {after === 'none' && from + i === thinnest && <Thinnest />}
              {figure(one.beforeMm)}
            </td>
            {indicated && <td>{signed(one.faceMm)}</td>}
            <td>{figure(one.markMm)}</td>
            {after !== 'none' && (
              <td class="left">
                {from + i === thinnest && <Thinnest />}
                {figure(one.afterMm)}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Thinnest() {
  return (
    <svg class="diamond" viewBox="0 0 10 10" role="img" aria-label="thinnest">
      <path d="M5 0L10 5L5 10L0 5Z" />
    </svg>
  );
}
