import { briefLength, type LengthUnit } from '../../../shared/words/print.ts';
import type { Histogram } from '../../../shared/words/trends/trendsShown.ts';
import { at, textWidth } from '../lettering.ts';
import { roundScale } from '../ticks.ts';
import { COLUMNS, CountAxis, heightOf } from './countAxis.tsx';

export interface HistogramProps {
  /** Unique on its page. */
  readonly id: string;
  readonly title: string;
  readonly histogram: Histogram;
  readonly unit: LengthUnit;
  readonly minimumMm?: number | null;
  readonly newMm?: number | null;
}

/** How many were so long, with the limit and the new cover's figure where they have one. */
export function HistogramDrawn({
  id,
  title,
  histogram,
  unit,
  minimumMm = null,
  newMm = null,
}: HistogramProps) {
  const { width, left, right, top, bottom, height } = COLUMNS;
  const { bins, widthMm } = histogram;
  const marks = [minimumMm, newMm].filter((mm) => mm !== null);
  const from = Math.min(...bins.map(({ fromMm }) => fromMm), ...marks);
  const to = Math.max(...bins.map(({ fromMm }) => fromMm + widthMm), ...marks);
  const scale = roundScale(from, to, unit, 3);
  const x = (mm: number) =>
    left + 6 + ((right - left - 12) * (mm - scale.leastMm)) / (scale.mostMm - scale.leastMm);
  const most = Math.max(1, ...bins.map(({ n }) => n));
  const up = heightOf(most);
  return (
    <svg
      viewBox={`0 0 ${width} ${height + 8}`}
      class="trend"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{title}</title>
      <desc id={`${id}-desc`}>
        {`${bins.length} columns, from ${briefLength(from, unit)} to ${briefLength(to, unit)}; the most in one is ${most}. The table has the figures.`}
      </desc>
      <CountAxis most={most} />
      {bins.map(({ fromMm, n }) => (
        <rect
          x={at(x(fromMm))}
          y={at(bottom - up(n))}
          width={at(x(fromMm + widthMm) - x(fromMm))}
          height={at(up(n))}
          class={minimumMm !== null && fromMm + widthMm <= minimumMm + 1e-9 ? 'bar-lost' : 'bar-plain'}
        />
      ))}
      {scale.ticks.map(({ mm, text }) => (
        <>
          <path d={`M${at(x(mm))} ${bottom}v${text === null ? 3 : 5}`} class="thin" />
          {text !== null && (
            <text x={at(x(mm))} y={bottom + 19} class="label mid">
              {text}
            </text>
          )}
        </>
      ))}
      {newMm !== null && <Line x={x(newMm)} class="chain" word="new" y={top + 26} />}
      {minimumMm !== null && <Line x={x(minimumMm)} class="limit" word="minimum" y={top + 10} bad />}
    </svg>
  );
}

/** A line across the columns with its word beside it, on the side where there is room. */
function Line({
  x,
  class: own,
  word,
  y,
  bad = false,
}: {
  readonly x: number;
  readonly class: string;
  readonly word: string;
  readonly y: number;
  readonly bad?: boolean;
}) {
  const { top, bottom, right } = COLUMNS;
  const after = x + 6 + textWidth(word, 13) < right;
  return (
    <>
      <path d={`M${at(x)} ${top - 6}V${bottom}`} class={own} />
      <text
        x={at(after ? x + 5 : x - 5)}
        y={y}
        class={`halo ${bad ? 'limit-text' : 'label'}${after ? '' : ' end'}`}
      >
        {word}
      </text>
    </>
  );
}
