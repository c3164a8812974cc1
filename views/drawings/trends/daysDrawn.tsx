import { at } from '../lettering.ts';
import { COLUMNS, CountAxis, heightOf } from './countAxis.tsx';

export interface DaysBin {
  readonly from: number;
  readonly to: number;
  readonly n: number;
}

/** How many days jobs took. */
export function DaysDrawn({ bins }: { readonly bins: readonly DaysBin[] }) {
  const { width, left, right, bottom, height } = COLUMNS;
  const most = Math.max(1, ...bins.map(({ n }) => n));
  const up = heightOf(most);
  const step = Math.min(40, (right - left) / Math.max(1, bins.length));
  const every = Math.max(1, Math.ceil(40 / step));
  return (
    <svg viewBox={`0 0 ${width} ${height}`} class="trend" role="img" aria-labelledby="days-title days-desc">
      <title id="days-title">Days from receiving to signing</title>
      <desc id="days-desc">
        {`${bins.length} columns; the most in one is ${most}. The table has the figures.`}
      </desc>
      <CountAxis most={most} />
      {bins.map(({ from, to, n }, i) => (
        <>
          <rect
            x={at(left + step * i)}
            y={at(bottom - up(n))}
            width={at(step)}
            height={at(up(n))}
            class="bar-plain"
          />
          {i % every === 0 && (
            <text x={at(left + step * (i + 0.5))} y={bottom + 18} class="label mid">
              {from === to ? from : `${from}–${to}`}
            </text>
          )}
        </>
      ))}
    </svg>
  );
}
